import { racewayHeadroom } from '../../checks/drops/clear-height.ts';
import { lengthThrough } from '../../checks/keepout-findings.ts';
import { steelOf } from '../../network/support/steel-near.ts';
import { unheldShare } from '../../network/support/unheld.ts';
import { distance } from '../../plane/space.ts';
import { sharedOf } from '../../reach/shared.ts';
import type { Equipment, Point2, Point3, Site } from '../../site/site.ts';
import type { EdgeRow } from '../shared/home-graph.ts';
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
}

/** Over what is to stay clear, feet, where a raceway rises to cross an aisle. */
const OVER_CLEAR = 0.5;
/**
 * Where nothing drawn carries a raceway it wants steel of its own: so many times what its hangers cost, a foot. Common
 * practice, no source: near what a strut on posts costs, and far over any detour along steel that is there.
 */
const UNCARRIED = 40;
const NOTHING = 1e-6;

/**
 * The lattice of a lot: lines through the entry, the boxes, the columns, along keep-outs and raceways that are there.
 * Overhead it lies at the boxes' elevation and under the steel, and rises where it crosses what must stay clear; in the
 * ground, at one depth. No edge goes through a keep-out that blocks raceways. What steel does not carry weighs many times
 * what it does.
 */
export function latticeOf(
  site: Site,
  frame: LotFrame,
  { equipment, boxes, place, supportEvery, cover }: LatticeWish,
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
  const weight = (a: Point3, b: Point3): number =>
    !overhead || site.members.length === 0
      ? 1
      : 1 + (UNCARRIED - 1) * unheldShare(a, b, steel, site.rules.hangReach, supportEvery);
  const lay = (a: number, b: number): void => {
    if (isClear(points[a]!, points[b]!)) {
      if (isFree(points[a]!, points[b]!)) join(a, b, weight(points[a]!, points[b]!), true);
      return;
    }
    const [c, d] = [raised(a), raised(b)];
    if (isFree(points[c]!, points[d]!)) join(c, d, weight(points[c]!, points[d]!), true);
  };
  for (let i = 0; i < u.at.length; i++)
    for (let j = 0; j < columns; j++) {
      const n = i * columns + j;
      if (j + 1 < columns) lay(n, n + 1);
      if (i + 1 < u.at.length) lay(n, n + columns);
    }

  const root = put(entry);
  const foot = placeOf(entry);
  if (isFree(entry, points[foot]!)) join(root, foot, 1, true);
  const terminals = boxes.map((box) => {
    const own = placeOf(box);
    if (distance(points[own]!, box) <= site.rules.tapLimit && overhead) return own;
    const end = put(box);
    if (isFree(points[own]!, box)) join(own, end, 1, true);
    return end;
  });
  laidAlready();
  return { points, edges, isNew, root, terminals };

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
      if (meets && Math.hypot(x - at[0], y - at[1]) < APART / 2 && isFree(at, low))
        join(node, own, 1, distance(at, low) > site.rules.joinTolerance);
      return node;
    };
    for (const { places } of ways)
      for (let i = 1; i < places.length; i++) join(nodeAt(places[i - 1]!), nodeAt(places[i]!), 0, false);
    for (const tap of taps) join(root, nodeAt(tap), 0, false);
  }
}
