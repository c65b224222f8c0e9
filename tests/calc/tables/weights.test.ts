import { describe, expect, test } from 'vitest';
import { NEC_2023 } from '../../../calc/tables/nec-2023/nec-2023.ts';
import { CONDUCTOR_WEIGHTS } from '../../../calc/tables/weights/conductor-weights.ts';
import { RACEWAY_WEIGHTS } from '../../../calc/tables/weights/raceway-weights.ts';
import { conductorPounds, conduitWeight, heavier } from '../../../calc/tables/weights/weight-of.ts';

const ring = (outside: number, inside: number): number => (Math.PI / 4) * (outside ** 2 - inside ** 2);

describe('weights against what the things are made of', () => {
  test.each(['EMT', 'RMC', 'IMC'])(
    '%s is the steel between its diameters, 0.2836 lb a cubic inch, within 3%%',
    (method) => {
      const rows = RACEWAY_WEIGHTS.rows.filter((row) => row.method === method);
      expect(rows.length).toBeGreaterThan(9);
      for (const { tradeSize, outside, pounds } of rows) {
        const { insideDiameter } = NEC_2023.raceways.rows.find(
          (row) => row.method === method && row.tradeSize === tradeSize,
        )!;
        const steel = ring(outside, insideDiameter) * 12 * 0.2836;
        expect(Math.abs(pounds / steel - 1), `${method} ${tradeSize}`).toBeLessThan(method === 'IMC' ? 0.06 : 0.03);
      }
    },
  );

  test.each([
    ['PVC40', 0.03],
    ['PVC80', 0.03],
  ] as const)('%s is its wall at a specific gravity of 1.40', (method, by) => {
    for (const { tradeSize, outside, pounds } of RACEWAY_WEIGHTS.rows.filter((row) => row.method === method)) {
      const { insideDiameter } = NEC_2023.raceways.rows.find(
        (row) => row.method === method && row.tradeSize === tradeSize,
      )!;
      const plastic = ring(outside, insideDiameter) * 12 * 0.0361 * 1.4;
      expect(Math.abs(pounds / plastic - 1), `${method} ${tradeSize}`).toBeLessThan(by);
    }
  });

  test('every conductor weighs its metal and no more than half as much again from 8 AWG, and more than the size before', () => {
    const area = new Map(NEC_2023.conductors.rows.map(({ size, circularMils }) => [size, circularMils]));
    let before = 0;
    for (const { size, copper, aluminum } of CONDUCTOR_WEIGHTS.rows) {
      const inches = (Math.PI / 4e6) * area.get(size)!;
      const metal = inches * 12_000;
      expect(copper.bare / (metal * 0.321 * 1.02), size).toBeCloseTo(1, 1);
      for (const pounds of [copper.nylon, copper.linked]) {
        // The data sheets round 14 and 12 AWG to the pound.
        expect(pounds / (metal * 0.321), size).toBeGreaterThan(1);
        expect(pounds / (metal * 0.321), size).toBeLessThan(1.5);
      }
      if (aluminum !== null) expect(aluminum.linked / (metal * 0.0975), size).toBeGreaterThan(1);
      expect(copper.nylon).toBeGreaterThan(before);
      before = copper.nylon;
    }
  });

  test('a raceway filled weighs more than one empty, by no more than copper of 40% of its inside', () => {
    for (const { method, tradeSize, pounds, filled } of RACEWAY_WEIGHTS.rows) {
      const { area } = NEC_2023.raceways.rows.find((row) => row.method === method && row.tradeSize === tradeSize)!;
      expect(filled, `${method} ${tradeSize}`).toBeGreaterThan(pounds);
      expect(filled - pounds, `${method} ${tradeSize}`).toBeLessThan(0.4 * area * 12 * 0.321 * 1.05);
    }
  });
});

test('a conduit weighs its raceway, its wires and a share for fittings', () => {
  const conductors = [
    { use: 'line', size: '8', insulation: 'THWN-2', count: 2 },
    { use: 'grounding', size: '10', insulation: 'THWN-2', count: 1 },
    { use: 'pilot', size: '14', insulation: 'THWN-2', count: 1 },
  ] as const;
  const { conduit, wire, fittings } = conduitWeight({ method: 'EMT', tradeSize: '3/4', conductors }, 'copper');
  expect([conduit, wire, fittings].map((pounds) => Number(pounds.toFixed(6)))).toEqual([0.46, 0.182, 0.0184]);
  expect(conduitWeight({ method: 'tray', tradeSize: null, conductors: [] }, 'copper').conduit).toBe(5);
});

test('a size that no table has weighs as the next larger, and thicker coverings weigh more', () => {
  expect(conductorPounds('12', 'aluminum', 'XHHW-2')).toBeCloseTo(0.03, 9);
  expect(conductorPounds('8', 'copper', 'RHW-2')).toBeCloseTo(0.0715, 9);
  const rows = [
    { item: 'a', upTo: 10, low: 1, high: 2 },
    { item: 'b', upTo: 20, low: 2, high: 5 },
  ];
  expect([5, 10, 11, 40].map((size) => heavier(rows, size))).toEqual([2, 2, 5, 10]);
});
