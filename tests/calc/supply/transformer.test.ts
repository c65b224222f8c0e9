import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { regulation, resistanceAndReactance, transformer } from '../../../calc/supply/transformers/transformer.ts';
import { explained } from '../../../calc/words/explain.ts';

describe('transformer', () => {
  const unit = { kva: 150, primaryVolts: 480, secondaryVolts: 208, phases: 3 } as const;
  test('of 150 kVA, 480 to 208 V, has 180.4 and 416.4 A (standard ratings)', () => {
    const { primaryAmps, secondaryAmps } = transformer(unit);
    expect(primaryAmps).toBeCloseTo(180.4, 1);
    expect(secondaryAmps).toBeCloseTo(416.4, 1);
  });
  test('says nothing of what its nameplate does not', () => {
    expect(Object.keys(transformer(unit)).sort()).toEqual(['primaryAmps', 'secondaryAmps']);
    expect(transformer({ ...unit, impedancePercent: 5 })).not.toHaveProperty('regulationPercent');
  });
  test('of 5% impedance has twenty times its rated amperes in a fault', () => {
    const { faultAmps = 0, secondaryAmps } = transformer({ ...unit, impedancePercent: 5 });
    expect(faultAmps / secondaryAmps).toBeCloseTo(20, 12);
  });
  test('regulates as the approximate formula of the handbooks says, to its own accuracy', () => {
    // R cos + X sin + (X cos - R sin)² / 200 in percent: good to the third power of the impedance.
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 6, noNaN: true }),
        fc.double({ min: 0, max: 5, noNaN: true }),
        fc.double({ min: 0.5, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (impedancePercent, xr, powerFactor, share) => {
          const { r, x } = resistanceAndReactance(impedancePercent * share, xr);
          const sine = Math.sqrt(1 - powerFactor ** 2);
          const approximate = r * powerFactor + x * sine + (x * powerFactor - r * sine) ** 2 / 200;
          const loadKva = share * unit.kva;
          const exact =
            transformer({ ...unit, impedancePercent, xr, powerFactor, loadKva }).regulationPercent ?? Number.NaN;
          expect(Math.abs(exact - approximate)).toBeLessThan(0.02);
        },
      ),
    );
  });
  test('regulates more for a lagging than for a leading current', () => {
    const per = { r: 0.013, x: 0.038 };
    expect(regulation(per, 1, 0.75)).toBeGreaterThan(regulation(per, 1, 0.75, true));
  });
  test('splits its impedance so that X / R and their hypotenuse come back', () => {
    const { r, x } = resistanceAndReactance(5.75, 2.2);
    expect(x / r).toBeCloseTo(2.2, 12);
    expect(Math.hypot(r, x)).toBeCloseTo(5.75, 12);
  });
  test('tells one step for each thing it answers', () => {
    const { result, steps } = explained((tell) => transformer({ ...unit, impedancePercent: 5, xr: 2 }, tell));
    expect(steps.map((step) => step.result)).toEqual([
      result.primaryAmps,
      result.secondaryAmps,
      result.faultAmps,
      result.regulationPercent,
    ]);
  });
});
