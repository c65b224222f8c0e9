import { kept } from '../../kept/kept.ts';
import { type Box, widened } from '../../plane/box.ts';
import { type BoxIndex, indexing, positionsIn } from '../../plane/box-index.ts';
import { rectangleAt } from '../../plane/rectangle.ts';
import { hangingOf } from '../../site/hanging.ts';
import { printLength } from '../../site/numbers/feet-inches.ts';
import type { Finding } from '../../site/rules/finding.ts';
import type { Charger, Column, Drop, Equipment, Point2, Point3, Rules, Site, Stall, Vehicle } from '../../site/site.ts';
import { footprintOf } from '../../standing/footprint.ts';
import { stallsIn } from '../../standing/outlines.ts';
import { parkedRectangle, vehicleOf } from '../../standing/parked.ts';
import { accessibleUse } from './accessible-stalls.ts';
import { sideReach } from './clear-floor.ts';
import { pedestalsAmong } from './guard-findings.ts';

/** Reach ranges, feet: 15 to 48 in, 46 in over something deeper than 10 in (2010 ADA Standards 308.3). */
const LOW = 15 / 12;
const HIGH = 4;
const HIGH_OVER = 46 / 12;
const SHALLOW = 10 / 12;
const SOURCE = '2010 ADA Standards 308.3, 305.3';
/** Half of a pedestal, feet: what stands in the way, and how far its face is off its middle. Common practice, no source. */
const PEDESTAL = 0.5;
/** What stands farther off than this is in no way of a clear floor space, feet. */
const NEAR = 9;

/** Chargers that serve accessible stalls with a floor space to come from, and the first of those stalls. */
const accessibleChargers = kept(
  (chargers: readonly Charger[], stalls: readonly Stall[]): readonly (readonly [charger: number, stall: Stall])[] => {
    const own = new Map(
      stalls
        .filter((stall) => ['van', 'standard'].includes(accessibleUse(stall) ?? ''))
        .map((stall) => [stall.id, stall]),
    );
    if (own.size === 0) return [];
    return chargers.flatMap(({ stalls: served }, i): (readonly [number, Stall])[] => {
      const first = served.find((id) => own.has(id));
      return first === undefined ? [] : [[i, own.get(first)!]];
    });
  },
);

/** How many drops are looked at: those whose chargers serve accessible stalls. */
export const reachedDrops = ({ chargers, stalls }: Pick<Site, 'chargers' | 'stalls'>): number =>
  accessibleChargers(chargers, stalls).length;

/**
 * What is operated at accessible stalls: `reach-range`, a connector at rest or a pedestal's box out of reach from a
 * wheelchair; `clear-floor`, no clear floor space from which it is reached. Vehicles stand in all stalls.
 */
export function reachRangeFindings(site: Site): readonly Finding[] {
  const own = accessibleChargers(site.chargers, site.stalls);
  if (own.length === 0) return [];
  const { at } = hangingOf(site.chargers, site.drops);
  const looked = new Map<Drop, Stall>();
  for (const [charger, stall] of own) {
    const drop = site.drops[at[charger]!];
    if (drop !== undefined && !looked.has(drop)) looked.set(drop, stall);
  }
  const pedestals = pedestalsAmong(site.drops);
  return [...looked].flatMap(([drop, stall]) => dropFindings(drop, stall, pedestals, site));
}

const columnsNear = indexing<Column>(({ at, size }) => around(at, Math.max(...size)));
const equipmentNear = indexing<Equipment>(({ at, size }) => around(at, Math.max(size[0], size[1])));
const pedestalsNear = indexing<Drop>(({ box }) => around([box[0], box[1]], 2 * PEDESTAL));
const around = ([x, y]: Point2, half: number): Box => widened({ minX: x, minY: y, maxX: x, maxY: y }, half);

function dropFindings(drop: Drop, stall: Stall, pedestals: readonly Drop[], site: Site): readonly Finding[] {
  const [x, y] = placeOf(drop);
  const box = around([x, y], NEAR);
  const near = <T>(index: BoxIndex<T>): readonly T[] => positionsIn(index, box).map((i) => index.items[i]!);
  return keptFindings(
    drop,
    stall,
    stallsIn(site.stalls, box),
    near(columnsNear(site.columns)),
    near(equipmentNear(site.equipment)),
    pedestals.length === 0 ? pedestals : near(pedestalsNear(pedestals)),
    site.vehicles,
    site.rules,
    site.units,
  );
}

const isOverhead = ({ mount = 'overhead' }: Drop): boolean => mount === 'overhead';
const placeOf = (drop: Drop): Point3 => (isOverhead(drop) ? (drop.retractor ?? drop.box) : drop.box);

const keptFindings = kept(
  (
    drop: Drop,
    stall: Stall,
    stalls: readonly Stall[],
    columns: readonly Column[],
    equipment: readonly Equipment[],
    pedestals: readonly Drop[],
    vehicles: ReadonlyMap<string, Vehicle>,
    rules: Rules,
    units: Site['units'],
  ): readonly Finding[] => {
    const overhead = isOverhead(drop);
    const [x, y] = placeOf(drop);
    const standing = [
      ...columns.map(({ at, size, rotation = 0 }) => rectangleAt(at, size, rotation)),
      ...equipment.map(footprintOf),
      ...pedestals.map(({ box }) => rectangleAt([box[0], box[1]], [2 * PEDESTAL, 2 * PEDESTAL], stall.heading)),
      ...stalls.map((one) => parkedRectangle(one, vehicleOf(one, { vehicles, rules }), rules.headClearance)),
    ];
    const depth = sideReach([x, y], overhead ? null : PEDESTAL, stall.heading, standing);
    const what = overhead ? 'connector at rest' : drop.mount === 'pedestal' ? 'pedestal' : 'wall box';
    if (depth === null)
      return [
        {
          severity: 'warn',
          rule: 'clear-floor',
          about: [drop.id, stall.id],
          says: `No clear floor space of 30 x 48 in lies within 24 in of the ${what} of ${drop.id}, which serves ${stall.id}, ${stall.use}, with vehicles in all stalls. Move it to the access aisle’s side, or what stands there.`,
          source: SOURCE,
        },
      ];
    const high = depth > SHALLOW + 1e-9 ? HIGH_OVER : HIGH;
    const heights = overhead ? [drop.restHeight] : [drop.box[2], drop.restHeight];
    const length = (feet: number): string => printLength(feet, units);
    return heights.flatMap((height): Finding[] => {
      if (height === undefined || (height >= LOW - 1e-9 && height <= high + 1e-9)) return [];
      const limit = height < LOW ? LOW : high;
      const over = high < HIGH && height > high ? `, reached ${length(depth)} deep,` : '';
      return [
        {
          severity: 'fail',
          rule: 'reach-range',
          about: [drop.id, stall.id],
          says: `The ${height === drop.restHeight ? 'connector at rest' : what} of ${drop.id}, which serves ${stall.id}, ${stall.use}, is at ${length(height)}${over} ${height < LOW ? 'under' : 'over'} the ${length(limit)} that is in reach.`,
          value: height,
          limit,
          unit: 'ft',
          source: SOURCE,
        },
      ];
    });
  },
);
