import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ampacity } from '../../../calc/circuits/ampacity.ts';
import { branch, branchBreaker, branchConductor } from '../../../calc/circuits/branch.ts';
import { voltageDrop } from '../../../calc/circuits/voltage-drop.ts';
import { ampacityAt, insulationColumn } from '../../../calc/tables/ampacity-of.ts';
import { NEC_2023 as nec } from '../../../calc/tables/nec-2023/nec-2023.ts';
import { CONDUCTOR_SIZES, compareSizes } from '../../../calc/tables/sizes.ts';
import { explained } from '../../../calc/words/explain.ts';
import { circuits, fraction, metals } from './any-circuit.ts';

describe('ampacity', () => {
  const surroundings = fc.record({
    ambientC: fc.double({ min: -10, max: 60, noNaN: true }),
    currentCarrying: fc.integer({ min: 1, max: 50 }),
  });
  test('grows with size, factors and terminals whatever they are', () => {
    const terminals = fc.constantFrom(undefined, 60 as const, 75 as const, 90 as const);
    fc.assert(
      fc.property(surroundings, terminals, metals, (around, terminalC, metal) => {
        const amps = CONDUCTOR_SIZES.slice(3).map(
          (size) =>
            ampacity(nec, { ...around, conductor: { size, metal, insulation: 'XHHW-2' }, terminalC })?.ampacity ??
            Number.NaN,
        );
        expect(amps).toEqual(amps.toSorted((a, b) => a - b));
      }),
    );
  });
  test('falls with ambient and with company', () => {
    const at = (ambientC: number, currentCarrying: number) =>
      ampacity(nec, { conductor: { size: '8', metal: 'copper', insulation: 'THWN-2' }, ambientC, currentCarrying })
        ?.ampacity ?? Number.NaN;
    fc.assert(
      fc.property(surroundings, surroundings, (a, b) => {
        const [cool, hot] = [Math.min(a.ambientC, b.ambientC), Math.max(a.ambientC, b.ambientC)];
        expect(at(hot, a.currentCarrying)).toBeLessThanOrEqual(at(cool, a.currentCarrying));
        const [few, many] = [a.currentCarrying, b.currentCarrying].sort((m, n) => m - n);
        expect(at(a.ambientC, many ?? 0)).toBeLessThanOrEqual(at(a.ambientC, few ?? 0));
      }),
    );
  });
  test('hand-worked: six 8 AWG THWN-2 at 40 °C are good for 55 x 0.91 x 0.8 = 40.04 A at 75 °C terminals', () => {
    const input = {
      conductor: { size: '8', metal: 'copper', insulation: 'THWN-2' },
      ambientC: 40,
      currentCarrying: 6,
      terminalC: 75,
    } as const;
    expect(ampacity(nec, input)).toEqual({
      tableAmpacity: 55,
      temperatureFactor: 0.91,
      bundlingFactor: 0.8,
      ampacity: expect.closeTo(40.04, 10),
    });
  });
  test('is no more than the terminals allow: 110.14(C)', () => {
    const conductor = { size: '8', metal: 'copper', insulation: 'THWN-2' } as const;
    const at = (terminalC: 60 | 75 | 90) =>
      ampacity(nec, { conductor, ambientC: 30, currentCarrying: 2, terminalC })?.ampacity;
    expect([at(60), at(75), at(90)]).toEqual([40, 50, 55]);
  });
  test('is not known of what the table lacks', () => {
    const conductor = { size: '14', metal: 'aluminum', insulation: 'THWN-2' } as const;
    expect(ampacity(nec, { conductor, ambientC: 30, currentCarrying: 2 })).toBeNull();
  });
});

describe('branch', () => {
  const duties = fc.record({
    amps: fc.double({ min: 1, max: 300, noNaN: true }),
    continuous: fc.boolean(),
    metal: metals,
    insulation: fc.constantFrom('THWN-2', 'XHHW-2', 'THWN', 'TW'),
    ambientC: fc.integer({ min: 10, max: 50 }),
    currentCarrying: fc.integer({ min: 1, max: 24 }),
    terminalC: fc.constantFrom(60 as const, 75 as const, 90 as const),
  });
  type Duty = typeof duties extends fc.Arbitrary<infer T> ? T : never;

  /** The rules written out once more, each on its own. */
  const rulesKept = (duty: Duty, breakerAmps: number, size: string): boolean => {
    const { amps, continuous, metal, insulation, terminalC } = duty;
    const design = amps * (continuous ? 1.25 : 1);
    const own = insulationColumn(nec, insulation);
    const terminal = ampacityAt(nec, size, metal, Math.min(own, terminalC) as typeof own);
    const corrected = ampacity(nec, { ...duty, conductor: { size, metal, insulation } })?.ampacity;
    if (terminal === null || corrected === undefined) return false;
    const small = { copper: { 14: 15, 12: 20, 10: 30 }, aluminum: { 12: 15, 10: 25 } }[metal] as Record<string, number>;
    const protectedBy = nec.standardRatings.rows
      .filter((rating) => rating < breakerAmps)
      .every((rating) => corrected > rating);
    return (
      terminal >= design &&
      corrected >= amps &&
      (corrected >= breakerAmps || (breakerAmps <= 800 && protectedBy)) &&
      breakerAmps <= (small[size] ?? Infinity)
    );
  };

  test('keeps every rule, and the next smaller conductor breaks one', () => {
    fc.assert(
      fc.property(duties, (duty) => {
        const result = branch(nec, duty);
        const sizes = CONDUCTOR_SIZES.filter((size) => compareSizes(size, duty.metal === 'copper' ? '14' : '12') >= 0);
        const breakerAmps = branchBreaker(nec, duty.amps, duty.continuous);
        expect(result?.conductor.size).toBe(sizes.find((size) => rulesKept(duty, breakerAmps, size)));
        if (result) expect(result.breakerAmps).toBe(breakerAmps);
      }),
      { numRuns: 500 },
    );
  });
  test('asks no smaller conductor of a greater load', () => {
    fc.assert(
      fc.property(duties, fraction, (duty, share) => {
        const [less, more] = [branch(nec, { ...duty, amps: share * duty.amps }), branch(nec, duty)];
        if (less && more) expect(compareSizes(less.conductor.size, more.conductor.size)).toBeLessThanOrEqual(0);
      }),
    );
  });
  const charger = (amps: number, more: Partial<Duty> = {}) =>
    branch(nec, {
      amps,
      continuous: true,
      metal: 'copper',
      insulation: 'THWN-2',
      ambientC: 30,
      currentCarrying: 2,
      terminalC: 75,
      ...more,
    });
  test('of chargers of 16, 24, 32, 40, 48, 64 and 80 A has breakers of 20 to 100 A (common practice)', () => {
    expect([16, 24, 32, 40, 48, 64, 80].map((amps) => charger(amps)?.breakerAmps)).toEqual([
      20, 30, 40, 50, 60, 80, 100,
    ]);
  });
  test('of the same has the conductors that the trade expects at 75 °C', () => {
    const sizes = [16, 24, 32, 40, 48, 64, 80].map((amps) => charger(amps)?.conductor.size);
    expect(sizes).toEqual(['12', '10', '8', '8', '6', '4', '3']);
  });
  test('of six conductors at 40 °C keeps 8 AWG for 32 A: 40.04 A carries 32 and a 40 A breaker may protect it', () => {
    expect(charger(32, { ambientC: 40, currentCarrying: 6 })?.conductor.size).toBe('8');
  });
  test('of ten conductors at 40 °C grows to 4 AWG for 32 A: 6 AWG has 75 x 0.91 x 0.5 = 34 A, too little for a 40 A breaker', () => {
    expect(charger(32, { ambientC: 40, currentCarrying: 10 })?.conductor.size).toBe('4');
  });
  test('is none past the tables', () => {
    expect(charger(900)).toBeNull();
    expect(charger(6000)).toBeNull();
    expect(charger(32, { ambientC: 90 })).toBeNull();
  });
  test('conductor alone answers for a breaker that is given', () => {
    const duty = {
      amps: 32,
      continuous: true,
      metal: 'copper',
      insulation: 'THWN-2',
      ambientC: 30,
      currentCarrying: 2,
      terminalC: 75,
    } as const;
    expect(branchConductor(nec, { ...duty, breakerAmps: 60 })?.size).toBe('6');
  });
});

describe('the steps told', () => {
  test('come from the calculation itself and end in its result', () => {
    const { result, steps } = explained((tell) =>
      branch(
        nec,
        {
          amps: 32,
          continuous: true,
          metal: 'copper',
          insulation: 'THWN-2',
          ambientC: 40,
          currentCarrying: 6,
          terminalC: 75,
        },
        tell,
      ),
    );
    expect(result).not.toBeNull();
    const found = Object.fromEntries(steps.map((step) => [step.find, step.result]));
    expect(found).toMatchObject({ 'design load': 40, breaker: 40, 'ambient factor': 0.91, 'bundling factor': 0.8 });
    expect(found.conductor).toBe('8 copper THWN-2');
    expect(found['grounding conductor by the table']).toBe('10');
    for (const step of steps) expect(step.source).toMatch(/\S/);
  });
  test('do not change the answer', () => {
    fc.assert(
      fc.property(circuits, (circuit) => {
        const input = { ...circuit, length: 100 };
        expect(explained((tell) => voltageDrop(nec, input, tell)).result).toEqual(voltageDrop(nec, input));
      }),
      { numRuns: 30 },
    );
  });
});

describe('a branch that the tables have nothing for', () => {
  const duty = {
    continuous: true,
    metal: 'copper',
    insulation: 'THWN-2',
    ambientC: 40,
    currentCarrying: 3,
    terminalC: 75,
  } as const;
  test('past the ratings, and past the largest conductor, is null and not a smaller one', () => {
    // 125% of 4,801 A is past 6,000 A; 1,000 A continuous asks for 1,250 A at the terminals, and 2000 kcmil has 665 A.
    expect(branch(nec, { ...duty, amps: 4801 })).toBeNull();
    expect(branch(nec, { ...duty, amps: 1000 })).toBeNull();
    expect(branch(nec, { ...duty, amps: 32 })).not.toBeNull();
  });
});
