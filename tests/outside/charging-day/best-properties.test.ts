import fc from 'fast-check';
import loadHighs from 'highs';
import { beforeAll, describe, expect, test } from 'vitest';
import type { DayCharger, DayInput } from '../../../calc/day/day-input.ts';
import { highsProgram } from '../../../calc/day/optimum/highs-program.ts';
import type { NewLinearProgram } from '../../../calc/day/optimum/linear-program.ts';
import { STRATEGIES } from '../../../calc/day/rules/rules.ts';
import { charge } from '../../../calc/day/simulated/charge.ts';
import flows from './flows.json' with { type: 'json' };

let newProgram: NewLinearProgram;
beforeAll(async () => {
  const highs = await loadHighs();
  newProgram = () => highsProgram(highs);
});

const clock = (minutes: number): string =>
  `${String(Math.floor(minutes / 60) % 24).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;

const anyDay: fc.Arbitrary<DayInput> = fc
  .record({
    chargers: fc.array(
      fc.record({
        lines: fc.constantFrom('AB', 'BC', 'CA', 'ABC'),
        amps: fc.constantFrom(16, 32, 48),
        minAmps: fc.constantFrom(0, 6),
      }),
      { minLength: 1, maxLength: 6 },
    ),
    cars: fc.array(
      fc.record({ arrive: fc.nat(900), stay: fc.integer({ min: 5, max: 400 }), kwh: fc.integer({ min: 1, max: 40 }) }),
      { minLength: 1, maxLength: 8 },
    ),
    kind: fc.constantFrom('sum', 'kw', 'lines', 'delta'),
    most: fc.integer({ min: 5, max: 80 }),
    other: fc.nat(20),
    hold: fc.constantFrom('stay', 'done'),
  })
  .map(({ chargers, cars, kind, most, other, hold }) => ({
    from: '06:00',
    to: '22:00',
    step: 30,
    chargers: chargers.map((one, i) => ({ ...one, id: `C${i}`, volts: 208, stalls: 2 }) as DayCharger),
    limits: [
      {
        id: 'L',
        kind: kind as 'sum',
        most,
        ratio: 4,
        chargers: 'all' as const,
        other: [{ from: '12:00', to: '15:00', ...(kind === 'kw' ? { kw: other } : { amps: other }) }],
      },
    ],
    cars: cars.map(({ arrive, stay, kwh }) => ({
      arrive: clock(360 + arrive),
      leave: clock(360 + arrive + stay),
      kwh,
    })),
    hold: hold as 'stay',
    taper: null,
    tariff: null,
  }));

const wish = { strategies: STRATEGIES, optimum: true, search: { share: 1, more: false }, amps: true };

describe('the best schedule', () => {
  test.each(flows.days.map((one, i) => [i, one] as const))(
    'under one sum limit is a maximum flow, day %i',
    (_, { input, most }) => {
      const day: DayInput = {
        ...input,
        chargers: input.chargers.map((one) => ({ ...one, stalls: 1, minAmps: 0 }) as DayCharger),
        limits: [{ id: 'L', kind: 'sum', most: input.limits[0]!.amps, ratio: 1, chargers: 'all', other: [] }],
        hold: 'stay',
        taper: null,
        tariff: null,
      };
      const { optimum } = charge(day, { ...wish, strategies: [] }, newProgram);
      expect(optimum!.energy).toBeCloseTo(most, 4);
      expect(optimum!.energyBound).toBeCloseTo(most, 4);
    },
  );

  test('no rule that keeps the limits gives more; rules and schedule keep them; more room never gives less', () => {
    fc.assert(
      fc.property(anyDay, fc.nat(30), (day, more) => {
        const { strategies, optimum } = charge(day, wish, newProgram);
        const { unmanaged, ...rules } = strategies;
        const { most } = day.limits[0]!;
        for (const one of Object.values(rules)) {
          expect(one.energy).toBeLessThanOrEqual(optimum!.energyBound + 1e-6);
          for (const amps of Object.values(one.peak.L!)) expect(amps).toBeLessThanOrEqual(most + 1e-6);
          one.got.forEach((kwh, car) => {
            expect(kwh).toBeLessThanOrEqual(unmanaged!.got[car]! + 1e-9);
          });
        }
        const roomier = { ...day, limits: day.limits.map((limit) => ({ ...limit, most: limit.most + more })) };
        const free = { ...day, limits: [] };
        const others = [roomier, free].map((one) => charge(one, { ...wish, strategies: [] }, newProgram).optimum!);
        expect(others[0]!.energyBound).toBeGreaterThanOrEqual(optimum!.energy - 1e-6);
        expect(others[1]!.energyBound).toBeGreaterThanOrEqual(others[0]!.energy - 1e-6);
        expect(optimum!.energy).toBeLessThanOrEqual(optimum!.energyBound + 1e-6);
      }),
      { numRuns: 60 },
    );
  });

  test('where one car can take the whole limit, serving by deadline meets what can be met', () => {
    let met = 0;
    fc.assert(
      fc.property(anyDay, (any) => {
        const day: DayInput = {
          ...any,
          hold: 'stay',
          chargers: any.cars.map((_, i) => ({ id: `C${i}`, lines: 'AB', amps: 16, volts: 208, stalls: 1, minAmps: 0 })),
          cars: any.cars.map((car, i) => ({ ...car, kwh: car.kwh / 8, charger: `C${i}` })),
          limits: [{ id: 'L', kind: 'sum', most: 16, ratio: 1, chargers: 'all', other: [] }],
        };
        const { strategies, optimum } = charge(day, wish, newProgram);
        const all = day.cars.reduce((sum, { kwh }) => sum + kwh, 0);
        if (optimum!.energy < all - 1e-6) return;
        met++;
        expect(strategies.deadline!.short).toBeLessThan(1e-3);
      }),
      { numRuns: 80 },
    );
    expect(met).toBeGreaterThan(10);
  });
});
