import { describe, expect, test } from 'vitest';
import { groundQuantities } from '../../../calc/takeoff/conduits/ground-quantities.ts';
import { trenches, trenchWidth } from '../../../calc/takeoff/conduits/trench.ts';
import { guardQuantities } from '../../../calc/takeoff/quantities/guard-quantities.ts';
import type { Point3, Raceway } from '../../../routing/site/site.ts';

const buried = (id: string, path: readonly Point3[]): Raceway => ({ id, path, method: 'PVC40', place: 'underground' });
const total = (raceways: readonly Raceway[]): number => trenches(raceways).reduce((sum, { length }) => sum + length, 0);

describe('trenches', () => {
  test('run along the plan of a raceway, not up its risers', () => {
    const raceway = buried('U1', [
      [0, 0, 2],
      [0, 0, -2],
      [50, 0, -2],
      [50, 30, -2],
      [50, 30, 1],
    ]);
    expect(trenches([raceway]).map(({ length, depth }) => [length, depth])).toEqual([
      [50, 2],
      [30, 2],
    ]);
  });
  test('are dug once for raceways side by side', () => {
    const one = buried('U1', [
      [0, 0, -2],
      [50, 0, -2],
    ]);
    const beside = buried('U2', [
      [10, 0.5, -2],
      [70, 0.5, -2],
    ]);
    // 50 ft for the first, and of the second's 60 ft the 20 past its end.
    expect(total([one, beside])).toBeCloseTo(70, 9);
    expect(total([one, one])).toBeCloseTo(50, 9);
  });
  test('are dug twice for raceways that cross or lie apart', () => {
    const one = buried('U1', [
      [0, 0, -2],
      [50, 0, -2],
    ]);
    expect(
      total([
        one,
        buried('U2', [
          [25, -10, -2],
          [25, 10, -2],
        ]),
      ]),
    ).toBeCloseTo(70, 9);
    expect(
      total([
        one,
        buried('U3', [
          [0, 4, -2],
          [50, 4, -2],
        ]),
      ]),
    ).toBeCloseTo(100, 9);
  });
  test('are none for what lies above grade', () => {
    expect(
      total([
        buried('U1', [
          [0, 0, 0],
          [50, 0, 0],
        ]),
        {
          ...buried('R1', [
            [0, 0, -2],
            [9, 0, -2],
          ]),
          place: 'surface',
        },
      ]),
    ).toBe(0);
  });
});

describe('the width of a trench', () => {
  test.each([
    [0, 12],
    [2, 12],
    [3, 18],
    [5, 24],
    [8, 36],
    [40, 36],
  ])('with %i conduits, 4 in. each and 4 more, is %i in.', (conduits, inches) => {
    expect(trenchWidth(conduits)).toBe(inches);
  });

  test('is that for all conduits of the raceways that share it, by how far they do', () => {
    const along = (id: string, y: number, to: number): Raceway =>
      buried(id, [
        [0, y, -2],
        [to, y, -2],
      ]);
    const conduits = new Map([
      ['U1', 2],
      ['U2', 3],
    ]);
    // Of the second's 100 ft, 50 lie in the first's trench: its three conduits there, and by themselves past its end.
    const parts = trenches([along('U1', 0, 50), along('U2', 0.5, 100)], conduits);
    expect(parts.map(({ raceway, length, conduits: all }) => [raceway, length, all])).toEqual([
      ['U1', 50, 5],
      ['U2', 50, 3],
    ]);
  });
});

describe('what is set in the ground', () => {
  test('a raceway that carries nothing is dug for; holes are drilled for conduits', () => {
    const raceway = buried('U1', [
      [0, 0, 2],
      [0, 0, -2],
      [50, 0, -2],
      [50, 0, 2],
    ]);
    const tally = groundQuantities([raceway], new Map());
    expect([...tally.values()].map(({ kind, net }) => [kind.item, kind.spec, net])).toEqual([
      ['trench', 'asphalt, 24 in deep, 12 in wide', 50],
      ['saw cut', 'asphalt', 100],
      ['bedding', 'sand, 12 in wide', 50],
      ['warning tape', 'buried line', 50],
      ['backfill', '24 in deep, 12 in wide', 50],
      // 1.25 x (8 x 12 in. of sand and 4 x 24 in. of asphalt) / 144 / 27 a foot.
      ['spoil', 'cubic yard, hauled off', expect.closeTo((50 * 1.25 * (96 + 96)) / 144 / 27, 9)],
      ['patch', 'asphalt, 24 in wide', 50],
    ]);
  });

  test('a pedestal has two bollards', () => {
    const pedestal = { id: 'D1', box: [50, 0, 3], cord: 20, mount: 'pedestal' } as const;
    const tally = guardQuantities([pedestal], []);
    expect([...tally.values()].map(({ kind, net }) => [kind.item, net])).toContainEqual(['bollard', 2]);
  });
});
