import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { estimatedDrop, phasorDrop } from '../../../calc/circuits/line-drop.ts';
import { longestRun } from '../../../calc/circuits/longest-run.ts';
import { type DropCircuit, voltageDrop } from '../../../calc/circuits/voltage-drop.ts';
import { CALC_KINDS } from '../../../calc/cli/kinds/index.ts';
import { NEC_2023 as nec } from '../../../calc/tables/nec-2023/nec-2023.ts';
import { explained, SILENT } from '../../../calc/words/explain.ts';
import { circuits, fraction } from './any-circuit.ts';

/** Length at which 5% drops: so far the volts at the load still fall with every foot, whatever the line's X/R. */
const at5Percent = (circuit: DropCircuit) => longestRun(nec, { ...circuit, limitPercent: 5 }) ?? Number.NaN;
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
    const result = CALC_KINDS.get('voltage-drop')!({ ...circuit, method: 'exact', conductor, length: 20_000 }, SILENT);
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
