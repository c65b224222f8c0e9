import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ampacity } from '../../../calc/circuits/ampacity.ts';
import { branch, branchBreaker, branchConductor } from '../../../calc/circuits/branch.ts';
import { BY_A_HAIR, grounding } from '../../../calc/circuits/grounding.ts';
import { estimatedDrop, phasorDrop } from '../../../calc/circuits/line-drop.ts';
import { longestRun } from '../../../calc/circuits/longest-run.ts';
import { type DropCircuit, voltageDrop } from '../../../calc/circuits/voltage-drop.ts';
import { KINDS } from '../../../calc/cli/kinds/index.ts';
import {
  ampacityAt,
  CONDUCTOR_SIZES,
  circularMils,
  compareSizes,
  insulationColumn,
} from '../../../calc/tables/lookup.ts';
import { NEC_2023 as nec } from '../../../calc/tables/nec-2023/nec-2023.ts';
import { explained, SILENT } from '../../../calc/words/explain.ts';

const metals = fc.constantFrom('copper' as const, 'aluminum' as const);
const conductors = fc.record({
  size: fc.constantFrom('12', '10', '8', '6', '4', '2', '1/0', '4/0', '350', '600', '1000'),
  metal: metals,
  sets: fc.integer({ min: 1, max: 4 }),
});
const ways = fc.oneof(
  fc.constant({ method: 'resistance' as const }),
  fc.record({
    method: fc.constantFrom('impedance' as const, 'exact' as const),
    raceway: fc.constantFrom('PVC' as const, 'aluminum' as const, 'steel' as const),
    powerFactor: fc.double({ min: 0.8, max: 1, noNaN: true }),
  }),
);
const circuits: fc.Arbitrary<DropCircuit> = fc
  .tuple(
    ways,
    fc.record({
      phases: fc.constantFrom(1 as const, 3 as const),
      volts: fc.constantFrom(120, 208, 240, 277, 480),
      amps: fc.double({ min: 1, max: 80, noNaN: true }),
      conductor: conductors,
    }),
  )
  .map(([way, rest]) => ({ ...way, ...rest }));

/** Length at which 5% drops: so far the volts at the load still fall with every foot, whatever the line's X/R. */
const at5Percent = (circuit: DropCircuit) => longestRun(nec, { ...circuit, limitPercent: 5 }) ?? Number.NaN;
const fraction = fc.double({ min: 0.01, max: 1, noNaN: true });

describe('voltage drop', () => {
  test('grows with length', () => {
    fc.assert(
      fc.property(circuits, fraction, fraction, (circuit, a, b) => {
        const [short, long] = [Math.min(a, b), Math.max(a, b)].map((share) => share * at5Percent(circuit));
        const at = (length = 0) => voltageDrop(nec, { ...circuit, length }).dropVolts;
        expect(at(long)).toBeGreaterThanOrEqual(at(short) - 1e-9);
      }),
    );
  });
  test('grows with load', () => {
    fc.assert(
      fc.property(circuits, fraction, (circuit, share) => {
        const length = at5Percent(circuit);
        const full = voltageDrop(nec, { ...circuit, length }).dropVolts;
        expect(voltageDrop(nec, { ...circuit, amps: share * circuit.amps, length }).dropVolts).toBeLessThanOrEqual(
          full + 1e-9,
        );
      }),
    );
  });
  test('grows with resistance, by estimate and by phasor', () => {
    const lines = fc.record({
      phases: fc.constantFrom(1 as const, 3 as const),
      volts: fc.constant(240),
      amps: fc.double({ min: 0, max: 100, noNaN: true }),
      r: fc.double({ min: 0, max: 0.3, noNaN: true }),
      x: fc.double({ min: 0, max: 0.1, noNaN: true }),
      powerFactor: fc.double({ min: 0.8, max: 1, noNaN: true }),
    });
    fc.assert(
      fc.property(lines, fraction, (line, share) => {
        for (const drop of [estimatedDrop, phasorDrop])
          expect(drop({ ...line, r: share * line.r }).dropVolts).toBeLessThanOrEqual(drop(line).dropVolts + 1e-9);
      }),
    );
  });
  test('halves with two sets in parallel', () => {
    const line = { phases: 1, volts: 240, amps: 40, length: 200, method: 'resistance' } as const;
    const one = voltageDrop(nec, { ...line, conductor: { size: '8', metal: 'copper' } });
    const two = voltageDrop(nec, { ...line, conductor: { size: '8', metal: 'copper', sets: 2 } });
    expect(two.dropVolts).toBeCloseTo(one.dropVolts / 2, 12);
  });
  test('by phasor is at most the estimate where the current lags the fed end', () => {
    // |V - d| >= V - Re d, so the magnitude drops no more than the part in phase.
    fc.assert(
      fc.property(circuits, fraction, (circuit, share) => {
        if (circuit.method === 'resistance') return;
        const length = share * at5Percent(circuit);
        const exact = voltageDrop(nec, { ...circuit, method: 'exact', length });
        const estimate = voltageDrop(nec, { ...circuit, method: 'impedance', length });
        expect(exact.dropVolts).toBeLessThanOrEqual(estimate.dropVolts + 1e-9);
      }),
    );
  });
  test('hand-worked: 32 A at 240 V over 150 ft of 8 AWG copper by Table 8 is 2 x 32 x 0.778 x 0.15 = 7.4688 V', () => {
    const drop = voltageDrop(nec, {
      phases: 1,
      volts: 240,
      amps: 32,
      length: 150,
      conductor: { size: '8', metal: 'copper' },
      method: 'resistance',
    });
    expect(drop.dropVolts).toBeCloseTo(7.4688, 10);
    expect(drop.dropPercent).toBeCloseTo(3.112, 10);
    expect(drop.voltsAtLoad).toBeCloseTo(232.5312, 10);
  });
  test('refuses volts that are not and conductors that the tables lack', () => {
    const line = { phases: 1, amps: 1, length: 1, method: 'resistance' } as const;
    const conductor = { size: '8', metal: 'copper' } as const;
    expect(() => voltageDrop(nec, { ...line, volts: 0, conductor })).toThrow(RangeError);
    expect(() => voltageDrop(nec, { ...line, volts: 240, conductor: { ...conductor, size: '2000' } })).toThrow(
      RangeError,
    );
    expect(() => voltageDrop(nec, { ...line, volts: 240, conductor: { ...conductor, sets: 0 } })).toThrow(RangeError);
  });
});

describe('longest run', () => {
  test('is where the drop is the limit: the inverse of the drop by every method', () => {
    const limits = fc.double({ min: 0.1, max: 6, noNaN: true });
    fc.assert(
      fc.property(circuits, limits, (circuit, limitPercent) => {
        const length = longestRun(nec, { ...circuit, limitPercent });
        expect(length).toBeGreaterThan(0);
        expect(voltageDrop(nec, { ...circuit, length: length ?? Number.NaN }).dropPercent).toBeCloseTo(limitPercent, 9);
      }),
    );
  });
  const line = { phases: 1, volts: 240, conductor: { size: '750', metal: 'copper' } } as const;
  test('is none where no current flows', () => {
    expect(longestRun(nec, { ...line, amps: 0, method: 'resistance', limitPercent: 3 })).toBeNull();
    expect(
      longestRun(nec, { ...line, amps: 0, method: 'exact', raceway: 'PVC', powerFactor: 1, limitPercent: 3 }),
    ).toBeNull();
  });
  test('is none where the volts turn up again before they have fallen so far', () => {
    // At unity power factor in steel, X/R = 0.048/0.021: the volts never fall below V x X/Z = 0.916 V.
    const circuit = { ...line, amps: 400, method: 'exact', raceway: 'steel', powerFactor: 1 } as const;
    expect(longestRun(nec, { ...circuit, limitPercent: 8 })).toBeGreaterThan(0);
    expect(longestRun(nec, { ...circuit, limitPercent: 9 })).toBeNull();
  });
});

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

describe('the exact drop past the collapse', () => {
  const circuit = { phases: 1, volts: 208, amps: 32, raceway: 'PVC', powerFactor: 0.99 } as const;
  const conductor = { size: '8', metal: 'copper' } as const;
  const exact = (length: number) => voltageDrop(nec, { ...circuit, method: 'exact', conductor, length });
  // V (R cos + X sin) / (k I |Z|²): 208 x (0.78 x 0.99 + 0.052 x 0.141) / (64 x (0.78² + 0.052²)) x 1,000 = 4,145 ft.
  const end = (208 * (0.78 * 0.99 + 0.052 * Math.sqrt(1 - 0.99 ** 2))) / (64 * (0.78 ** 2 + 0.052 ** 2));

  test('20,000 ft is refused with the reason, not answered with more volts than there are', () => {
    expect(() => exact(20_000)).toThrow('collapse');
    expect(exact(1000 * end * 0.999).voltsAtLoad).toBeGreaterThan(0);
    expect(() => exact(1000 * end * 1.001)).toThrow(RangeError);
    const result = KINDS.get('voltage-drop')!({ ...circuit, method: 'exact', conductor, length: 20_000 }, SILENT);
    expect(result).toMatchObject({ ok: false, errors: [{ place: 'length' }] });
  });

  test('up to it more length is fewer volts, and no longest run lies past it', () => {
    let last = 208;
    for (let share = 0.05; share < 1; share += 0.05) {
      const { voltsAtLoad } = exact(1000 * end * share);
      expect(voltsAtLoad).toBeLessThan(last);
      last = voltsAtLoad;
    }
    for (let limitPercent = 5; limitPercent <= 100; limitPercent += 5) {
      const length = longestRun(nec, { ...circuit, method: 'exact', conductor, limitPercent });
      if (length !== null) expect(length).toBeLessThanOrEqual(1000 * end);
    }
    expect(longestRun(nec, { ...circuit, method: 'exact', conductor, limitPercent: 99.9 })).toBeNull();
  });
});

describe('the words of the working', () => {
  const circuit = {
    volts: 208,
    amps: 32,
    raceway: 'PVC',
    powerFactor: 0.99,
    conductor: { size: '8', metal: 'copper' },
  } as const;
  test.each([
    [1, '2, there and back'],
    [3, 'sqrt 3'],
  ] as const)('a circuit of %d phase says by what its ohms count: %s', (phases, k) => {
    const drop = explained((tell) =>
      voltageDrop(nec, { ...circuit, phases, method: 'exact', length: 100 }, tell),
    ).steps;
    expect(drop.find(({ find }) => find === 'voltage drop')!.values.k).toBe(k);
    const run = explained((tell) =>
      longestRun(nec, { ...circuit, phases, method: 'exact', limitPercent: 3 }, tell),
    ).steps;
    expect(run.at(-1)!.values.k).toBe(k);
  });
  test('and where it is from', () => {
    for (const [method, source] of [
      ['impedance', 'Table 9'],
      ['exact', "Ohm's law"],
      ['resistance', "Ohm's law"],
    ] as const) {
      const run = explained((tell) => longestRun(nec, { ...circuit, phases: 1, method, limitPercent: 3 }, tell)).steps;
      expect(run.at(-1)!.source).toContain(source);
      const drop = explained((tell) => voltageDrop(nec, { ...circuit, phases: 1, method, length: 100 }, tell)).steps;
      expect(drop.find(({ find }) => find === 'voltage drop')!.source).toContain(source);
      expect(run.at(-1)!.formula).toContain(method === 'exact' ? 'quadratic' : 'allowed drop / drop per foot');
    }
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
