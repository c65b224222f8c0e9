import { footprintOf } from '../../../routing/network/footprint.ts';
import { rectangleAt } from '../../../routing/plane/rectangle.ts';
import { stallRectangle } from '../../../routing/reach/parked.ts';
import type { ElementList } from '../../../routing/site/schema.ts';
import type { Point2, Site } from '../../../routing/site/site.ts';
import type { ChangedElement } from '../../revision.ts';
import type { DrawnItem } from './drawing.ts';

/** Room between an element and its cloud, and the length of one scallop, feet. */
const MARGIN = 1.5;
const SCALLOP = 2;
const STEPS = 6;

/**
 * A cloud with a numbered delta round every element that a revision added, moved or changed, and round the place of what
 * it removed (from the version before). Elements that are no place on the plan, such as chargers, have none of their own.
 */
export function revisionClouds(
  before: Site,
  after: Site,
  changed: readonly ChangedElement[],
  number: string,
): readonly DrawnItem[] {
  return changed.flatMap(({ list, id, change }) => {
    const points = placeOf(change === 'removed' ? before : after, list, id);
    return points.length === 0 ? [] : cloudRound(points, number);
  });
}

function placeOf(site: Site, list: ElementList, id: string): readonly Point2[] {
  const find = <T extends { readonly id: string }>(elements: readonly T[]): T[] =>
    elements.filter((one) => one.id === id);
  const flat = (path: readonly (readonly number[])[]): Point2[] => path.map(([x = 0, y = 0]) => [x, y]);
  switch (list) {
    case 'stalls':
      return find(site.stalls).flatMap((one) => [...stallRectangle(one)]);
    case 'columns':
      return find(site.columns).flatMap(({ at, size, rotation = 0 }) => [...rectangleAt(at, size, rotation)]);
    case 'members':
      return find(site.members).flatMap(({ from, to }) => flat([from, to]));
    case 'keepouts':
      return find(site.keepouts).flatMap(({ outline }) => flat(outline));
    case 'aisles':
      return find(site.aisles).flatMap(({ outline }) => flat(outline));
    case 'equipment':
      return find(site.equipment).flatMap((one) => [...footprintOf(one)]);
    case 'raceways':
      return find(site.raceways).flatMap(({ path }) => flat(path));
    case 'pullpoints':
      return find(site.pullpoints).flatMap(({ at }) => flat([at]));
    case 'drops':
      return find(site.drops).flatMap(({ box, retractor }) => flat(retractor ? [box, retractor] : [box]));
    default:
      return [];
  }
}

function cloudRound(points: readonly Point2[], number: string): DrawnItem[] {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  const [left, right] = [Math.min(...xs) - MARGIN, Math.max(...xs) + MARGIN];
  const [bottom, top] = [Math.min(...ys) - MARGIN, Math.max(...ys) + MARGIN];
  const corners: readonly Point2[] = [
    [left, bottom],
    [right, bottom],
    [right, top],
    [left, top],
  ];
  const outline = corners.flatMap((from, i) => scalloped(from, corners[(i + 1) % 4] as Point2));
  const [x, y] = [right + 1.2, top + 0.6];
  return [
    { kind: 'line', layer: 'revisions', points: outline, closed: true },
    {
      kind: 'line',
      layer: 'revisions',
      points: [
        [x - 0.9, y - 0.5],
        [x + 0.9, y - 0.5],
        [x, y + 1.1],
      ],
      closed: true,
    },
    { kind: 'text', layer: 'revisions', at: [x, y - 0.3], text: number, height: 0.6, turn: 0, anchor: 'middle' },
  ];
}

/** Half circles bulging to the right of the way from one corner to the next, which is outward when it runs left round. */
function scalloped(from: Point2, to: Point2): Point2[] {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const count = Math.max(1, Math.round(length / SCALLOP));
  const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const radius = length / count / 2;
  return Array.from({ length: count }, (_, k) => k).flatMap((k) =>
    Array.from({ length: STEPS }, (_, step): Point2 => {
      const angle = Math.PI * (1 - step / STEPS);
      const along = (2 * k + 1) * radius + radius * Math.cos(angle);
      const out = radius * Math.sin(angle);
      return [from[0] + along * ux + out * uy, from[1] + along * uy - out * ux];
    }),
  );
}
