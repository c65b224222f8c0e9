import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { BY_A_HAIR, grounding } from '../../../calc/circuits/grounding.ts';
import { circularMils } from '../../../calc/tables/conductor-of.ts';
import { NEC_2023 as nec } from '../../../calc/tables/nec-2023/nec-2023.ts';
import { CONDUCTOR_SIZES, compareSizes } from '../../../calc/tables/sizes.ts';
import { explained } from '../../../calc/words/explain.ts';

describe('grounding', () => {
  const at = (
    breakerAmps: number,
    conductor?: string,
    conductorNeeded?: string,
    metal: 'copper' | 'aluminum' = 'copper',
    slack?: number,
  ) => grounding(nec, { breakerAmps, metal, conductor, conductorNeeded, slack }).size;
  test('is by the table where the conductors are no larger than needed', () => {
    expect(at(40)).toBe('10');
    expect(at(40, '8', '8')).toBe('10');
    expect(at(200, '4/0', '4/0', 'aluminum')).toBe('4');
  });
  test('is never larger than the conductors: 250.122(A)', () => expect(at(30, '12', '12')).toBe('12'));
  test('grows in proportion with conductors grown for drop: 250.122(B)', () => {
    // 10 380 x 26 240 / 16 510 = 16 497 circular mils: 8 AWG has 16 510.
    expect(at(40, '6', '8')).toBe('8');
    // 10 380 x 41 740 / 16 510 = 26 242: two circular mils past the 26 240 of 6 AWG, 0.01%.
    expect(at(40, '4', '8')).toBe('4');
    expect(at(40, '4', '8', 'copper', BY_A_HAIR)).toBe('6');
  });
  test('takes a size within 0.5% where a plan asks for it, and the step says so', () => {
    // 10 380 x 66 360 / 26 240 = 26 250, 0.04% past 6 AWG; 16 510 x 66 360 / 41 740 = 26 248; 16 510 x 83 690 / 52 620 = 26 258.
    expect(at(60, '2', '6', 'copper', BY_A_HAIR)).toBe('6');
    // 16 510 x 105 600 / 66 360 = 26 272, 0.12%; 26 240 x 250 / 167.8 = 39 094, far from 6 AWG.
    expect(at(100, '1/0', '2', 'copper', BY_A_HAIR)).toBe('6');
    expect(at(200, '250', '3/0', 'copper', BY_A_HAIR)).toBe('4');
    const { steps } = explained((tell) =>
      grounding(
        nec,
        { breakerAmps: 40, metal: 'copper', conductor: '4', conductorNeeded: '8', slack: BY_A_HAIR },
        tell,
      ),
    );
    expect(steps.at(-1)!.formula).toContain('0.5%');
    expect(steps.at(-1)!.values).toMatchObject({ 'it has': '26240 cmil' });
  });
  test('the boundary of 250.122(B): as large as needed is not grown, one size more is', () => {
    expect(at(60, '6', '6')).toBe('10');
    // 16 510 x 41 740 / 16 510 is 4 AWG to the last circular mil.
    expect(at(100, '4', '8')).toBe('4');
    expect(at(100, '3', '8')).toBe('3');
  });
  test('grown has at least the share of circular mils that the conductors have', () => {
    const sizes = fc.constantFrom(...CONDUCTOR_SIZES.slice(2, -4));
    fc.assert(
      fc.property(fc.constantFrom(15, 20, 60, 100, 200, 400), sizes, sizes, (breakerAmps, a, b) => {
        const [needed = '', installed = ''] = [a, b].sort(compareSizes);
        const size = at(breakerAmps, installed, needed);
        const asked = (circularMils(nec, at(breakerAmps)) * circularMils(nec, installed)) / circularMils(nec, needed);
        expect(compareSizes(size, installed)).toBeLessThanOrEqual(0);
        if (size !== installed) expect(circularMils(nec, size)).toBeGreaterThanOrEqual(asked * (1 - 1e-9));
      }),
    );
  });
});
