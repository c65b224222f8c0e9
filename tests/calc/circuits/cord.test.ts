import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cord } from '../../../calc/circuits/cord.ts';
import { NEC_2023 } from '../../../calc/tables/nec-2023/nec-2023.ts';

const of = (amps: number, more: Partial<Parameters<typeof cord>[1]> = {}) =>
  cord(NEC_2023, { amps, volts: 208, phases: 1, length: 25, ...more });

describe('the cord of a charger', () => {
  test('by hand, from the printed tables', () => {
    // 10 AWG flexible cord, two conductors: 30 A; 8 AWG power cable, 60 C: 55 A.
    expect(of(30)).toMatchObject({ size: '10', ampacity: 30 });
    expect(of(31)).toMatchObject({ size: '8', ampacity: 55 });
    // Three conductors that carry current: 25 A and 48 A.
    expect(of(26, { phases: 3 })).toMatchObject({ size: '8', ampacity: 48 });
    // At 40 C, 60 C column, 0.82: 8 AWG 45.1 A, 6 AWG 59.04 A.
    expect(of(48, { ambientC: 40 })).toMatchObject({ size: '6', ampacity: expect.closeTo(59.04, 9) });
    expect(of(48, { size: '8', ambientC: 40 })).toMatchObject({ fits: false, ampacity: expect.closeTo(45.1, 9) });
  });

  test('its drop by hand: 2 x 32 A x 25 ft of 0.778 ohm / 1,000 ft, sqrt 3 for three', () => {
    expect(of(32)!.dropVolts).toBeCloseTo(1.2448, 9);
    expect(of(32)!.dropPercent).toBeCloseTo(0.598462, 5);
    expect(of(32, { phases: 3 })!.dropVolts).toBeCloseTo((1.2448 * Math.sqrt(3)) / 2, 9);
  });

  test('what the tables do not carry, or have no resistance of, is refused', () => {
    expect(of(600)).toBeNull();
    expect(of(32, { size: '9' })).toBeNull();
    expect(of(32, { ambientC: 70 })).toBeNull();
  });

  test('a larger size carries more and drops less', () => {
    const sizes = ['14', '12', '10', '8', '6', '4', '3', '2', '1', '1/0', '2/0', '4/0', '500'];
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 400 }),
        fc.constantFrom(1, 3),
        fc.integer({ min: 1, max: 11 }),
        (amps, phases, i) => {
          const [smaller, larger] = [sizes[i - 1]!, sizes[i]!].map(
            (size) => of(amps, { size, phases: phases as 1 | 3 })!,
          );
          expect(larger!.ampacity).toBeGreaterThan(smaller!.ampacity);
          expect(larger!.dropVolts).toBeLessThan(smaller!.dropVolts);
        },
      ),
      { numRuns: 100 },
    );
  });
});
