import fc from 'fast-check';
import { expect, test } from 'vitest';
import { hypot2, hypot3 } from '../../../routing/plane/hypot.ts';

const length = fc.oneof(
  fc.constantFrom(0, -0, 1, -3, 4, 0.25, 1e-300, 1e300, NaN, Infinity, -Infinity),
  fc.double({ min: -1000, max: 1000 }),
  fc.double(),
);

test('is what the engine of Node gives, to the last bit', () => {
  fc.assert(
    fc.property(length, length, length, (x, y, z) => {
      expect(hypot2(x, y)).toBe(Math.hypot(x, y));
      expect(hypot3(x, y, z)).toBe(Math.hypot(x, y, z));
    }),
    { numRuns: 3000 },
  );
});
