import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { clocksAt, movedTimes, withCar, withCars } from '../../../calc/day/cars/listed-cars.ts';
import { stayOf } from '../../../calc/day/cars/parking.ts';
import { carsText, pastedCars } from '../../../calc/day/cars/pasted-cars.ts';
import type { DayInput } from '../../../calc/day/day-input.ts';
import { worldOf } from '../../../calc/day/simulated/world.ts';

const input = (more: Partial<DayInput> = {}): DayInput => ({
  from: '14:00',
  to: '10:00',
  step: 15,
  chargers: [{ id: 'A', lines: 'AB', amps: 32, volts: 208, stalls: 1, minAmps: 6 }],
  limits: [],
  cars: [
    { arrive: '17:07', leave: '06:30', kwh: 20, maxKw: 7.2 },
    { arrive: '12:00', leave: '16:10', kwh: 5 },
  ],
  hold: 'stay',
  taper: null,
  tariff: null,
  ...more,
});

describe('cars of a day one by one', () => {
  test('a population becomes the cars that it made, one of them otherwise', () => {
    const day = { id: 'd', from: '14:00', to: '10:00', population: { kind: 'fleet' as const, cars: 2, seed: 1 } };
    const after = withCar(day, input(), 1, { leave: '16:30' });
    expect(after).toEqual({
      id: 'd',
      from: '14:00',
      to: '10:00',
      cars: [
        { arrive: '17:07', leave: '06:30', kwh: 20, maxKw: 7.2 },
        { arrive: '12:00', leave: '16:30', kwh: 5 },
      ],
    });
    expect(withCars(day, [])).not.toHaveProperty('population');
  });

  test('a stay or one of its ends is moved by minutes, within the window and a step long at least', () => {
    const day = input();
    const stays = { arrives: 180, leaves: 300 };
    expect(movedTimes(stays, 'stay', 30, day)).toEqual({ arrives: 210, leaves: 330 });
    expect(movedTimes(stays, 'stay', -999, day)).toEqual({ arrives: 0, leaves: 120 });
    expect(movedTimes(stays, 'stay', 9999, day)).toEqual({ arrives: 1080, leaves: 1200 });
    expect(movedTimes(stays, 'arrives', 9999, day)).toEqual({ arrives: 285, leaves: 300 });
    expect(movedTimes(stays, 'leaves', -9999, day)).toEqual({ arrives: 180, leaves: 195 });
  });

  test('a time that is as it was keeps its words, also where it lies before the window', () => {
    // The second car stood there two hours before the window began.
    expect(clocksAt(input(), 1, { arrives: 0, leaves: 150 })).toEqual({ arrive: '12:00', leave: '16:30' });
    expect(clocksAt(input(), 0, { arrives: 202, leaves: 1005 })).toEqual({ arrive: '17:22', leave: '06:45' });
  });

  test('the words of times are those times again, whatever the window', () => {
    const time = fc.integer({ min: 0, max: 1439 });
    fc.assert(
      fc.property(time, fc.integer({ min: 4, max: 96 }), fc.nat(), fc.nat(), (from, steps, a, b) => {
        const clock = (minute: number): string =>
          `${String(Math.floor((minute % 1440) / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
        const end = 15 * steps;
        const day = input({ from: clock(from), to: clock((from + end) % 1440) });
        const arrives = a % (end - 15);
        const leaves = arrives + 15 + (b % (end - arrives - 14));
        const stood = stayOf({ kwh: 1, ...clocksAt(day, 0, { arrives, leaves }) }, worldOf(day).window);
        expect(stood).toMatchObject({ arrives, leaves });
      }),
    );
  });

  test('as a table and back they are the same cars', () => {
    const cars = [
      { arrive: '08:10', leave: '16:40', kwh: 14.5, maxKw: 7.2, charger: 'EV01', battery: 60, state: 0.25 },
      { arrive: '09:00', leave: '17:00', kwh: 6 },
      { arrive: '22:00', leave: '06:30', kwh: 30, charger: 'EV02' },
      { arrive: '22:00', leave: '06:30', kwh: 30, state: 1 },
    ];
    expect(pastedCars(carsText(cars))).toEqual({ ok: true, cars });
    expect(pastedCars('08:10,16:40,5,,,,2')).toEqual({
      ok: false,
      says: 'line 1: expected how full it comes, 0 to 1, got "2"',
    });
  });
});
