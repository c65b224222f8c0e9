import { describe, expect, test } from 'vitest';
import { errors, square, value } from './kind-inputs.ts';

describe('reach', () => {
  test('is straight where nothing stands between: a 3-4-5 triangle twice over', () => {
    const { needed, planLength } = value('reach', { retractor: [0, 0, 9], inlet: [8, 0, 3], around: [] }) as never;
    expect([needed, planLength]).toEqual([10, 8]);
  });
  test('goes round a car in the way, hand-worked: by its corner at (3, 4)', () => {
    const around = [
      [
        [3, -9],
        [5, -9],
        [5, 4],
        [3, 4],
      ],
    ];
    const result = value('reach', { retractor: [0, 0, 5], inlet: [8, 0, 5], around }) as { needed: number };
    expect(result.needed).toBeCloseTo(5 + 2 + 5, 10);
  });
});

describe('cut', () => {
  test('lays pieces into the fewest sticks', () => {
    expect(value('cut', { stock: 10, pieces: [4, 5, 6] })).toMatchObject({ stocks: 2, bound: 2 });
  });
  test('names each piece that is longer than the stock', () => {
    expect(Object.keys(errors('cut', { stock: 10, pieces: [4, 11, 12] }))).toEqual(['pieces[1]', 'pieces[2]']);
  });
});

describe('phases', () => {
  test('lays three equal chargers on the three pairs: sqrt 3 of one on each line', () => {
    const result = value('phases', { amps: [32, 32, 32], connection: 'line-to-line' }) as { worstLineAmps: number };
    expect(result).toMatchObject({ assignment: ['AB', 'BC', 'CA'], legs: { AB: 32, BC: 32, CA: 32 } });
    expect(result.worstLineAmps).toBeCloseTo(32 * Math.sqrt(3), 10);
  });
  test('of no loads draws nothing', () => {
    expect(value('phases', { amps: [], connection: 'line-to-neutral' })).toMatchObject({
      assignment: [],
      worstLineAmps: 0,
      legs: { A: 0, B: 0, C: 0 },
    });
  });
});

describe('route', () => {
  test('costs what its paths carry, and no less than its bound', () => {
    const { cost, bound, paths } = value('route', square) as { cost: number; bound: number; paths: number[][] };
    expect(bound).toBeLessThanOrEqual(cost + 1e-9);
    expect(paths.map((path) => [path[0], path.at(-1)])).toEqual([
      [0, 2],
      [0, 2],
      [0, 3],
    ]);
    // Hand-worked: all three to 3 (10 x (2 + 3 + 2)) and two on to 2 (10 x (1 + 2 + 1)). Two by way of 1 would cost 120.
    expect(cost).toBe(110);
  });
  test('names nodes that are not there and terminals that cannot be reached', () => {
    expect(Object.keys(errors('route', { ...square, root: 9, terminals: [2, 7] }))).toEqual(['root', 'terminals[1]']);
    expect(errors('route', { ...square, nodes: 5, terminals: [4] })).toHaveProperty('terminals');
  });
});
