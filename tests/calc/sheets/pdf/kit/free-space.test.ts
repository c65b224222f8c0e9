import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Area } from '../../../../../calc/sheets/pdf/kit/area.ts';
import { freeSpace, spaceOver, turnedAreas } from '../../../../../calc/sheets/pdf/kit/labels/free-space.ts';
import { overlap } from './overlap.ts';

const areas = fc.record({
  x: fc.double({ min: -50, max: 900, noNaN: true }),
  y: fc.double({ min: -50, max: 600, noNaN: true }),
  width: fc.double({ min: 0.1, max: 300, noNaN: true }),
  height: fc.double({ min: 0.1, max: 80, noNaN: true }),
});

test('a place is free where none of the taken ones overlaps it, by looking at each', () => {
  fc.assert(
    fc.property(fc.array(areas, { maxLength: 30 }), areas, (taken, asked) => {
      const space = freeSpace();
      for (const area of taken) space.take(area);
      expect(space.isFree(asked)).toBe(!taken.some((area) => overlap(area, asked)));
    }),
  );
});

test('a space over another knows what the other has taken, not the other way round', () => {
  const below = freeSpace();
  const over = spaceOver(below);
  const place: Area = { x: 10, y: 10, width: 20, height: 5 };
  over.take(place);
  expect([over.isFree(place), below.isFree(place)]).toEqual([false, true]);
  below.take({ ...place, x: 100 });
  expect(over.isFree({ ...place, x: 105 })).toBe(false);
});

test('the areas of a turned rectangle cover all of it', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -180, max: 180, noNaN: true }),
      fc.double({ min: 1, max: 120, noNaN: true }),
      fc.double({ min: 1, max: 30, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (turn, width, height, a, b) => {
        const angle = (turn * Math.PI) / 180;
        const [along, up] = [a * width, b * height];
        const x = 40 + along * Math.cos(angle) - up * Math.sin(angle);
        const y = 70 + along * Math.sin(angle) + up * Math.cos(angle);
        const covered = turnedAreas([40, 70], width, height, turn).some(
          (area) =>
            x >= area.x - 1e-6 &&
            x <= area.x + area.width + 1e-6 &&
            y >= area.y - 1e-6 &&
            y <= area.y + area.height + 1e-6,
        );
        expect(covered).toBe(true);
      },
    ),
  );
});
