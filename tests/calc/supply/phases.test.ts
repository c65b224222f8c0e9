import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type LegAmps, linesOfPairs } from '../../../calc/supply/load-flow/line-current.ts';
import { leastSplit, sumsOf } from '../../../calc/supply/phases/leg-split.ts';
import { assignPhases, worstLine } from '../../../calc/supply/phases/phases.ts';

/** Least cost over all ways, tried one by one. */
function leastByTrial(amps: readonly number[], cost: (legs: LegAmps) => number): number {
  let least = Infinity;
  for (let code = 0; code < 3 ** amps.length; code++) {
    const sums: [number, number, number] = [0, 0, 0];
    let rest = code;
    for (const one of amps) {
      sums[rest % 3]! += one;
      rest = Math.floor(rest / 3);
    }
    least = Math.min(least, cost(sums));
  }
  return least;
}

const wholeAmps = fc.array(fc.integer({ min: 6, max: 80 }), { minLength: 1, maxLength: 8 });
const anyAmps = fc.array(fc.double({ min: 1, max: 80, noNaN: true }), { minLength: 1, maxLength: 7 });

describe('phases are assigned so that the greatest line current is the least possible', () => {
  test.each(['line-to-line', 'line-to-neutral'] as const)('%s, against every way tried', (connection) => {
    fc.assert(
      fc.property(fc.oneof(wholeAmps, anyAmps), fc.integer({ min: 0, max: 60 }), (amps, threePhaseAmps) => {
        const { worstLineAmps, boundAmps } = assignPhases({ amps, connection, threePhaseAmps });
        const least = leastByTrial(amps, (legs) => worstLine(legs, connection, threePhaseAmps));
        expect(worstLineAmps).toBeCloseTo(least, 6);
        expect(boundAmps).toBeCloseTo(least, 6);
      }),
      { numRuns: 60 },
    );
  });

  test('the legs are the sums of what is assigned to them', () => {
    fc.assert(
      fc.property(wholeAmps, (amps) => {
        const { assignment, legs, worstLineAmps } = assignPhases({ amps, connection: 'line-to-line' });
        const sum = (leg: string): number => amps.reduce((so, one, i) => so + (assignment[i] === leg ? one : 0), 0);
        expect(legs).toEqual({ AB: sum('AB'), BC: sum('BC'), CA: sum('CA') });
        expect(worstLineAmps).toBeCloseTo(Math.max(...linesOfPairs([legs.AB, legs.BC, legs.CA])), 9);
      }),
    );
  });

  test('the line current of pairs is that of phasors 120 degrees apart', () => {
    // One pair alone carries its own current; three equal pairs make sqrt 3 of one: textbook delta.
    expect(linesOfPairs([32, 0, 0])).toEqual([32, 32, 0]);
    for (const line of linesOfPairs([32, 32, 32])) expect(line).toBeCloseTo(32 * Math.sqrt(3), 9);
  });

  test('equal chargers are dealt in rotation', () => {
    const { assignment } = assignPhases({ amps: Array(7).fill(32), connection: 'line-to-line' });
    expect(assignment).toEqual(['AB', 'BC', 'CA', 'AB', 'BC', 'CA', 'AB']);
    const turned = assignPhases({ amps: Array(4).fill(32), connection: 'line-to-line', turn: 1 });
    expect(turned.assignment).toEqual(['BC', 'CA', 'AB', 'BC']);
  });

  test('one hundred different chargers in one panel are still proved best', () => {
    const amps = Array.from({ length: 100 }, (_, i) => 6 + ((i * 37) % 75));
    const { worstLineAmps, boundAmps } = assignPhases({ amps, connection: 'line-to-line' });
    expect(boundAmps).toBe(worstLineAmps);
  });

  test('where the proof would take too long the bound says how near the best it is', () => {
    const amps = Array.from({ length: 40 }, (_, i) => 10 + Math.sqrt(2 + i));
    const { legOf, bound } = leastSplit(amps, (legs) => Math.max(...legs));
    const worst = Math.max(...sumsOf(amps, legOf));
    expect(bound).toBeLessThanOrEqual(worst);
    expect(worst / bound).toBeLessThan(1.001);
    expect(bound).toBeGreaterThanOrEqual(amps.reduce((sum, one) => sum + one) / 3 - 1e-9);
  });

  test('amperes that are none are refused', () => {
    for (const amps of [[0], [-1], [Number.NaN], [Infinity]])
      expect(() => assignPhases({ amps, connection: 'line-to-line' })).toThrow(RangeError);
    expect(assignPhases({ amps: [], connection: 'line-to-line' })).toEqual({
      assignment: [],
      worstLineAmps: 0,
      boundAmps: 0,
      legs: { AB: 0, BC: 0, CA: 0 },
    });
  });
});
