import { racewayHeadroom } from '../../checks/drops/clear-height.ts';
import { lengthThrough } from '../../checks/keepout-findings.ts';
import { steelOf } from '../../network/support/steel-near.ts';
import { unheldShare } from '../../network/support/unheld.ts';
import { insideOf } from '../../plane/obstacle.ts';
import { distance } from '../../plane/space.ts';
import { sharedOf } from '../../reach/shared.ts';
import type { Equipment, Point2, Point3, Site } from '../../site/site.ts';
import { outlineOf } from '../../standing/outlines.ts';
import type { EdgeRow } from '../shared/home-graph.ts';
import { groundLines, OUT_OF_GROUND, risersOf } from './ground-ways.ts';
import type { Stringer } from './held-line.ts';
import { heldWays } from './held-ways.ts';
import { levelsOf, unevenness } from './levels.ts';
import { APART, lotLines, nearestLine } from './lines.ts';
import type { LotFrame } from './lot-frame.ts';
import { standingWays } from './standing-ways.ts';
import { steelAt } from './steel.ts';

/** What is to be joined to a piece of equipment. */
export interface LatticeWish {
  readonly equipment: Equipment;
  /** Boxes of drops. */
  readonly boxes: readonly Point3[];
  readonly place: 'overhead' | 'underground';
  /** Supports of what is laid overhead may be so far apart. */
  readonly supportEvery: number;
  /** What is laid in the ground lies so deep, feet. */
  readonly cover: number;
  /** A foot in the ground, and of a stringer, costs so many times what the hangers of a foot overhead do. */
  readonly times: { readonly ground: number; readonly stringer: number };
  /** Where nothing holds it, it hangs all the same: there is no other way. */
  readonly inAir: boolean;
}

/** Where raceways may be laid: straight along the lot and square to it. Lengths in feet. */
export interface Lattice {
  readonly points: readonly Point3[];
  readonly edges: readonly EdgeRow[];
  /** Whether an edge would be a new raceway; the others lie on what is there, or are taps. */
  readonly isNew: readonly boolean[];
  readonly root: number;
  /** One for each box. */
  readonly terminals: readonly number[];
  /** Stringers that a new raceway along an edge wants; none for most. */
  readonly stringers: ReadonlyMap<number, readonly Stringer[]>;
}

/** Over what is to stay clear, feet, where a raceway rises to cross an aisle. */
const OVER_CLEAR = 0.5;
/**
 * Where nothing drawn carries a raceway it wants steel of its own: so many times what its hangers cost, a foot. Common
 * practice, no source: near what a strut on posts costs, and far over any detour along steel that is there.
 */
const UNCARRIED = 40;
const NOTHING = 1e-6;
/** Nearer than this, feet, two places are one: those of a turned lot are rounded. */
const SAME = 1e-3;

/**
 * The lattice of a lot: lines through the entry, the boxes, the columns, along keep-outs and raceways that are there.
 * Overhead it lies at the boxes' elevation and under the steel, and rises where it crosses what must stay clear; in the
 * ground, at one depth. No edge goes through a keep-out that blocks raceways. Where there is steel, what hangs has something
 * that holds it, a stringer that is put in among it, and else goes in the ground, down at the equipment and up at columns.
 */
export function latticeOf(
  site: Site,
  frame: LotFrame,
  { equipment, boxes, place, supportEvery, cover, times, inAir }: LatticeWish,
): Lattice {
  const { entry } = equipment;
  const overhead = place === 'overhead';
  const flat = (at: readonly number[]): Point2 => frame.into([at[0]!, at[1]!]);
  const { u, v } = lotLines(site, frame, entry, boxes);

  const points: Point3[] = [];
  const edges: EdgeRow[] = [];
  const isNew: boolean[] = [];
  const put = (at: Point3): number => points.push(at) - 1;
  const join = (a: number, b: number, multiplier: number, fresh: boolean): void => {
    const length = distance(points[a]!, points[b]!);
    edges.push([a, b, length, multiplier]);
    isNew.push(fresh && length > NOTHING);
  };
  const blocking = site.keepouts.filter(({ blocks }) => blocks.includes('raceway'));
  const isFree = (a: Point3, b: Point3): boolean => blocking.every((one) => lengthThrough(one, a, b) <= NOTHING);

  const columns = v.at.length;
  const flatOf = ([x, y]: Point3): Point2 => [x, y];
  const placeOf = (at: readonly number[]): number => {
    const [a, b] = flat(at);
    return nearestLine(u, a) * columns + nearestLine(v, b);
  };
  const inFrame = boxes.map((box): Point3 => [...flat(box), box[2]]);
  const alongU = unevenness(v, inFrame, 1) <= unevenness(u, inFrame, 0);
  const [lines, across] = alongU ? [v, u] : [u, v];
  const levels = !overhead
    ? lines.at.map(() => -cover)
    : levelsOf(lines, across, inFrame, alongU ? 1 : 0, (line, other) =>
        steelAt(site.members, frame.outOf(alongU ? [u.at[other]!, v.at[line]!] : [u.at[line]!, v.at[other]!])),
      );
  u.at.forEach((a, i) => {
    v.at.forEach((b, j) => {
      put([...frame.outOf([a, b]), levels[alongU ? j : i]!]);
    });
  });

  const ground = { shared: sharedOf(site), stalls: site.stalls };
  const isClear = (a: Point3, b: Point3): boolean =>
    !overhead || racewayHeadroom({ id: '', path: [[...a], [...b]], method: 'EMT', place }, ground).length === 0;
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
  const steel = steelOf(site.members);
  const isHeldUp = overhead && site.members.length > 0 && !inAir;
  const stringers = new Map<number, readonly Stringer[]>();
  const weight = (a: Point3, b: Point3): number =>
    !overhead || site.members.length === 0
      ? 1
      : 1 + (UNCARRIED - 1) * unheldShare(a, b, steel, site.rules.hangReach, supportEvery);
  /** Ends of the edge between two places of the lattice, raised where it has to be; null where it is shut. */
  const way = (a: number, b: number): readonly [number, number] | null => {
    const ends = isClear(points[a]!, points[b]!) ? ([a, b] as const) : ([raised(a), raised(b)] as const);
    return isFree(points[ends[0]]!, points[ends[1]]!) ? ends : null;
  };
  const rows = u.at.map((_, i) => v.at.map((__, j) => i * columns + j));
  const foot = placeOf(entry);
  const ends = new Set(boxes.map(placeOf));
  const lattice = [...rows, ...v.at.map((_, j) => rows.map((row) => row[j]!))];
  const ways = lattice.map((line) => line.slice(1).map((n, k) => way(line[k]!, n)));
  if (isHeldUp)
    for (const { a, b, held } of heldWays(ways, u.at.length, points, {
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
  else
    for (const line of ways)
      for (const one of line) if (one) join(...one, weight(points[one[0]]!, points[one[1]]!), true);

  const root = put(entry);
  if (isFree(entry, points[foot]!)) join(root, foot, 1, true);
  const terminals = boxes.map((box) => {
    const own = placeOf(box);
    if (distance(points[own]!, box) <= site.rules.tapLimit && overhead) return own;
    const end = put(box);
    if (isFree(points[own]!, box)) join(own, end, 1, true);
    return end;
  });
  const buried = isHeldUp ? inTheGround() : [];
  laidAlready();
  return { points, edges, isNew, root, terminals, stringers };

  /** Trenches from the entry to where conduits come up to the lattice. Gives its places. */
  function inTheGround(): readonly number[] {
    const lines = groundLines(site, frame, entry, boxes, risersOf(site, steel).at);
    const wide = lines.v.at.length;
    const first = points.length;
    for (const a of lines.u.at) for (const b of lines.v.at) put([...frame.outOf([a, b]), -cover]);
    const dig = (a: number, b: number): void => {
      if (isFree(points[a]!, points[b]!)) join(a, b, times.ground, true);
    };
    lines.u.at.forEach((_, i) => {
      for (let j = 0; j < wide; j++) {
        const n = first + i * wide + j;
        if (j + 1 < wide) dig(n, n + 1);
        if (i + 1 < lines.u.at.length) dig(n, n + wide);
      }
    });
    const under = (at: Point2): number => {
      const [a, b] = frame.into(at);
      return first + nearestLine(lines.u, a) * wide + nearestLine(lines.v, b);
    };
    /** Down to a place of the ground, upright. */
    const down = (top: number, [x, y]: Point2): void => {
      const near = under([x, y]);
      const at: Point3 = [x, y, -cover];
      const isThere = distance(points[near]!, at) < SAME;
      const low = isThere ? near : put(at);
      if (!isThere) dig(near, low);
      if (isFree(points[top]!, points[low]!)) join(top, low, 1, true);
    };
    down(root, flatOf(entry));
    for (const at of lines.risers) {
      const above = placeOf(at);
      const [x, y, z] = points[above]!;
      if (z <= OUT_OF_GROUND || Math.hypot(x - at[0], y - at[1]) > site.rules.hangReach) continue;
      const low = put([x, y, OUT_OF_GROUND]);
      if (isFree(points[above]!, points[low]!)) join(above, low, 1, true);
      down(low, [x, y]);
    }
    return Array.from({ length: points.length - first }, (_, k) => first + k);
  }

  /** Raceways that are there cost no raceway again. */
  function laidAlready(): void {
    const { ways, taps } = standingWays(site, entry, frame, u.at, v.at);
    const known = new Map<string, number>();
    const nodeAt = (at: Point3): number => {
      const key = at.map((value) => Math.round(value * 1e4)).join(' ');
      const before = known.get(key);
      if (before !== undefined) return before;
      const node = put(at);
      known.set(key, node);
      const own = placeOf(at);
      const [x, y] = points[own]!;
      const low = points[own]!;
      // What hangs does not come down into the ground to a raceway that is buried there: it meets it where that comes up.
      const meets = !overhead || at[2] >= 0;
      if (at[2] < 0) for (const low of buried) if (distance(points[low]!, at) < APART / 2) join(node, low, 1, false);
      if (meets && Math.hypot(x - at[0], y - at[1]) < APART / 2 && isFree(at, low))
        join(node, own, 1, distance(at, low) > site.rules.joinTolerance);
      return node;
    };
    for (const { places } of ways)
      for (let i = 1; i < places.length; i++) join(nodeAt(places[i - 1]!), nodeAt(places[i]!), 0, false);
    for (const tap of taps) join(root, nodeAt(tap), 0, false);
  }
}
