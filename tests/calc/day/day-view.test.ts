import { describe, expect, test } from 'vitest';
import type { DayInput } from '../../../calc/day/day-input.ts';
import { dayView } from '../../../calc/day/figures/day-view.ts';

/** Two cars on one pair of lines at 250 V: an ampere is a quarter of a kilowatt-hour in a step. */
const day: DayInput = {
  from: '08:00',
  to: '12:00',
  step: 60,
  chargers: ['A', 'B'].map((id) => ({ id, lines: 'AB', amps: 32, volts: 250, stalls: 1, minAmps: 6 })),
  limits: [
    { id: 'P', kind: 'lines', most: 40, ratio: 1, chargers: 'all', other: [{ from: '09:00', to: '10:00', amps: 8 }] },
  ],
  cars: [
    { arrive: '08:00', leave: '11:00', kwh: 16 },
    { arrive: '08:00', leave: '10:00', kwh: 16 },
  ],
  hold: 'stay',
  taper: null,
  tariff: null,
};

describe('a day as it is drawn', () => {
  test('load and room in each step, and who leaves with less than the cord could have given', () => {
    const view = dayView(day, 'equal', 0, null);
    expect(view.room).toEqual([40, 32, 40, 40]);
    expect(view.load).toEqual([40, expect.closeTo(32, 9), expect.closeTo(28, 9), 0]);
    expect(view.unmanaged).toEqual([expect.closeTo(64, 9), expect.closeTo(64, 9), 0, 0]);
    // B got 20 A and 16 A: 9 of 16 kWh; A has till eleven.
    expect(view.cars.map(({ charger, got, isShort }) => [charger, got, isShort])).toEqual([
      ['A', expect.closeTo(16, 9), false],
      ['B', expect.closeTo(9, 9), true],
    ]);
    expect(view).toMatchObject({ carsShort: 1, worstShort: expect.closeTo(7, 9), turnedAway: 0 });
  });

  test('with another figure for the limit, and none at all without one', () => {
    expect(dayView(day, 'equal', 0, 72).carsShort).toBe(0);
    expect(dayView(day, 'equal', 0, 0).energy).toBe(0);
    const free = dayView({ ...day, limits: [] }, 'equal', -1, null);
    expect([free.carsShort, free.load]).toEqual([0, [0, 0, 0, 0]]);
  });
});

test('who waits for the cord has it from when the one before it goes', () => {
  const one = { ...day, chargers: [{ ...day.chargers[0]!, stalls: 2 }] };
  const cars = [
    { arrive: '08:00', leave: '10:00', kwh: 4 },
    { arrive: '08:00', leave: '11:00', kwh: 16 },
  ];
  const cords = (hold: 'stay' | 'done') =>
    dayView({ ...one, cars, hold }, 'equal', 0, null).cars.map(({ cord }) => cord);
  expect(cords('stay')).toEqual([0, 2]);
  // The first has its 4 kWh after an hour at 16 A or more.
  expect(cords('done')).toEqual([0, 1]);
});
