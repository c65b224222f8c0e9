import { racewayHeadroom } from '../../../checks/drops/clear-height.ts';
import type { Steel } from '../../../network/support/steel-near.ts';
import { unheldShare } from '../../../network/support/unheld.ts';
import { insideOf } from '../../../plane/obstacle.ts';
import { sharedOf } from '../../../reach/shared.ts';
import type { Point3, Site } from '../../../site/site.ts';
import { outlineOf } from '../../../standing/outlines.ts';
import type { GrowingLattice } from './growing-lattice.ts';
import type { Stringer } from './held-line.ts';
import { heldWays } from './held-ways.ts';
import type { LatticeWish } from './lattice-wish.ts';
import { levelsOf, unevenness } from './levels.ts';
import type { LatticeLines } from './lines.ts';
import type { LotFrame } from './lot-frame.ts';
import { steelAt } from './steel.ts';

/** Over what is to stay clear, feet, where a raceway rises to cross an aisle. */
const OVER_CLEAR = 0.5;
/**
 * Where nothing drawn carries a raceway it wants steel of its own: so many times what its hangers cost, a foot. Common
 * practice, no source: near what a strut on posts costs, and far over any detour along steel that is there.
 */
const UNCARRIED = 40;

/** The crossings of the lines along and across the lot: overhead at the boxes' elevation and under the steel, else at one depth. */
export function putCrossings(
  { put }: GrowingLattice,
  site: Site,
  frame: LotFrame,
  u: LatticeLines,
  v: LatticeLines,
  { boxes, place, cover }: LatticeWish,
): void {
  const inFrame = boxes.map((box): Point3 => [...frame.into([box[0], box[1]]), box[2]]);
  const alongU = unevenness(v, inFrame, 1) <= unevenness(u, inFrame, 0);
  const [lines, across] = alongU ? [v, u] : [u, v];
  const levels =
    place === 'underground'
      ? lines.at.map(() => -cover)
      : levelsOf(lines, across, inFrame, alongU ? 1 : 0, (line, other) =>
          steelAt(site.members, frame.outOf(alongU ? [u.at[other]!, v.at[line]!] : [u.at[line]!, v.at[other]!])),
        );
  u.at.forEach((a, i) => {
    v.at.forEach((b, j) => {
      put([...frame.outOf([a, b]), levels[alongU ? j : i]!]);
    });
  });
}

/** Ends of an edge between two places of the lattice, raised where they have to be; null where it is shut. */
type Way = readonly [number, number] | null;

/** The edges along each line of the lattice, of so many rows and columns of crossings. */
export function waysAlong(
  { points, put, join, isFree }: GrowingLattice,
  site: Site,
  rows: number,
  columns: number,
  { place }: LatticeWish,
): readonly (readonly Way[])[] {
  const ground = { shared: sharedOf(site), stalls: site.stalls };
  const isClear = (a: Point3, b: Point3): boolean =>
    place === 'underground' ||
    racewayHeadroom({ id: '', path: [[...a], [...b]], method: 'EMT', place }, ground).length === 0;
  const high = Math.max(...Object.values(site.rules.clearHeight)) + OVER_CLEAR;
  const risen = new Map<number, number>();
  const raised = (n: number): number => {
    const known = risen.get(n);
    if (known !== undefined) return known;
    const [x, y, z] = points[n]!;
    const up = put([x, y, Math.max(high, z)]);
    risen.set(n, up);
    if (isFree(points[n]!, points[up]!)) join(n, up, 1, true);
    return up;
  };
  const way = (a: number, b: number): Way => {
    const ends = isClear(points[a]!, points[b]!) ? ([a, b] as const) : ([raised(a), raised(b)] as const);
    return isFree(points[ends[0]]!, points[ends[1]]!) ? ends : null;
  };
  const along = Array.from({ length: rows }, (_, i) => Array.from({ length: columns }, (__, j) => i * columns + j));
  const across = Array.from({ length: columns }, (_, j) => along.map((row) => row[j]!));
  return [...along, ...across].map((line) => line.slice(1).map((n, k) => way(line[k]!, n)));
}

/** What edges are held by, and what they join. */
export interface HeldWish {
  readonly ways: readonly (readonly Way[])[];
  readonly rows: number;
  readonly steel: Steel;
  /** Place of the lattice at the entry, and those at boxes. */
  readonly foot: number;
  readonly ends: ReadonlySet<number>;
  readonly wish: LatticeWish;
}

/** Puts in the edges that something holds, or stringers do that are put in; gives the stringers by edge. */
export function joinHeld(
  { points, edges, put, join }: GrowingLattice,
  site: Site,
  { ways, rows, steel, foot, ends, wish: { supportEvery, times } }: HeldWish,
): ReadonlyMap<number, readonly Stringer[]> {
  const stringers = new Map<number, readonly Stringer[]>();
  for (const { a, b, held } of heldWays(ways, rows, points, {
    steel,
    reach: site.rules.hangReach,
    apart: supportEvery,
    isAnchor: ([x, y]) => x === points[foot]![0] && y === points[foot]![1],
    mayHang: ([x, y]) => !site.aisles.some((aisle) => insideOf(outlineOf(aisle), x, y)),
    twin: (n) => put(points[n]!),
    isEnd: (n) => n === foot || ends.has(n),
  })) {
    if (held.stringers.length > 0) stringers.set(edges.length, held.stringers);
    join(a, b, 1 + times.stringer * held.share, true);
  }
  return stringers;
}

const NO_STRINGERS: ReadonlyMap<number, readonly Stringer[]> = new Map();

/** Puts in all edges, those overhead dearer as far as no steel holds them. */
export function joinAll(
  { points, join }: GrowingLattice,
  site: Site,
  ways: readonly (readonly Way[])[],
  steel: Steel,
  { place, supportEvery }: LatticeWish,
): ReadonlyMap<number, readonly Stringer[]> {
  const weight = (a: Point3, b: Point3): number =>
    place === 'underground' || site.members.length === 0
      ? 1
      : 1 + (UNCARRIED - 1) * unheldShare(a, b, steel, site.rules.hangReach, supportEvery);
  for (const line of ways)
    for (const one of line) if (one) join(...one, weight(points[one[0]]!, points[one[1]]!), true);
  return NO_STRINGERS;
}
