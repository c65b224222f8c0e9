import type { Box } from '../../../routing/plane/box.ts';
import type { Point2, Site } from '../../../routing/site/site.ts';
import type { ChangedElement } from '../../plan/revision.ts';
import { changedAreas } from './changed-areas.ts';
import type { DrawnItem } from './drawing.ts';

/** Room between an element and its cloud, and the length of one scallop, feet. */
const MARGIN = 1.5;
const SCALLOP = 2;
const STEPS = 6;

/** A cloud with a numbered delta round everything that a revision changed. */
export function revisionClouds(
  before: Site,
  after: Site,
  changed: readonly ChangedElement[],
  number: string,
): readonly DrawnItem[] {
  return changedAreas(before, after, changed, MARGIN).flatMap((area) => cloudRound(area, number));
}

function cloudRound(area: Box, number: string): DrawnItem[] {
  const [x, y] = [area.maxX + 1.2, area.maxY + 0.6];
  return [
    { kind: 'line', layer: 'revisions', points: cloudOutline(area, SCALLOP), closed: true },
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

/** The outline of a cloud round an area, counter-clockwise, in half circles about `scallop` wide that bulge outward. */
export function cloudOutline({ minX, minY, maxX, maxY }: Box, scallop: number): readonly Point2[] {
  const corners: readonly Point2[] = [
    [minX, minY],
    [maxX, minY],
    [maxX, maxY],
    [minX, maxY],
  ];
  return corners.flatMap((from, i) => scalloped(from, corners[(i + 1) % 4] as Point2, scallop));
}

/** Half circles bulging to the right of the way from one corner to the next, which is outward when it runs left round. */
function scalloped(from: Point2, to: Point2, scallop: number): Point2[] {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const count = Math.max(1, Math.round(length / scallop));
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
