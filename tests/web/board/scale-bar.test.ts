import fc from 'fast-check';
import { expect, test } from 'vitest';
import { scaleLength } from '../../../web/board/round/scale-bar.tsx';

test('the scale bar is a round length, never longer than its room and never less than two fifths of it', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.02, max: 240, noNaN: true }), fc.constantFrom('ft', 'm'), (scale, units) => {
      const { length, px } = scaleLength(scale, units as 'ft' | 'm');
      expect(px).toBeLessThanOrEqual(150.0001);
      expect(px).toBeGreaterThanOrEqual(59.9);
      const first = Number(length.toExponential().charAt(0));
      expect([1, 2, 5]).toContain(first);
    }),
  );
});
