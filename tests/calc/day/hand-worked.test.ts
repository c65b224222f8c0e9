import { describe, expect, test } from 'vitest';
import type { DayInput } from '../../../calc/day/day-input.ts';
import { outcomeOf } from '../../../calc/day/simulated/outcome.ts';
import { simulate } from '../../../calc/day/simulated/simulate.ts';
import { worldOf } from '../../../calc/day/simulated/world.ts';

/**
 * Three cars on one phase, 250 V, steps of an hour, 40 A in all: an ampere is a quarter of a kilowatt-hour a step, so the
 * limit gives 10 kWh a step and a 32 A charger 8.
 *
 * A stands there in steps 0 to 3 and wants 12; B in steps 1 and 2 and wants 16; C in steps 1 to 3 and wants 6.
 */
const day: DayInput = {
  from: '08:00',
  to: '12:00',
  step: 60,
  chargers: ['A', 'B', 'C'].map((id) => ({ id, lines: 'AB', amps: 32, volts: 250, stalls: 1, minAmps: 6 })),
  limits: [{ id: 'L', kind: 'sum', most: 40, ratio: 1, chargers: 'all', other: [] }],
  cars: [
    { arrive: '08:00', leave: '12:00', kwh: 12, charger: 'A' },
    { arrive: '08:30', leave: '11:10', kwh: 16, charger: 'B' },
    { arrive: '09:00', leave: '12:00', kwh: 6, charger: 'C' },
  ],
  hold: 'stay',
  taper: null,
  tariff: {
    energy: [{ from: '00:00', to: '00:00', price: 0.2 }],
    demand: [{ from: '00:00', to: '00:00', price: 10 }],
    interval: 60,
    days: 20,
  },
};

describe('a day of three cars, worked by hand', () => {
  const course = (rule: Parameters<typeof simulate>[1]) => {
    const world = worldOf(day);
    const done = simulate(world, rule, { keepAmps: true });
    return { amps: done.amps!.map((car) => Array.from(car)), ...outcomeOf(world, done) };
  };

  test('unmanaged: each takes 32 A while it stands there, its last step only what it lacks', () => {
    // A: 8, then 4 of its 12 (16 A). B: 8 and 8. C: 6 of 6 at once (24 A).
    const { amps, got, peakKw, cost } = course('unmanaged');
    expect(amps).toEqual([
      [32, 16, 0, 0],
      [0, 32, 32, 0],
      [0, 24, 0, 0],
    ]);
    expect(got).toEqual([12, 16, 6]);
    // Step 1: 16 + 32 + 24 = 72 A = 18 kW. 34 kWh on 20 days at 0.20, and 18 kW at 10.
    expect(peakKw).toBe(18);
    expect(cost).toBeCloseTo(20 * 34 * 0.2 + 180, 9);
  });

  test('first come: A has what it lacks, B and C what is left', () => {
    // Step 1: A lacks 4 (16 A); B gets the other 24 A; nothing for C. Step 2: B 32 A (8 of its 10 left), C 8 A.
    // Step 3: C lacks 4: 16 A.
    const { amps, got, short } = course('first');
    expect(amps).toEqual([
      [32, 16, 0, 0],
      [0, 24, 32, 0],
      [0, 0, 8, 16],
    ]);
    expect(got).toEqual([12, 14, 6]);
    expect(short).toBe(2);
  });

  test('by deadline: B leaves first and is served first', () => {
    // Step 1: B 32 A, A the other 8 (it leaves with C, and came before). Step 2: B 32, A 8. Step 3: A lacks nothing but
    // 12 - 8 - 2 - 2 = 0, so C has 24 A.
    const { amps, got, carsShort } = course('deadline');
    expect(amps).toEqual([
      [32, 8, 8, 0],
      [0, 32, 32, 0],
      [0, 0, 0, 24],
    ]);
    expect(got).toEqual([12, 16, 6]);
    expect(carsShort).toBe(0);
  });

  test('equal shares: 40 A over three is 13.33 A each, and what one cannot use goes to the rest', () => {
    // Step 1: all three get 40/3 A = 3.33 kWh. Step 2: A lacks 0.67 (2.67 A), which is under its least of 6 A, so that is
    // its least; C lacks 2.67 (10.67 A); B has the rest, 26.67 A = 6.67 kWh. B got 10 of 16.
    const { amps, got } = course('equal');
    expect(amps[1]![1]).toBeCloseTo(40 / 3, 9);
    expect(amps[0]![2]).toBeCloseTo(8 / 3, 9);
    expect(amps[2]![2]).toBeCloseTo(32 / 3, 9);
    expect(amps[1]![2]).toBeCloseTo(80 / 3, 9);
    expect(got[0]).toBeCloseTo(12, 9);
    expect(got[1]).toBeCloseTo(10, 9);
    expect(got[2]).toBeCloseTo(6, 9);
  });

  test('least time to spare: B has none, then A and C as they stand', () => {
    // Step 1, minutes to spare: A 180 - 30 = 150, B 120 - 120 = 0, C 180 - 45 = 135. B 32 A, C 8 A.
    // Step 2: A 120 - 30 = 90, B 0, C 120 - 30 = 90: A came before. B 32 A, A 8 A. Step 3: A lacks 2 (8 A), C 4 (16 A).
    const { amps, carsShort } = course('laxity');
    expect(amps).toEqual([
      [32, 0, 8, 8],
      [0, 32, 32, 0],
      [0, 8, 0, 16],
    ]);
    expect(carsShort).toBe(0);
  });
});
