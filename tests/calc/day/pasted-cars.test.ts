import { describe, expect, test } from 'vitest';
import { pastedCars } from '../../../calc/day/cars/pasted-cars.ts';

describe('cars from a pasted table', () => {
  test('parted by commas, tabs or blanks, with or without a head and the car’s most', () => {
    const text = 'arrive, leave, kWh\n8:10, 16:40, 14.5, 7.2\r\n09:00\t17:00\t6\n\n22:00 06:30 30';
    expect(pastedCars(text)).toEqual({
      ok: true,
      cars: [
        { arrive: '08:10', leave: '16:40', kwh: 14.5, maxKw: 7.2 },
        { arrive: '09:00', leave: '17:00', kwh: 6 },
        { arrive: '22:00', leave: '06:30', kwh: 30 },
      ],
    });
  });

  test.each([
    ['24:10, 16:40, 3', 'line 1: expected an arrival such as 08:10, got "24:10"'],
    ['08:10, noon, 3', 'line 1: expected a departure such as 16:40, got "noon"'],
    ['08:10, 16:40, 3\n08:10, 16:40, -3', 'line 2: expected kilowatt-hours, got "-3"'],
    ['08:10, 16:40, 3, fast', 'line 1: expected kilowatts, got "fast"'],
    ['arrive leave', 'there is no car in it'],
  ])('what is wrong is told by its line: %j', (text, says) => {
    expect(pastedCars(text)).toEqual({ ok: false, says });
  });
});
