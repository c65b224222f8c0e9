import { steelOf } from '../../../network/support/steel-near.ts';
import { distance } from '../../../plane/space.ts';
import type { Point3, Site } from '../../../site/site.ts';
import type { EdgeRow } from '../../shared/home-graph.ts';
import { crossingNear, growingLattice } from './growing-lattice.ts';
import type { Stringer } from './held-line.ts';
import { layInGround } from './lattice-ground.ts';
import { joinStanding } from './lattice-standing.ts';
import { joinAll, joinHeld, putCrossings, waysAlong } from './lattice-ways.ts';
import type { LatticeWish } from './lattice-wish.ts';
import { lotLines } from './lines.ts';
import { linesRound } from './lines-round.ts';
import type { LotFrame } from './lot-frame.ts';
import { standingWays } from './standing-ways.ts';

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

/**
 * The lattice of a lot: lines through the entry, the boxes, the columns, along keep-outs and raceways that are there.
 * Overhead it lies at the boxes' elevation and under the steel, and rises where it crosses what must stay clear; in the
 * ground, at one depth. No edge goes through a keep-out that blocks raceways. Where there is steel, what hangs has something
 * that holds it, a stringer that is put in among it, and else goes in the ground, down at the equipment and up at columns.
 */
export function latticeOf(site: Site, frame: LotFrame, wish: LatticeWish): Lattice {
  const { entry } = wish.equipment;
  const { boxes, cover, times, room } = wish;
  const { u, v } = (wish.isWide ? linesRound : lotLines)(site, frame, entry, boxes);
  const growing = growingLattice(site);
  const { points, edges, isNew, put, join, isFree } = growing;
  const overhead = wish.place === 'overhead';
  const placeOf = crossingNear(frame, u, v);
  putCrossings(growing, site, frame, u, v, wish);

  const steel = steelOf(site.members);
  const isHeldUp = overhead && site.members.length > 0 && !wish.inAir;
  const foot = placeOf(entry);
  const ends = new Set(boxes.map(placeOf));
  const ways = waysAlong(growing, site, u.at.length, v.at.length, wish);
  const stringers = isHeldUp
    ? joinHeld(growing, site, { ways, rows: u.at.length, steel, foot, ends, wish })
    : joinAll(growing, site, ways, steel, wish);

  const root = put(entry);
  if (isFree(entry, points[foot]!)) join(root, foot, 1, true);
  const terminals = boxes.map((box) => {
    const own = placeOf(box);
    if (distance(points[own]!, box) <= site.rules.tapLimit && overhead) return own;
    const end = put(box);
    if (isFree(points[own]!, box)) join(own, end, 1, true);
    return end;
  });
  const buried = isHeldUp
    ? layInGround(growing, site, { frame, entry, boxes, steel, cover, times: times.ground, root, placeOf })
    : [];
  joinStanding(growing, site, standingWays(site, entry, frame, u.at, v.at), { overhead, buried, root, placeOf, room });
  return { points, edges, isNew, root, terminals, stringers };
}
