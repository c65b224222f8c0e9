import { boxOf, widened } from '../../plane/box.ts';
import type { WorkingSpace } from '../../site/place/working-space.ts';
import type { Equipment, Point2, Point3, Site } from '../../site/site.ts';
import type { LotFrame } from '../raceways/lot-frame.ts';
import { away } from '../raceways/steel.ts';
import { standsFree } from './stands-free.ts';

/** A place for a piece of equipment. Lengths in feet. */
export interface EquipmentPlace {
  readonly at: Point2;
  readonly rotation: number;
  /** Of all branches from there, along the lot and square to it. */
  readonly total: number;
  /** Likewise to what feeds it; 0 where nothing does. */
  readonly feeder: number;
  /** Of the longest. */
  readonly longest: number;
  /** How many places were looked at; none of them that is free has a smaller total. */
  readonly looked: number;
}

/** What feeds the equipment: where that is, and how many feet of branch a foot of feeder counts as. */
export interface FedBy {
  readonly at: Point2;
  readonly weight: number;
}

/** What is asked of new equipment beside what it is. */
export interface Making {
  /** Of its entry, over its middle, feet. */
  readonly entryHeight: number;
  /** Of a working space, whatever the equipment. */
  readonly least: WorkingSpace;
}

/**
 * Places are looked at on a grid of such steps, so far beyond the boxes: past the ends of their row and over an aisle; and
 * where none of those is free, as far as a branch goes.
 */
const STEP = 1;
const BEYOND = 40;
const FARTHEST = 400;
/** Where there is steel equipment stands by it, this near, feet: what leaves it is carried from there. Common practice, no source. */
const BY_STEEL = 8;

/**
 * The free place from which the branches to some boxes are shortest in all, with the feeder by its weight, and none of
 * them longer than `most`: every place of a grid about them is looked at, in each of four turns; where there is steel, by
 * the steel. Null where none is free.
 * @param make the equipment but for its place
 */
export function bestPlace(
  site: Site,
  frame: LotFrame,
  turn: number,
  boxes: readonly Point3[],
  make: Make,
  most: number,
  fedBy: FedBy | null,
): EquipmentPlace | null {
  const near = bestWithin(BEYOND, site, frame, turn, boxes, make, most, fedBy);
  const far = Math.min(most, FARTHEST);
  return near ?? (far > BEYOND ? bestWithin(far, site, frame, turn, boxes, make, most, fedBy) : null);
}

type Make = Pick<Equipment, 'id' | 'kind' | 'size' | 'workingSpace'> & Making;

function bestWithin(
  beyond: number,
  site: Site,
  frame: LotFrame,
  turn: number,
  boxes: readonly Point3[],
  { least, ...make }: Make,
  most: number,
  fedBy: FedBy | null,
): EquipmentPlace | null {
  const flat = boxes.map(([x, y]) => frame.into([x, y]));
  const rise = boxes.reduce((sum, [, , z]) => sum + Math.abs(z - make.entryHeight), 0);
  const { minX, minY, maxX, maxY } = widened(boxOf(flat), beyond);
  const overU = sumsTo(flat.map(([u]) => u));
  const overV = sumsTo(flat.map(([, v]) => v));
  const source = fedBy && frame.into(fedBy.at);
  const toSource = (u: number, v: number): number => (source ? Math.abs(u - source[0]) + Math.abs(v - source[1]) : 0);
  const places: { readonly u: number; readonly v: number; readonly total: number; readonly weighed: number }[] = [];
  for (let u = Math.ceil(minX / STEP) * STEP; u <= maxX; u += STEP)
    for (let v = Math.ceil(minY / STEP) * STEP; v <= maxY; v += STEP) {
      const total = overU(u) + overV(v) + rise;
      places.push({ u, v, total, weighed: total + (fedBy?.weight ?? 0) * toSource(u, v) });
    }
  places.sort((a, b) => a.weighed - b.weighed || a.u - b.u || a.v - b.v);
  for (const { u, v, total } of places) {
    const longest = Math.max(
      ...flat.map(([x, y], i) => Math.abs(x - u) + Math.abs(y - v) + Math.abs(boxes[i]![2] - make.entryHeight)),
    );
    if (longest > most) continue;
    const at = frame.outOf([u, v]);
    if (site.members.length > 0 && site.members.every((member) => away(member, at) > BY_STEEL)) continue;
    for (const quarter of [0, 180, 90, 270]) {
      const rotation = (turn + quarter) % 360;
      const equipment: Equipment = {
        ...make,
        at: [...at],
        entry: [...at, make.entryHeight],
        ...(rotation !== 0 && { rotation }),
      };
      if (standsFree(site, equipment, least))
        return { at, rotation, total, longest, feeder: toSource(u, v), looked: places.length };
    }
  }
  return null;
}

/** The sum of the distances from a value to some others. */
function sumsTo(values: readonly number[]): (from: number) => number {
  return (from) => values.reduce((sum, value) => sum + Math.abs(value - from), 0);
}
