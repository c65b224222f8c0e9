import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawnTimes, freeSpans, nextStay, withDrawnCar, withoutCar } from '../../../calc/day/cars/drawn-cars.ts';
import type { DayInput } from '../../../calc/day/day-input.ts';
import { dayView } from '../../../calc/day/figures/day-view.ts';

const STEP = 15;
const charger = (id: string, stalls: number) => ({
  id,
  lines: 'AB' as const,
  amps: 32,
  volts: 208,
  stalls,
  minAmps: 6,
});
const dayOf = (cars: DayInput['cars'], stalls = 1): DayInput => ({
  from: '06:00',
  to: '22:00',
  step: STEP,
  chargers: [charger('A', stalls), charger('B', stalls)],
  limits: [],
  cars,
  hold: 'stay',
  taper: null,
  tariff: null,
});
const seen = (input: DayInput) => dayView(input, 'unmanaged', -1, null);
const staysAt = (input: DayInput, id: string) => seen(input).cars.filter((car) => car.charger === id);

describe('a car that is drawn', () => {
  test('takes whole steps of the span where it was begun, at least one', () => {
    const spans = [
      { arrives: 0, leaves: 100 },
      { arrives: 200, leaves: 960 },
    ];
    expect(drawnTimes(spans, 20, 50, STEP)).toEqual({ arrives: 15, leaves: 60 });
    // From right to left, and no farther than the next car.
    expect(drawnTimes(spans, 50, 20, STEP)).toEqual({ arrives: 15, leaves: 60 });
    expect(drawnTimes(spans, 20, 500, STEP)).toEqual({ arrives: 15, leaves: 90 });
    expect(drawnTimes(spans, 300, -500, STEP)).toEqual({ arrives: 210, leaves: 300 });
    expect(drawnTimes(spans, 20, 20, STEP)).toEqual({ arrives: 15, leaves: 30 });
    // Where another stands, or no whole step is free.
    expect(drawnTimes(spans, 150, 300, STEP)).toBeNull();
    expect(drawnTimes([{ arrives: 20, leaves: 40 }], 25, 35, STEP)).toBeNull();
  });

  test('finds the next room in the row, and the first where there is none after', () => {
    const spans = [
      { arrives: 0, leaves: 100 },
      { arrives: 200, leaves: 960 },
    ];
    expect(nextStay(spans, 100, 240, STEP)).toEqual({ arrives: 210, leaves: 450 });
    expect(nextStay(spans, 955, 240, STEP)).toEqual({ arrives: 945, leaves: 960 });
    expect(nextStay(spans, 960, 240, STEP)).toEqual({ arrives: 0, leaves: 90 });
    expect(nextStay([], 0, 240, STEP)).toBeNull();
  });

  test('asks what is usual, insists on its charger, and goes again', () => {
    const input = dayOf([
      { arrive: '08:00', leave: '10:00', kwh: 4 },
      { arrive: '08:30', leave: '10:00', kwh: 7.26 },
    ]);
    const day = { id: 'd', from: '06:00', to: '22:00', population: { kind: 'home' as const, cars: 2, seed: 1 } };
    const drawn = withDrawnCar(day, input, 'B', { arrives: 300, leaves: 420 });
    expect(drawn).not.toHaveProperty('population');
    expect(drawn.cars![2]).toEqual({ arrive: '11:00', leave: '13:00', kwh: 7.3, charger: 'B' });
    expect(withDrawnCar(day, dayOf([]), 'A', { arrives: 0, leaves: 60 }).cars![0]!.kwh).toBe(10);
    expect(withoutCar(drawn, { ...input, cars: drawn.cars! }, 0).cars).toEqual(drawn.cars!.slice(1));
  });

  test('drawn anywhere in free room it stands where it was drawn, and nobody who stood there loses the stall', () => {
    const time = fc.integer({ min: 0, max: 959 });
    const car = fc.record({ arrives: time, stay: fc.integer({ min: 1, max: 500 }) });
    fc.assert(
      fc.property(
        fc.array(car, { maxLength: 6 }),
        fc.constantFrom(1, 2),
        time,
        time,
        fc.constantFrom('A', 'B'),
        (cars, stalls, from, to, id) => {
          const clock = (minute: number) =>
            `${String(6 + Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
          const insists = cars.map((one, i) => ({
            arrive: clock(one.arrives),
            leave: clock(Math.min(959, one.arrives + one.stay)),
            kwh: 5,
            charger: i % 2 === 0 ? 'A' : 'B',
          }));
          const input = dayOf(
            insists.filter(({ arrive, leave }) => arrive !== leave),
            stalls,
          );
          const before = staysAt(input, id);
          const times = drawnTimes(freeSpans(before, stalls, 960), from, to, STEP);
          if (times === null) return;
          const after = dayOf(withDrawnCar({ id: 'd', from: '', to: '' }, input, id, times).cars!, stalls);
          const own = staysAt(after, id);
          expect(own).toContainEqual(expect.objectContaining({ ...times, car: input.cars.length }));
          expect(own).toHaveLength(before.length + 1);
        },
      ),
    );
  });
});
