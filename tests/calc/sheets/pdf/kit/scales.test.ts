import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { barPart } from '../../../../../calc/sheets/pdf/kit/view/scale-bar.ts';
import { pointsPerFoot, scalesOf, scaleThatFits } from '../../../../../calc/sheets/pdf/kit/view/scales.ts';
import { fromFeet } from '../../../../../routing/site/numbers/units.ts';

describe('standard scales', () => {
  test('an architect’s scale has as many points a foot as it says inches', () => {
    const perFoot = (says: string): number => pointsPerFoot(scalesOf('ft').find((scale) => scale.says === says)!);
    // 72 points an inch: 1/8 in = 9 points, 1/4 in = 18, 1 in over 20 ft = 3.6.
    expect(perFoot('1/8" = 1\'-0"')).toBe(9);
    expect(perFoot('1/4" = 1\'-0"')).toBe(18);
    expect(perFoot('3/32" = 1\'-0"')).toBe(6.75);
    expect(perFoot('1/16" = 1\'-0"')).toBe(4.5);
    expect(perFoot('1" = 20\'')).toBeCloseTo(3.6, 12);
  });
  test('a metric scale makes a meter as many times smaller as it says', () => {
    const scale = scalesOf('m').find(({ says }) => says === '1:100')!;
    // 1 m is 1 / 0.3048 ft; at 1:100 it is 10 mm, 28.3465 points.
    expect(pointsPerFoot(scale) / 0.3048).toBeCloseTo(720 / 25.4, 9);
  });
  test('the scales stand in order, largest drawing first', () => {
    for (const units of ['ft', 'm'] as const) {
      const ratios = scalesOf(units).map(({ ratio }) => ratio);
      expect(ratios).toEqual([...ratios].sort((a, b) => a - b));
    }
  });
  test('the one chosen fits, and the next larger would not', () => {
    const size = fc.double({ min: 1, max: 5000, noNaN: true });
    const room = fc.double({ min: 100, max: 2000, noNaN: true });
    fc.assert(
      fc.property(fc.constantFrom('ft' as const, 'm' as const), size, size, room, room, (units, w, h, rw, rh) => {
        const fits = (perFoot: number): boolean => w * perFoot <= rw && h * perFoot <= rh;
        const scale = scaleThatFits(units, { width: w, height: h }, { width: rw, height: rh }, 48);
        const scales = scalesOf(units).filter(({ ratio }) => ratio >= 48);
        const place = scales.indexOf(scale);
        expect(place).toBeGreaterThanOrEqual(0);
        expect(fits(pointsPerFoot(scale))).toBe(true);
        if (place > 0) expect(fits(pointsPerFoot(scales[place - 1]!))).toBe(false);
      }),
    );
  });
});

describe('scale bar', () => {
  test('its parts are 1, 2 or 5 of a power of ten and go into its room', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('ft' as const, 'm' as const),
        fc.double({ min: 0.01, max: 40, noNaN: true }),
        (units, perFoot) => {
          const part = barPart(perFoot, units);
          const digits = part / 10 ** Math.floor(Math.log10(part) + 1e-9);
          expect([1, 2, 5].some((one) => Math.abs(digits - one) < 1e-9)).toBe(true);
          const length = 4 * (part / fromFeet(1, units)) * perFoot;
          expect(length).toBeLessThanOrEqual(210 + 1e-9);
          expect(length).toBeGreaterThan(210 / 2.6);
        },
      ),
    );
  });
});
