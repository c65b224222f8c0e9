import fc from 'fast-check';
import { expect, test } from 'vitest';
import { numbering } from '../../../routing/kept/numbered.ts';

test('rows have one number where they are equal, and only there', () => {
  const rows = fc.array(fc.array(fc.constantFrom(0, 1, -1, 0.1, 0.2, 0.1 + 0.2, 0.3, 1e9), { maxLength: 4 }), {
    maxLength: 60,
  });
  fc.assert(
    fc.property(rows, (all) => {
      const numberOf = numbering();
      const numbers = all.map((row) => numberOf([...row]));
      for (const [i, row] of all.entries())
        for (const [j, other] of all.entries())
          expect(numbers[i] === numbers[j]).toBe(JSON.stringify(row) === JSON.stringify(other));
    }),
    { numRuns: 40 },
  );
});

test('what was forgotten for room is numbered anew, and never with a number that is taken', () => {
  const numberOf = numbering(3);
  const first = [1, 2, 3, 4].map((item) => numberOf([item]));
  const again = [1, 2, 3, 4].map((item) => numberOf([item]));
  expect(new Set(first).size).toBe(4);
  expect(again.slice(0, 2).every((number) => !first.includes(number))).toBe(true);
});
