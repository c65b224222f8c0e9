import type { Equipment, Point3, Site } from '../../site/site.ts';
import { frameDegrees, lotFrame } from '../raceways/lot-frame.ts';
import { bestPlace, type FedBy, type Making } from './best-place.ts';
import { bandsOf, groupsAlong } from './groups.ts';
import { merged } from './merged.ts';

/** What each new piece is: all of it but where it stands. Lengths in feet. */
export type EquipmentMake = Omit<Equipment, 'at' | 'entry' | 'rotation' | 'id'> & Making;

export interface PlacedEquipment {
  readonly equipment: Omit<Equipment, 'id'>;
  /** Places in the list of boxes of those that it is for. */
  readonly boxes: readonly number[];
  /** Of their branches in all and of the longest, along the lot and square to it, feet. */
  readonly total: number;
  readonly longest: number;
  /** To what feeds it, likewise. */
  readonly feeder: number;
}

export interface EquipmentProposal {
  readonly placed: readonly PlacedEquipment[];
  /**
   * Of all branches and feeders by their weight, feet: the least there is over the places that were looked at, for the
   * stretches as they are.
   */
  readonly total: number;
  /** What it would be if equipment could stand anywhere. */
  readonly anywhere: number;
  /** Places that were looked at, for all of them. */
  readonly looked: number;
  /** Boxes for which no place was found. */
  readonly without: readonly number[];
}

/**
 * Where new equipment stands best for some boxes: as many pieces as `holds` circuits to each want, each for a stretch of
 * one band of rows, at the free place from which its branches and its feeder, by its weight, are shortest in all and none is longer than `most` feet. A
 * stretch for which there is no such place is halved, and a piece whose boxes the others of its band can take is not placed.
 */
export function proposeEquipment(
  site: Site,
  boxes: readonly Point3[],
  make: EquipmentMake,
  holds: number,
  most: number,
  fedBy: FedBy | null,
): EquipmentProposal {
  const frame = lotFrame(site);
  const turn = frameDegrees(site);
  const flat = boxes.map(([bx, by]) => frame.into([bx, by]));
  const waiting = groupsAlong(flat, holds);
  const placed: PlacedEquipment[] = [];
  const without: number[] = [];
  let now = site;
  let looked = 0;
  for (let group = waiting.shift(); group !== undefined; group = waiting.shift()) {
    const own = group.map((i) => boxes[i]!);
    const id = ` ${placed.length}`;
    const place = bestPlace(now, frame, turn, own, { ...make, id }, most, fedBy);
    if (place === null) {
      if (group.length === 1) without.push(group[0]!);
      else waiting.unshift(group.slice(0, Math.ceil(group.length / 2)), group.slice(Math.ceil(group.length / 2)));
      continue;
    }
    const { entryHeight, least: _, ...rest } = make;
    const equipment = {
      ...rest,
      at: [...place.at] as [number, number],
      ...(place.rotation !== 0 && { rotation: place.rotation }),
      entry: [...place.at, entryHeight] as [number, number, number],
    };
    placed.push({ equipment, boxes: group, total: place.total, longest: place.longest, feeder: place.feeder });
    looked += place.looked;
    now = { ...now, equipment: [...now.equipment, { ...equipment, id }] };
  }
  const bandOf = new Map(bandsOf(flat).flatMap((band, i) => band.map((box) => [box, i] as const)));
  // From one canopy to the next nothing may hold a raceway.
  const far = (box: number, { equipment: { entry }, boxes: [own] }: PlacedEquipment): number =>
    bandOf.get(box) === bandOf.get(own!) ? branchesFrom(site, entry, [boxes[box]!]) : Number.POSITIVE_INFINITY;
  const pieces = placed.length > 1 ? merged(placed, holds, most, far) : placed;
  return {
    placed: pieces,
    total: pieces.reduce((sum, one) => sum + one.total + (fedBy?.weight ?? 0) * one.feeder, 0),
    anywhere: pieces.reduce(
      (sum, one) =>
        sum +
        fromMedians(
          one.boxes.map((i) => boxes[i]!),
          frame.into,
          make.entryHeight,
          fedBy,
        ),
      0,
    ),
    looked,
    without,
  };
}

/** The branches from an entry to some boxes in all, along the lot and square to it: what places are weighed by. Feet. */
export function branchesFrom(site: Site, entry: Point3, boxes: readonly Point3[]): number {
  const { into } = lotFrame(site);
  const [u, v] = into([entry[0], entry[1]]);
  return boxes.reduce((sum, [x, y, z]) => {
    const [bu, bv] = into([x, y]);
    return sum + Math.abs(bu - u) + Math.abs(bv - v) + Math.abs(z - entry[2]);
  }, 0);
}

/** Total of branches and feeder from the weighted medians: no place has less. */
function fromMedians(
  boxes: readonly Point3[],
  into: (at: readonly [number, number]) => readonly [number, number],
  entryHeight: number,
  fedBy: FedBy | null,
): number {
  const points = [
    ...boxes.map(([x, y]) => ({ at: into([x, y]), weight: 1 })),
    ...(fedBy ? [{ at: into(fedBy.at), weight: fedBy.weight }] : []),
  ];
  // The sum is least at one of the values: each coordinate by itself.
  const toMedian = (axis: 0 | 1): number =>
    Math.min(
      ...points.map((one) =>
        points.reduce((sum, { at, weight }) => sum + weight * Math.abs(at[axis] - one.at[axis]), 0),
      ),
    );
  return toMedian(0) + toMedian(1) + boxes.reduce((sum, [, , z]) => sum + Math.abs(z - entryHeight), 0);
}
