import { COINCIDENT, distance } from '../plane/space.ts';
import type { Point3 } from '../site/site.ts';
import { bendsOf, isBend } from './bends.ts';
import type { Run } from './run.ts';
import { isNoLonger, stopsBeside } from './straightest.ts';
import type { Tap } from './taps.ts';
import { componentOf, type Ways, type WaysInPart } from './ways.ts';

/** A way from equipment to a point, by a tap at either end. Lengths in feet. */
export interface Way extends Pick<Run, 'path' | 'legs' | 'raceways' | 'bends' | 'bendDegrees'> {
  readonly length: number;
  readonly taps: { readonly start: number; readonly end: number };
}

/** One way to come to the end's tap: from a stop beside it, or straight from a tap of the equipment on the same leg. */
interface Approach {
  readonly part: WaysInPart;
  readonly end: Tap;
  /** Along the last leg. */
  readonly stretch: number;
  readonly length: number;
  /** Node of the network, or -1 where it comes straight from `start`. */
  readonly node: number;
  readonly start: Tap | null;
}

interface Choice {
  readonly approach: Approach;
  readonly state: number;
  readonly bends: number;
  readonly rank: number;
}

/**
 * The shortest way to `to` by one of the taps `ends`; null where none of them is in reach of the equipment. Of equally
 * short ways the one with the fewest bends, taps included; of those, the one whose raceway ids, read from the far end
 * back to the equipment, come first.
 */
export function shortestWay(ways: Ways, ends: readonly Tap[], to: Point3): Way | null {
  const approaches = ends.flatMap((end) => approachesTo(ways, end));
  let least = Number.POSITIVE_INFINITY;
  for (const { length } of approaches) if (length < least) least = length;
  let best: Choice | null = null;
  for (const approach of approaches) {
    if (!isNoLonger(approach.length, least)) continue;
    for (const choice of choicesOf(ways, approach, to)) if (!best || isBetter(choice, best)) best = choice;
  }
  return best && traced(ways, best, to, least);
}

function approachesTo(ways: Ways, end: Tap): Approach[] {
  const { network } = ways;
  const part = ways.parts.get(componentOf(network, end));
  if (!part) return [];
  const { stopNode, stopAlong } = network;
  const beside = stopsBeside(network, end);
  const approaches = beside.map(({ stop, length }): Approach => {
    const node = stopNode[stop]!;
    const before = part.distances.distance[node - part.distances.base]!;
    return { part, end, stretch: length, length: before + length + end.length, node, start: null };
  });
  if (beside.length < 2) return approaches;
  const low = stopAlong[beside[0]!.stop]!;
  const high = stopAlong[beside[1]!.stop]!;
  for (const start of part.taps) {
    if (start.leg !== end.leg || start.along < low + COINCIDENT || start.along > high - COINCIDENT) continue;
    const stretch = Math.abs(end.along - start.along);
    approaches.push({ part, end, stretch, length: start.length + stretch + end.length, node: -1, start });
  }
  return approaches;
}

function choicesOf(ways: Ways, approach: Approach, to: Point3): Choice[] {
  const { network } = ways;
  const { part, end, stretch, node, start } = approach;
  const [qx, qy, qz] = end.point;
  const tap: Point3 = end.length < COINCIDENT ? [0, 0, 0] : [to[0] - qx, to[1] - qy, to[2] - qz];
  const rank = stretch < COINCIDENT ? -1 : network.legs.rank[end.leg]!;
  const turns = (before: Point3, last: Point3): number =>
    stretch < COINCIDENT
      ? Number(isBend(...before, ...tap))
      : Number(isBend(...before, ...last)) + Number(isBend(...last, ...tap));
  if (start) {
    const [sx, sy, sz] = start.point;
    const { entry } = ways;
    const first: Point3 = start.length < COINCIDENT ? [0, 0, 0] : [sx - entry[0], sy - entry[1], sz - entry[2]];
    return [{ approach, state: -1, bends: turns(first, [qx - sx, qy - sy, qz - sz]), rank }];
  }
  const { straightest, distances } = part;
  const last: Point3 = [qx - network.x[node]!, qy - network.y[node]!, qz - network.z[node]!];
  return straightest.arrivals(node - distances.base).map((state) => ({
    approach,
    state,
    bends: straightest.bends[state]! + turns(straightest.heading(state), last),
    rank,
  }));
}

function isBetter(a: Choice, b: Choice): boolean {
  if (a.bends !== b.bends) return a.bends < b.bends;
  // Two ends in different components share no raceway: their last legs tell them apart, or else the end does.
  if (a.approach.part !== b.approach.part)
    return a.rank !== b.rank ? a.rank < b.rank : a.approach.end.leg < b.approach.end.leg;
  return a.approach.part.straightest.compare(a.rank, a.state, b.rank, b.state) < 0;
}

/** Walks the choice back to the equipment and writes it down from there. */
function traced(ways: Ways, { approach, state, rank }: Choice, to: Point3, length: number): Way {
  const { network, entry } = ways;
  const { straightest, distances } = approach.part;
  const { legs, head, leg, x, y, z } = network;
  const trail = trailOf(entry);
  let start = approach.start;
  const states: number[] = [];
  for (let at = state; at >= 0; at = straightest.via[at]!) states.push(at);
  if (!start) start = straightest.steps[states.at(-1)! - straightest.halves]!.tap;
  trail.go(start.point, -1, null);
  for (const at of states.reverse()) {
    const step = at >= straightest.halves ? straightest.steps[at - straightest.halves]! : null;
    const n = step ? step.node + distances.base : head[at + distances.baseHalf]!;
    const on = step ? step.tap.leg : leg[at + distances.baseHalf]!;
    trail.go([x[n]!, y[n]!, z[n]!], on, on < 0 ? null : legs.raceways[legs.rank[on]!]!);
  }
  const { end } = approach;
  trail.go(end.point, end.leg, rank < 0 ? null : legs.raceways[rank]!);
  trail.go(to, -1, null);
  trail.endAt(to);
  const { path, legs: ids } = trail;
  const bends = bendsOf(path);
  return {
    length,
    taps: { start: start.length, end: end.length },
    path,
    legs: ids,
    raceways: inOrderOfTravel(ids),
    bends: bends.length,
    bendDegrees: bends.reduce((sum, { degrees }) => sum + degrees, 0),
  };
}

/**
 * A path as it is walked: points that repeat the last are left out, and those passed in the middle of a leg. Even where
 * the box is at the entry it has both.
 */
function trailOf(from: Point3) {
  const path: Point3[] = [from];
  const legs: (string | null)[] = [];
  let lastLeg = -1;
  const go = (to: Point3, leg: number, raceway: string | null): void => {
    if (distance(path[path.length - 1]!, to) < COINCIDENT) return;
    if (leg >= 0 && leg === lastLeg) path[path.length - 1] = to;
    else {
      path.push(to);
      legs.push(raceway);
    }
    lastLeg = leg;
  };
  const endAt = (to: Point3): void => {
    if (path.length > 1) path[path.length - 1] = to;
    else {
      path.push(to);
      legs.push(null);
    }
  };
  return { path, legs, go, endAt };
}

function inOrderOfTravel(legs: readonly (string | null)[]): string[] {
  const raceways: string[] = [];
  for (const id of legs) if (id !== null && id !== raceways.at(-1)) raceways.push(id);
  return raceways;
}
