import { type LegAmps, linesOfPairs } from '../load-flow/line-current.ts';
import { leastSplit, sumsOf } from './leg-split.ts';

export const CONNECTIONS = ['line-to-line', 'line-to-neutral'] as const;

const LEGS = { 'line-to-line': ['AB', 'BC', 'CA'], 'line-to-neutral': ['A', 'B', 'C'] } as const;

export interface PhaseLoads<C extends (typeof CONNECTIONS)[number] = (typeof CONNECTIONS)[number]> {
  /** Amperes of each single-phase load. */
  readonly amps: readonly number[];
  readonly connection: C;
  /** Line amperes of balanced three-phase load beside them; 0 where it is not said. */
  readonly threePhaseAmps?: number;
  /** Legs to turn the labels by, 0 to 2, so that panels do not all put their odd load on the first leg. */
  readonly turn?: number;
}

export interface PhaseAssignment<Leg extends string = string> {
  /** Leg of each load, in the order of the loads. */
  readonly assignment: readonly Leg[];
  /** Greatest line current, A. */
  readonly worstLineAmps: number;
  /** No assignment has a smaller greatest line current than this; equal to it where the assignment is proved best. */
  readonly boundAmps: number;
  /** Sum of the amperes on each leg. */
  readonly legs: Readonly<Record<Leg, number>>;
}

/** Greatest line current, A, of loads on the legs beside a balanced three-phase load. */
export function worstLine(legs: LegAmps, connection: PhaseLoads['connection'], threePhaseAmps = 0): number {
  const extra = connection === 'line-to-line' ? threePhaseAmps / Math.sqrt(3) : threePhaseAmps;
  const all: LegAmps = [legs[0] + extra, legs[1] + extra, legs[2] + extra];
  return Math.max(...(connection === 'line-to-line' ? linesOfPairs(all) : all));
}

/**
 * Lays single-phase loads on the three legs of a panel so that its greatest line current is the least possible: across
 * AB, BC, CA with line currents added as phasors at one power factor, or on A, B, C to neutral with the greatest leg.
 * Among the best, loads of equal size are dealt in rotation in the order in which they stand, so that equal chargers read
 * AB, BC, CA, AB. RangeError for amperes that are not over 0.
 * @example
 * // Hand-worked: one load on each pair of lines; each line is fed from two pairs, sqrt 3 x 32 A
 * assignPhases({ amps: [32, 32, 32], connection: 'line-to-line' }).assignment // ['AB', 'BC', 'CA']
 * assignPhases({ amps: [32, 32, 32], connection: 'line-to-line' }).worstLineAmps // 55.43
 */
export function assignPhases<C extends PhaseLoads['connection']>(
  loads: PhaseLoads<C>,
): PhaseAssignment<(typeof LEGS)[C][number]> {
  const { amps, connection, threePhaseAmps = 0, turn = 0 } = loads;
  for (const one of amps) if (!(one > 0 && one < Infinity)) throw new RangeError(`amperes must be over 0, got ${one}`);
  const cost = (legs: LegAmps): number => worstLine(legs, connection, threePhaseAmps);
  const { legOf, bound } = leastSplit(amps, cost);
  const dealt = dealInRotation(amps, legOf).map((rank) => (rank + turn) % 3);
  const names: readonly (typeof LEGS)[C][number][] = LEGS[connection];
  const sums = sumsOf(amps, dealt);
  return {
    assignment: dealt.map((leg) => names[leg]!),
    worstLineAmps: cost(sums),
    boundAmps: bound,
    legs: Object.fromEntries(names.map((name, i) => [name, sums[i]])) as Record<(typeof LEGS)[C][number], number>,
  };
}

/**
 * Keeps how many loads of each size a leg has, and deals the loads again: the leg with most is the first, and each load
 * goes to the next leg in rotation that still wants one of its size.
 */
function dealInRotation(amps: readonly number[], legOf: readonly number[]): number[] {
  const wanted = new Map<number, [number, number, number]>();
  amps.forEach((size, i) => {
    const counts = wanted.get(size) ?? [0, 0, 0];
    counts[legOf[i]!]! += 1;
    wanted.set(size, counts);
  });
  const sums = sumsOf(amps, legOf);
  const sizes = [...wanted.values()];
  const ranked = [0, 1, 2].sort((a, b) => {
    const differing = sizes.find((counts) => counts[a] !== counts[b]);
    // Equal sums of tenths may differ in the last place.
    const difference = Math.abs(sums[b]! - sums[a]!) <= 1e-9 * sums[a]! ? 0 : sums[b]! - sums[a]!;
    return difference || (differing === undefined ? 0 : differing[b]! - differing[a]!);
  });
  let next = 0;
  return amps.map((size) => {
    const counts = wanted.get(size)!;
    while (counts[ranked[next]!] === 0) next = (next + 1) % 3;
    const rank = next;
    counts[ranked[rank]!]! -= 1;
    next = (next + 1) % 3;
    return rank;
  });
}
