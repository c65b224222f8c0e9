import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { TakeoffRow } from '../../../calc/plan-file/takeoff.ts';
import { GROUND_WORK } from '../../../calc/takeoff/systems.ts';
import { anyLot } from '../branches/lots.ts';
import { of, planOf } from './takeoff-parts.ts';

describe('on any lot', () => {
  const sum = (rows: readonly TakeoffRow[]): number => rows.reduce((total, row) => total + row.quantity, 0);

  test('conductors are circuits times lengths plus allowances plus waste', () => {
    fc.assert(
      fc.property(anyLot({ mostChargers: 12 }), (file) => {
        const result = planOf(file);
        const runs = new Map(result.runs.map((run) => [run.charger, run]));
        const feet = result.circuits.reduce(
          (total, { charger: id, phases }) => total + phases.length * runs.get(id)!.conductorLength!,
          0,
        );
        expect(sum(of(result, 'conductor'))).toBeCloseTo(feet * 1.05, 5);
        expect(sum(of(result, 'breaker'))).toBe(result.circuits.length);
      }),
      { numRuns: 60 },
    );
  });

  test('raceway is the conduits plus waste, by method and trade size', () => {
    fc.assert(
      fc.property(anyLot({ mostChargers: 12 }), (file) => {
        const result = planOf(file);
        const feet = new Map<string, number>();
        for (const { method, tradeSize, length } of result.conduits) {
          const spec = tradeSize === null ? method : `${method} ${tradeSize} in`;
          feet.set(spec, (feet.get(spec) ?? 0) + length);
        }
        const rows = new Map(of(result, 'raceway').map((row) => [row.spec, row.quantity]));
        expect([...rows.keys()].sort()).toEqual([...feet.keys()].sort());
        for (const [spec, length] of feet) expect(rows.get(spec)).toBeCloseTo(length * 1.05, 6);
      }),
      { numRuns: 60 },
    );
  });

  test('a row is the sum of its parts, before waste', () => {
    fc.assert(
      fc.property(anyLot({ mostChargers: 10 }), (file) => {
        for (const { item, quantity: total, parts, unit } of planOf(file).takeoff) {
          if (item === 'raceway stick' || item === 'reel') continue;
          const net = parts.reduce((all, part) => all + part.quantity, 0);
          expect(total).toBeCloseTo(unit === 'ft' && !GROUND_WORK.includes(item) ? net * 1.05 : net, 6);
        }
      }),
      { numRuns: 40 },
    );
  });
});
