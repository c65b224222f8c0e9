import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ampacity } from '../../../../calc/circuits/ampacity.ts';
import { feederConductor } from '../../../../calc/supply/feeders/feeder-conductor.ts';
import { NEC_2023 } from '../../../../calc/tables/nec-2023/nec-2023.ts';
import { DEFAULT_RULES } from '../../../../routing/site/rules/rules.ts';

describe('conductors for a new feeder', () => {
  test.each([
    // NEC Table 310.16, 75 C column, copper, from memory.
    [100, '3', 1],
    [200, '3/0', 1],
    [400, '600', 1],
    [600, '350', 2],
    [800, '600', 2],
  ])('%d A at 30 C takes %s copper in %d sets', (amps, size, sets) => {
    expect(feederConductor(NEC_2023, amps, DEFAULT_RULES, 30)).toMatchObject({ size, sets, metal: 'copper' });
  });

  test('carry the breaker where the site is as warm as it is, in parallel no smaller than 1/0', () => {
    fc.assert(
      fc.property(fc.integer({ min: 15, max: 4000 }), fc.integer({ min: 20, max: 50 }), (amps, ambientC) => {
        const { size, sets, metal, insulation } = feederConductor(NEC_2023, amps, DEFAULT_RULES, ambientC);
        const conductor = { size, metal, insulation };
        const one = ampacity(NEC_2023, { conductor, ambientC, currentCarrying: 3, terminalC: 75 });
        expect(one!.ampacity * sets).toBeGreaterThanOrEqual(amps);
        if (sets > 1) expect(size).toMatch(/^\d\/0$|^\d{3}$/);
      }),
    );
  });

  test('a breaker of nothing is a fault of the caller', () => {
    expect(() => feederConductor(NEC_2023, 0, DEFAULT_RULES, 30)).toThrow(RangeError);
  });
});
