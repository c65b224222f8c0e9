import { isUpright } from '../../../routing/network/support/held-parts.ts';
import { rectangleAt } from '../../../routing/plane/rectangle.ts';
import type { Column, Equipment, Point2, Point3, Site } from '../../../routing/site/site.ts';
import type { Plan } from '../../plan/plan-shape.ts';
import { HEAD_HIGH } from '../../steel/hung-conduits.ts';
import { tablesOf } from '../../tables/editions.ts';
import { supportSpacing } from '../../tables/raceway-of.ts';
import { conduitsAt, type PassingConduit, passingWords } from './conduits-at.ts';
import {
  boxOfFeet,
  type Callout,
  type Detail,
  type DetailLine,
  edges,
  fromBase,
  grade,
  segment,
  typicalOf,
} from './detail.ts';

/** A riser stands at what is no farther from it than this in the plan, feet. Common practice, no source. */
const BESIDE = 2;
/** Shorter legs are no risers, feet. */
const LEAST = 2;
/** So many conduits are drawn side by side. */
const SHOWN = 6;

interface Riser {
  readonly raceway: string;
  readonly low: Point3;
  readonly high: Point3;
  readonly conduits: readonly PassingConduit[];
  readonly column: Column | null;
  readonly equipment: Equipment | null;
}

/** How conduit comes down: at a column, and at equipment, the fullest of each; as far as there are such. */
export function riserDetails(site: Site, plan: Plan): readonly Detail[] {
  const risers = risersOf(site, plan);
  const fullest = (which: (riser: Riser) => boolean): readonly Riser[] =>
    risers.filter(which).sort((a, b) => b.conduits.length - a.conduits.length);
  const atColumn = fullest(({ column }) => column !== null);
  const atEquipment = fullest(({ column, equipment }) => column === null && equipment !== null);
  return [atColumn, atEquipment].flatMap((all) => (all.length === 0 ? [] : [riserDetail(all, site)]));
}

function risersOf(site: Site, plan: Plan): readonly Riser[] {
  return site.raceways.flatMap(({ id, path, place }): Riser[] => {
    if (place === 'underground') return [];
    return path.slice(1).flatMap((b, i): Riser[] => {
      const a = path[i]!;
      const [low, high] = a[2] < b[2] ? [a, b] : [b, a];
      if (!isUpright(a, b) || low[2] > HEAD_HIGH || high[2] - low[2] < LEAST) return [];
      const conduits = conduitsAt(site, plan, [low[0], low[1], (low[2] + high[2]) / 2]);
      if (conduits.length === 0) return [];
      return [
        { raceway: id, low, high, conduits, column: columnAt(low, high, site), equipment: equipmentAt(low, site) },
      ];
    });
  });
}

/** A bollard is a column too low to hold a riser. */
const columnAt = ([x, y]: Point3, high: Point3, { columns }: Site): Column | null =>
  columns.find(
    ({ at, size, height = high[2] }) =>
      height >= high[2] - BESIDE && Math.hypot(x - at[0], y - at[1]) <= Math.max(...size) / 2 + BESIDE,
  ) ?? null;

const equipmentAt = ([x, y]: Point3, { equipment }: Site): Equipment | null =>
  equipment.find(({ at, size }) => Math.hypot(x - at[0], y - at[1]) <= Math.max(size[0], size[1]) / 2 + BESIDE) ?? null;

function riserDetail(all: readonly Riser[], site: Site): Detail {
  const { raceway, low, high, conduits, column, equipment } = all[0]!;
  const center = column?.at ?? equipment!.at;
  const away = Math.hypot(low[0] - center[0], low[1] - center[1]);
  const along: Point2 = away > 0.05 ? [(low[0] - center[0]) / away, (low[1] - center[1]) / away] : [1, 0];
  const [near, far] = sidesOf(column, equipment, along);
  const top = column === null ? equipment!.size[2] : (column.height ?? high[2] + 1);
  const lines: DetailLine[] = [edges(boxOfFeet(near, 0, far, top), 'edge')];
  const callouts: Callout[] = [
    {
      at: [near, top * 0.85],
      text: column === null ? `${equipment!.id}, side view` : `${column.id}: column, section and bearing by others`,
    },
  ];
  // Several stand side by side, from the drawn line outward.
  let x = away;
  for (const { across } of conduits.slice(0, SHOWN)) {
    lines.push(edges(boxOfFeet(x - across / 2, low[2], x + across / 2, high[2]), 'conduit'));
    x += across + 1 / 12;
  }
  const end = x;
  lines.push(segment([away, low[2] - 0.2], [away, high[2] + 0.2], 'axis'));
  const { spacingFt, firstFt } = supportSpacing(tablesOf(site.rules), conduits[0]!.method, conduits[0]!.tradeSize);
  for (const at of strapsBetween(low[2], high[2], firstFt, spacingFt))
    lines.push(segment([away - conduits[0]!.across, at], [end - 1 / 12, at], 'cut'));
  callouts.push(
    {
      at: [end - 1 / 12, (low[2] + high[2]) / 2],
      text: `${passingWords(conduits)}, in ${raceway}${conduits.length > SHOWN ? `; ${SHOWN} are drawn` : ''}`,
    },
    {
      at: [away, high[2] - firstFt],
      text: `straps within ${firstFt} ft of each end and ${spacingFt} ft apart at most`,
    },
  );
  const ground = grade(Math.min(near, away) - 1.2, Math.max(far, end) + 1.2, 0.5);
  return {
    kind: 'riser',
    title: `Riser at ${column === null ? equipment!.id : 'a column'}, ${typicalOf(all.map((one) => one.raceway))}`,
    of: [...new Set(all.map((one) => one.raceway))],
    regions: ground.regions,
    lines: [...ground.lines, ...lines],
    circles: [],
    dimensions: [
      ...fromBase('left', { at: 0, from: Math.min(near, away) - 1.2 }, [
        { at: low[2], from: away },
        { at: top, from: near },
        { at: high[2], from: away },
      ]),
      ...fromBase('bottom', { at: far, from: 0 }, [{ at: away, from: 0 }]),
    ],
    callouts,
    notes: [
      column === null
        ? 'Anchorage of the equipment and of what conduit is strapped to: by others.'
        : 'Straps are clamped to the column or to channel on it; drilling or welding of the column only with the word of the structural engineer. Guards against vehicles where it can be hit.',
    ],
  };
}

/** How far what it stands at reaches along the picture, from its middle. */
function sidesOf(column: Column | null, equipment: Equipment | null, along: Point2): readonly [number, number] {
  const one = column ?? equipment!;
  const corners = rectangleAt([0, 0], [one.size[0], one.size[1]], one.rotation ?? 0);
  const far = corners.map(([x, y]) => x * along[0] + y * along[1]);
  return [Math.min(...far), Math.max(...far)];
}

/** Heights of straps: as few as the code lets, evenly between the outermost. */
function strapsBetween(low: number, high: number, first: number, spacing: number): readonly number[] {
  const between = high - low - 2 * first;
  if (between <= 0) return [(low + high) / 2];
  const steps = Math.max(1, Math.ceil(between / spacing - 1e-9));
  return Array.from({ length: steps + 1 }, (_, i) => low + first + (between * i) / steps);
}
