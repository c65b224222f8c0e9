import { describe, expect, test } from 'vitest';
import { cut } from '../../../calc/takeoff/cutting/cut.ts';
import instances from './instances.json' with { type: 'json' };

const ascending = (a: number, b: number): number => a - b;

// Falkenauer's bins (OR-Library), Scholl, Klein and Juergens 1997, and sticks made from a fixed seed: each with its
// source and its known optimum.
describe('the fewest stocks on instances with a known optimum', () => {
  test.each(instances)('$id: $optimum', ({ capacity, items, optimum }) => {
    const { stocks, bound, plan } = cut({ stock: capacity, pieces: items });
    expect(stocks).toBe(optimum);
    expect(bound).toBe(optimum);
    expect(plan).toHaveLength(stocks);
    for (const stock of plan) expect(stock.reduce((sum, piece) => sum + piece, 0)).toBeLessThanOrEqual(capacity);
    expect(plan.flat().sort(ascending)).toEqual([...items].sort(ascending));
  });
});
