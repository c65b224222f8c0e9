import { describe, expect, test } from 'vitest';
import { bestFindings } from '../../../calc/day/figures/best-findings.ts';

const car = (most: number) => ({ arrive: '08:00', leave: '12:00', need: most, most, charger: 'A' });
const of = (got: readonly number[], energy: number, more: object = {}) =>
  bestFindings({
    what: 'day',
    cars: [car(10), car(10)],
    got,
    best: { energy, ceiling: 58.46, relaxed: [] },
    limit: { id: 'P1', unit: 'A' },
    ceilings: [{ limit: 'P1', least: 72 }],
    ...more,
  }).map(({ severity, says }) => `${severity} ${says}`);

describe('what only the best schedule tells of a day', () => {
  test('the rule falls short where a schedule serves all, and what would do', () => {
    expect(of([10, 8], 20)).toEqual([
      'warn day: the rule falls short where the best schedule serves all.',
      'note day: under the rule P1 at 72 A would do; P1 at 58.5 A at best.',
    ]);
    // All but a millionth, as a least cost leaves it.
    expect(of([10, 8], 20 * (1 - 1e-6))).toHaveLength(2);
    expect(of([10, 8], 20, { best: { energy: 20, ceiling: null, relaxed: ['minimum'] }, ceilings: [] })).toEqual([
      'warn day: the rule falls short where the best schedule serves all, as far as its bound tells.',
    ]);
  });

  test('nothing where no schedule does better, or nobody is short', () => {
    expect(of([10, 8], 18, { limit: null, ceilings: [{ limit: 'P1', least: null }] })).toEqual([]);
    expect(of([10, 10], 20)).toEqual([]);
  });
});
