import { describe, expect, test } from 'vitest';
import { NEC_2023 as nec } from '../../../calc/tables/nec-2023/nec-2023.ts';
import { CONDUCTOR_SIZES, tradeSizeInches } from '../../../calc/tables/sizes.ts';
import { circle, rising, strictlyRising } from './consistency-parts.ts';

describe('raceways', () => {
  const { rows } = nec.raceways;
  test('have the area of their inside diameter', () => {
    for (const row of rows)
      expect(Math.abs(circle(row.insideDiameter) - row.area), `${row.method} ${row.tradeSize}`).toBeLessThan(
        0.0006 + row.insideDiameter * 0.0008,
      );
  });
  test('have percent columns that follow from the area', () => {
    for (const row of rows)
      for (const [printed, percent] of [
        [row.fill60, 60],
        [row.fill53, 53],
        [row.fill31, 31],
        [row.fill40, 40],
      ] as const)
        expect(Math.abs(printed - (row.area * percent) / 100), `${row.method} ${row.tradeSize}`).toBeLessThan(0.0011);
  });
  test('grow with trade size within a method', () => {
    for (const method of new Set(rows.map((row) => row.method))) {
      const own = rows.filter((row) => row.method === method);
      strictlyRising(own.map(({ tradeSize }) => tradeSizeInches(tradeSize)));
      strictlyRising(own.map(({ area }) => area));
    }
  });
  test('say for every method how far its figures were seen', () => {
    expect(Object.keys(nec.raceways.verifiedBy).sort()).toEqual([...new Set(rows.map(({ method }) => method))].sort());
  });
});

test('bends grow with trade size, other benders no tighter than shoes', () => {
  const { rows } = nec.bends;
  strictlyRising(rows.map(({ shoe }) => shoe));
  strictlyRising(rows.map(({ other }) => other));
  for (const row of rows) expect(row.other).toBeGreaterThanOrEqual(row.shoe);
});

test('PVC expansion is 3.38e-5 x 1200 x range to a hundredth of an inch; steel and aluminum are 0.2 and 0.4 of it', () => {
  const { rows, perF } = nec.expansion;
  for (const row of rows)
    expect(Math.abs(perF.PVC * 1200 * row.rangeF - row.inchesPer100Ft)).toBeLessThanOrEqual(0.00501);
  expect(perF.steel / perF.PVC).toBeCloseTo(0.2, 1);
  expect(perF.aluminum / perF.PVC).toBeCloseTo(0.4, 1);
});

test('supports are no closer for larger trade sizes', () => {
  for (const method of ['RMC', 'PVC40', 'PVC80'] as const)
    for (const run of ['general', 'straight threaded'] as const)
      rising(nec.supports.rows.filter((row) => row.method === method && row.run === run).map((row) => row.spacingFt));
});

test('vertical supports of copper and aluminum come closer as conductors grow, and rows leave no size out', () => {
  const { rows } = nec.verticalSupports;
  rising(rows.map(({ copper }) => copper).reverse());
  for (const row of rows) expect(row.aluminum).toBeGreaterThanOrEqual(row.copper);
  rows.slice(1).forEach((row, at) => {
    const before = rows[at]?.toSize ?? '';
    expect(CONDUCTOR_SIZES.indexOf(row.fromSize)).toBe(CONDUCTOR_SIZES.indexOf(before) + 1);
  });
});

test('cover under traffic is 24 in. for everything', () => {
  const traffic = nec.cover.rows.find(({ place }) => place === 'traffic');
  expect([traffic?.cable, traffic?.metalRaceway, traffic?.plasticRaceway, traffic?.lowVoltage]).toEqual([
    24, 24, 24, 24,
  ]);
});
