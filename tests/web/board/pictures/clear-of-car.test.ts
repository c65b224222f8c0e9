import fc from 'fast-check';
import { expect, test } from 'vitest';
import { clearOfEnds, fitting } from '../../../../web/board/pictures/stalls/clear-of-car.ts';

test('words that would cross an end of a car stand inside of it; others stay', () => {
  const car = { minY: 100, maxY: 200 };
  expect(clearOfEnds(103, 10, car)).toBe(107);
  expect(clearOfEnds(195, 10, car)).toBe(193);
  expect(clearOfEnds(150, 10, car)).toBe(150);
  expect(clearOfEnds(80, 10, car)).toBe(80);
});

test('no line of words ever crosses the outline of a car that is high enough for it', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 300, noNaN: true }),
      fc.double({ min: 8, max: 15, noNaN: true }),
      fc.double({ min: 20, max: 200, noNaN: true }),
      (wished, high, length) => {
        const car = { minY: 100, maxY: 100 + length };
        const at = clearOfEnds(wished, high, car);
        for (const end of [car.minY, car.maxY]) expect(Math.abs(at - end)).toBeGreaterThanOrEqual(high / 2 + 2 - 1e-9);
      },
    ),
  );
});

test('the longest words that stand between the sides of the car are taken, or none', () => {
  const widthOf = (words: string): number => words.length * 6;
  expect(fitting(['van accessible', 'van acc.', 'van'], widthOf, 90)).toBe('van accessible');
  expect(fitting(['van accessible', 'van acc.', 'van'], widthOf, 60)).toBe('van acc.');
  expect(fitting(['van accessible', 'van acc.', 'van'], widthOf, 25)).toBe('van');
  expect(fitting(['accessible', 'acc.'], widthOf, 20)).toBeNull();
});
