import { COINCIDENT, distance } from '../plane/space.ts';
import type { Point3 } from '../site/site.ts';
import { bendsOf, isBend } from './bends.ts';
import type { Run } from './run.ts';
import { isNotLonger, stopsBeside } from './straightest.ts';
import type { Tap } from './taps.ts';
import { componentOf, type WaysFrom, type WaysInPart } from './ways.ts';

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
export function shortestWay(ways: WaysFrom, ends: readonly Tap[], to: Point3): Way | null {
  const approaches: Approach[] = [];
  for (const end of ends) addApproaches(approaches, ways, end);
  let least = Number.POSITIVE_INFINITY;
  for (const { length } of approaches) if (length < least) least = length;
  let best: Choice | null = null;
  for (const approach of approaches) if (isNotLonger(approach.length, least)) best = betterOf(best, ways, approach, to);
  return best && traced(ways, best, to, least);
}

function addApproaches(approaches: Approach[], ways: WaysFrom, end: Tap): void {
  const { network } = ways;
  const part = ways.parts.get(componentOf(network, end));
  if (!part) return;
  for (const { stop, length: stretch } of stopsBeside(network, end)) {
    const node = network.stopNode[stop]!;
    const before = part.distances.distance[node - part.distances.base]!;
    approaches.push({ part, end, stretch, length: before + stretch + end.length, node, start: null });
  }
  for (const start of part.taps) {
    if (start.leg !== end.leg) continue;
    const stretch = Math.abs(end.along - start.along);
    approaches.push({ part, end, stretch, length: start.length + stretch + end.length, node: -1, start });
  }
}

/** The better of `best` and the ways that come by one approach. */
function betterOf(best: Choice | null, ways: WaysFrom, approach: Approach, to: Point3): Choice | null {
  const { network, entry } = ways;
  const { part, end, stretch, node, start } = approach;
  const rank = stretch < COINCIDENT ? -1 : network.legs.rank[end.leg]!;
  const tap = end.length < COINCIDENT ? NOWHERE : headingTo(end.point, to);
  const turns = (before: Point3, last: Point3): number =>
    stretch < COINCIDENT ? Number(bend(before, tap)) : Number(bend(before, last)) + Number(bend(last, tap));
  if (start) {
    const first = start.length < COINCIDENT ? NOWHERE : headingTo(entry, start.point);
    const choice = { approach, state: -1, bends: turns(first, headingTo(start.point, end.point)), rank };
    return !best || isBetter(choice, best) ? choice : best;
  }
  const { straightest, distances } = part;
  const last = headingTo([network.x[node]!, network.y[node]!, network.z[node]!], end.point);
  let better = best;
  for (const state of straightest.arrivals(node - distances.base)) {
    const bends = straightest.bends[state]! + turns(straightest.heading(state), last);
    const choice = { approach, state, bends, rank };
    if (!better || isBetter(choice, better)) better = choice;
  }
  return better;
}

const NOWHERE: Point3 = [0, 0, 0];

const headingTo = (from: Point3, to: Point3): Point3 => [to[0] - from[0], to[1] - from[1], to[2] - from[2]];

const bend = (a: Point3, b: Point3): boolean => isBend(a[0], a[1], a[2], b[0], b[1], b[2]);

function isBetter(a: Choice, b: Choice): boolean {
  if (a.bends !== b.bends) return a.bends < b.bends;
  // Two ends in different components share no raceway: their last legs tell them apart, or else the end does.
  if (a.approach.part !== b.approach.part)
    return a.rank !== b.rank ? a.rank < b.rank : a.approach.end.leg < b.approach.end.leg;
  return a.approach.part.straightest.compare(a.rank, a.state, b.rank, b.state) < 0;
}

/**
 * Walks the choice back from its end to the equipment, and turns it round. Points that repeat the one before are left
 * out, and nodes passed in the middle of a leg; but even where the end is at the entry the path has both.
 */
function traced(ways: WaysFrom, { approach, state }: Choice, to: Point3, length: number): Way {
  const { network, entry } = ways;
  const { part, end, stretch } = approach;
  const { straightest, distances } = part;
  const { x, y, z, head, leg } = network;
  const path: Point3[] = [to];
  const legs: (string | null)[] = [];
  const goBack = (point: Point3, on: number): void => {
    if (distance(path[path.length - 1]!, point) < COINCIDENT) return;
    path.push(point);
    legs.push(on < 0 ? null : network.legs.raceways[network.legs.rank[on]!]!);
  };
  goBack(end.point, -1);
  let on = stretch < COINCIDENT ? -1 : end.leg;
  let start = approach.start;
  for (let at = state; at >= 0; at = straightest.via[at]!) {
    const step = at >= straightest.halves ? straightest.steps[at - straightest.halves]! : null;
    const node = step ? step.node + distances.base : head[at + distances.baseHalf]!;
    const before = step ? (step.rank < 0 ? -1 : step.tap.leg) : leg[at + distances.baseHalf]!;
    if (before < 0 || before !== on) goBack([x[node]!, y[node]!, z[node]!], on);
    on = before;
    if (step) start = step.tap;
  }
  if (!start) throw new RangeError('a way that leaves the equipment by no tap');
  goBack(start.point, on);
  goBack(entry, -1);
  if (path.length > 1) path[path.length - 1] = entry;
  else {
    path.push(entry);
    legs.push(null);
  }
  // Copies have the room of what they hold: a list that grew keeps more, and a lot has thousands of runs.
  const forth = path.toReversed();
  const bends = bendsOf(forth);
  let bendDegrees = 0;
  for (const { degrees } of bends) bendDegrees += degrees;
  return {
    length,
    taps: { start: start.length, end: end.length },
    path: forth,
    legs: legs.toReversed(),
    raceways: inOrderOfTravel(legs),
    bends: bends.length,
    bendDegrees,
  };
}

/** The raceways of the legs of a way that was walked back. */
function inOrderOfTravel(back: readonly (string | null)[]): string[] {
  const raceways: string[] = [];
  for (const id of back) if (id !== null && id !== raceways.at(-1)) raceways.push(id);
  return raceways.toReversed();
}
