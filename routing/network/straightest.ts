import { COINCIDENT } from '../plane/space.ts';
import type { Point3 } from '../site/site.ts';
import { isBend } from './bends.ts';
import type { Distances } from './distances.ts';
import type { Network } from './network.ts';
import type { Tap } from './taps.ts';

/** Lengths this near each other, relatively, are equal, and something else decides between their ways. */
const EQUAL = 1e-9;
export const isNotLonger = (length: number, least: number): boolean => length <= least + EQUAL * (1 + least);

/**
 * Of the equally short ways from the equipment to every node of one component, the one with the fewest bends; of those,
 * the one whose raceway ids, read from the far end back to the equipment, come first. A state is an arrival: a
 * half-edge walked (counted from the component's first), or, after those, a step from a tap to a stop beside it.
 */
export interface Straightest {
  /** Half-edges of the component; states from here on are steps from taps. */
  readonly halves: number;
  /** State before; -1 at a step from a tap. */
  readonly via: Int32Array;
  /** Bends up to and on arrival, the equipment's tap included; of states on a shortest way alone. */
  readonly bends: Int32Array;
  readonly steps: readonly RouteStep[];
  /** States that reach a node (counted from the component's first) on a shortest way. */
  readonly arrivals: (node: number) => readonly number[];
  /** Direction of travel on arrival. */
  readonly heading: (state: number) => Point3;
  /** Under 0 where way A (a last leg on the raceway of rank `rankA`, or -1, after `stateA`) goes before B. */
  readonly compare: (rankA: number, stateA: number, rankB: number, stateB: number) => number;
}

/** From a tap along its leg to one of the stops on either side. */
export interface RouteStep {
  readonly tap: Tap;
  /** Counted from the component's first. */
  readonly node: number;
  /** Rank of the raceway; -1 where the tap meets the stop itself. */
  readonly rank: number;
  readonly length: number;
  /** Tap and step together. */
  readonly distance: number;
  readonly heading: Point3;
  readonly bends: number;
}

/** The steps from a tap: to the stops before and after it on its leg, or to the one that it meets. */
export function stepsFrom(network: Network, entry: Point3, tap: Tap, base: number): RouteStep[] {
  const { x, y, z, stopNode, legs } = network;
  const [px, py, pz] = tap.point;
  const tx = px - entry[0];
  const ty = py - entry[1];
  const tz = pz - entry[2];
  return stopsBeside(network, tap).map(({ stop, length }): RouteStep => {
    const n = stopNode[stop]!;
    const common = { tap, node: n - base, length, distance: tap.length + length };
    if (length < COINCIDENT)
      return { ...common, rank: -1, heading: tap.length < COINCIDENT ? [0, 0, 0] : [tx, ty, tz], bends: 0 };
    const dx = x[n]! - px;
    const dy = y[n]! - py;
    const dz = z[n]! - pz;
    const bends = tap.length >= COINCIDENT && isBend(tx, ty, tz, dx, dy, dz) ? 1 : 0;
    return { ...common, rank: legs.rank[tap.leg]!, heading: [dx, dy, dz], bends };
  });
}

/** The stops on either side of a tap, each with its distance along the leg; one where the tap meets it. */
export function stopsBeside(network: Network, tap: Tap): { stop: number; length: number }[] {
  const { firstStop, stopAlong } = network;
  let low = firstStop[tap.leg]!;
  let high = firstStop[tap.leg + 1]! - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (stopAlong[middle]! <= tap.along) low = middle;
    else high = middle;
  }
  const before = { stop: low, length: Math.max(0, tap.along - stopAlong[low]!) };
  const after = { stop: high, length: Math.max(0, stopAlong[high]! - tap.along) };
  return before.length < COINCIDENT ? [before] : after.length < COINCIDENT ? [after] : [before, after];
}

/** Works out the straightest of the shortest ways, in one pass over the nodes in the order they were settled. */
export function straightestOf(network: Network, distances: Distances, steps: readonly RouteStep[]): Straightest {
  const { first, head, tail, weight, leg, x, y, z, legs } = network;
  const { base, baseHalf, distance, order } = distances;
  const count = distance.length;
  const halves = first[base + count]! - baseHalf;
  const via = new Int32Array(halves + steps.length).fill(-1);
  const bends = new Int32Array(halves + steps.length);
  const settledAt = new Int32Array(count);
  for (let k = 0; k < count; k++) settledAt[order[k]!] = k;

  // The states that arrive at a node, as a list: the last one found, and before each the one found before it.
  const lastAt = new Int32Array(count).fill(-1);
  const earlier = new Int32Array(halves + steps.length);
  const arrive = (state: number, node: number, made: number): void => {
    bends[state] = made;
    earlier[state] = lastAt[node]!;
    lastAt[node] = state;
  };
  steps.forEach((step, k) => {
    if (isNotLonger(step.distance, distance[step.node]!)) arrive(halves + k, step.node, step.bends);
  });
  const heading = (state: number): Point3 => {
    if (state >= halves) return steps[state - halves]!.heading;
    const a = tail[state + baseHalf]!;
    const b = head[state + baseHalf]!;
    return [x[b]! - x[a]!, y[b]! - y[a]!, z[b]! - z[a]!];
  };
  /** Whether the way bends that arrives by `state` at node `n` and goes on along (dx, dy, dz), on leg `on`. */
  const turns = (state: number, n: number, on: number, dx: number, dy: number, dz: number): boolean => {
    if (state >= halves) {
      const [ux, uy, uz] = steps[state - halves]!.heading;
      return isBend(ux, uy, uz, dx, dy, dz);
    }
    if (on >= 0 && leg[state + baseHalf] === on) return false;
    const from = tail[state + baseHalf]!;
    return isBend(x[n]! - x[from]!, y[n]! - y[from]!, z[n]! - z[from]!, dx, dy, dz);
  };
  const rankOf = (state: number): number => {
    if (state >= halves) return steps[state - halves]!.rank;
    const on = leg[state + baseHalf]!;
    return on < 0 ? -1 : legs.rank[on]!;
  };

  const compare = (rankA: number, stateA: number, rankB: number, stateB: number): number => {
    if (rankA !== rankB) return rankA - rankB;
    let lastA = rankA;
    let lastB = rankB;
    let a = stateA;
    let b = stateB;
    while (a !== b || lastA !== lastB) {
      // Legs on the raceway already told are passed over; a joint's gap ends it.
      for (let r = -1; a >= 0; a = via[a]!) {
        r = rankOf(a);
        if (r >= 0 && r !== lastA) break;
        lastA = r;
      }
      for (let r = -1; b >= 0; b = via[b]!) {
        r = rankOf(b);
        if (r >= 0 && r !== lastB) break;
        lastB = r;
      }
      if (a < 0 || b < 0) {
        if (a >= 0 || b >= 0) return a < 0 ? -1 : 1;
        break;
      }
      lastA = rankOf(a);
      lastB = rankOf(b);
      if (lastA !== lastB) return lastA - lastB;
      a = via[a]!;
      b = via[b]!;
    }
    // The same raceways in the same order: the numbering of the network, which follows from the ids, decides.
    return stateA - stateB;
  };

  for (let k = 0; k < count; k++) {
    const node = order[k]!;
    const n = node + base;
    for (let h = first[n]!, stop = first[n + 1]!; h < stop; h++) {
      const to = head[h]! - base;
      if (settledAt[to]! <= k || !isNotLonger(distance[node]! + weight[h]!, distance[to]!)) continue;
      const on = leg[h]!;
      const rank = on < 0 ? -1 : legs.rank[on]!;
      const dx = x[to + base]! - x[n]!;
      const dy = y[to + base]! - y[n]!;
      const dz = z[to + base]! - z[n]!;
      let best = -1;
      let least = 0;
      for (let state = lastAt[node]!; state >= 0; state = earlier[state]!) {
        const total = bends[state]! + (turns(state, n, on, dx, dy, dz) ? 1 : 0);
        if (best === -1 || total < least || (total === least && compare(rank, state, rank, best) < 0)) {
          best = state;
          least = total;
        }
      }
      via[h - baseHalf] = best;
      arrive(h - baseHalf, to, least);
    }
  }
  const arrivals = (node: number): readonly number[] => {
    const states: number[] = [];
    for (let state = lastAt[node]!; state >= 0; state = earlier[state]!) states.push(state);
    return states;
  };
  return { halves, via, bends, steps, arrivals, heading, compare };
}
