import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CALC_KINDS } from '../../../calc/cli/kinds/index.ts';
import type { FaultPlace } from '../../../calc/supply/fault/fault-chain.ts';
import { resistance } from '../../../calc/tables/conductor-of.ts';
import { FAULT_CONSTANTS } from '../../../calc/tables/fault-constants.ts';
import { NEC_2023 } from '../../../calc/tables/nec-2023/nec-2023.ts';
import { explained, SILENT } from '../../../calc/words/explain.ts';

const run = (input: unknown): readonly FaultPlace[] => {
  const result = CALC_KINDS.get('fault')!(input, SILENT);
  if (!result.ok) throw new Error(JSON.stringify(result.errors));
  return (result.value as { readonly places: readonly FaultPlace[] }).places;
};

const unlimited = (volts: number) => ({ kind: 'source', volts }) as const;
const conductor = (size: string, sets: number, length: number, volts: number, raceway: string, phases = 3) => ({
  kind: 'conductor',
  length,
  volts,
  phases,
  conductor: { size, metal: 'copper', sets },
  raceway,
});
const transformer = (kva: number, secondaryVolts: number, impedancePercent: number, phases = 3) => ({
  kind: 'transformer',
  kva,
  secondaryVolts,
  phases,
  impedancePercent,
});

/** Within what the page printed, and by how much it may be off for its own rounding. */
const near = (got: number | null | undefined, printed: number, by: number): void =>
  expect(Math.abs((got ?? Number.NaN) - printed)).toBeLessThanOrEqual(by);

describe('point to point, as printed', () => {
  test.each([
    // Public pages: a plan review's worked example (300 kVA), a filled sheet (3000), a forum (1000), an examination page
    // (2500), a study set (112.5), a technical note for permits (300).
    [300, 208, 2, 0.9, 46_273, 20],
    [3000, 600, 7.5, 1, 38_491.15, 2],
    [1000, 480, 5.75, 1, 20_924, 8],
    [2500, 600, 5, 1, 48_170, 60],
    [112.5, 208, 2.4, 1, 13_000, 30],
    [1500, 480, 5.75, 1, 31_374, 8],
    [300, 208, 4.8, 1, 17_348, 8],
    [300, 208, 4.5, 1, 18_505, 8],
  ])('%d kVA at %d V, %d%% x %d: %d A', (kva, volts, percent, impedanceTolerance, printed, by) => {
    const steps = [unlimited(12_470), transformer(kva, volts, percent)];
    for (const method of ['point-to-point', 'impedance'])
      near(run({ steps, method, impedanceTolerance })[1]!.amps, printed, by);
  });

  test('the plan review: 2 x 500 kcmil in steel, 20 ft: f 0.174, M 0.852', () => {
    const steps = [{ kind: 'source', faultAmps: 46_273, volts: 208 }, conductor('500', 2, 20, 208, 'steel')];
    const [, end] = run({ steps, method: 'point-to-point' });
    near(end!.factor, 0.174, 0.0005);
    near(end!.multiplier, 0.852, 0.0005);
  });

  test('the filled worksheet: 300 kVA of one phase, then 150 ft of 3/0: 46,296 and 8,978 A', () => {
    const steps = [unlimited(12_470), transformer(300, 240, 3, 1), conductor('3/0', 1, 150, 240, 'nonmagnetic', 1)];
    const [, at, end] = run({ steps, method: 'point-to-point', impedanceTolerance: 0.9 });
    near(at!.amps, 46_296, 1);
    near(end!.factor, 4.156, 0.001);
    near(end!.amps, 8978, 3);
  });

  test('the same worksheet, line to neutral: 7,457 A, which leaves its 1.5 out of f; with it 5,156 A', () => {
    // What the sheet reckons: the current across the winding through f on 120 V, and 1.5 at the end.
    const printed = [
      { kind: 'source', faultAmps: 46_296, volts: 120 },
      conductor('3/0', 1, 150, 120, 'nonmagnetic', 1),
    ];
    const [, end] = run({ steps: printed, method: 'point-to-point' });
    near(end!.factor, 8.313, 0.001);
    near(end!.multiplier, 0.107, 0.0005);
    near(1.5 * end!.amps!, 7457, 3);
    // What is told here: 1.5 x 46,296 A at the transformer, and that through f.
    const steps = [unlimited(12_470), transformer(300, 240, 3, 1), conductor('3/0', 1, 150, 240, 'nonmagnetic', 1)];
    const [, at, whole] = run({ steps, method: 'point-to-point', impedanceTolerance: 0.9 });
    near(at!.lineToNeutral, 69_444, 1);
    near(whole!.lineToNeutral, 5156, 3);
  });

  test('the handbook, system A and B (from memory): to the end of each feeder and through a second transformer', () => {
    const first = run({
      steps: [
        unlimited(12_470),
        transformer(1500, 480, 3.5),
        conductor('500', 6, 25, 480, 'steel'),
        conductor('500', 1, 50, 480, 'steel'),
      ],
      method: 'point-to-point',
    });
    near(first[1]!.amps, 51_540, 15);
    near(first[2]!.amps, 49_803, 15);
    near(first[3]!.amps, 35_445, 15);
    const second = run({
      steps: [
        unlimited(12_470),
        transformer(1000, 480, 3.5),
        conductor('500', 4, 30, 480, 'nonmagnetic'),
        conductor('2/0', 2, 20, 480, 'nonmagnetic'),
        transformer(225, 208, 1.2),
      ],
      method: 'point-to-point',
    });
    near(second[2]!.amps, 33_215, 10);
    near(second[3]!.amps, 30_059, 12);
    near(second[4]!.factor, 1.333, 0.001);
    near(second[4]!.amps, 29_731, 12);
  });
});

describe('by impedance, as printed', () => {
  // A calculation sheet of a 22 kV supply, metric cables, milliohm. 1 mohm/m is 0.3048 ohm per 1,000 ft.
  const cable = (meters: number, sets: number, r: number, x: number) => ({
    ...conductor('500', sets, meters / 0.3048, 380, 'nonmagnetic'),
    ohms: { r: r * 0.3048, x: x * 0.3048 },
  });
  const upstream = [{ kind: 'source', mva: 500, volts: 22_000 }, transformer(2000, 380, 5.75)];
  const sub = cable(60, 2, 0.0812, 0.09);
  test.each([
    ['low-voltage terminals', [], 49.41, 0.02],
    ['main switchboard', [cable(5, 4, 0.0812, 0.09)], 48.18, 0.01],
    ['sub-main board', [cable(5, 4, 0.0812, 0.09), sub], 28.55, 0.01],
    ['distribution board', [cable(5, 4, 0.0812, 0.09), sub, cable(12, 1, 0.0812, 0.09)], 24.26, 0.01],
    ['a branch of 10 mm2', [cable(5, 4, 0.0812, 0.09), cable(20, 1, 2.333, 0.109)], 4.64, 0.01],
  ] as const)('%s', (_, cables, kiloamps, by) => {
    near(run({ steps: [...upstream, ...cables], method: 'impedance' }).at(-1)!.amps! / 1000, kiloamps, by);
  });

  test('a building in per unit: 86 MVA at X/R 4, 225 kVA at 5% and 2.5, a feeder: 10.33 kA', () => {
    // The feeder of 0.4793 + j0.79333 per unit of 100 MVA at 230 V: 0.000529 ohm a unit.
    const base = 230 ** 2 / 100e6;
    const steps = [
      { kind: 'source', mva: 86, volts: 13_800, xr: 4 },
      { ...transformer(225, 230, 5), xr: 2.5 },
      { ...conductor('500', 1, 1000, 230, 'steel'), ohms: { r: 0.4793 * base, x: 0.79333 * base } },
    ];
    near(run({ steps, method: 'impedance' }).at(-1)!.amps! / 1000, 10.33, 0.01);
  });

  test('of one phase, as by hand: 50 kVA, 2%, 240 V, X/R 1, then 100 ft of 1/0 there and back', () => {
    // Z 0.02 x 240² / 50,000 = 0.02304, R = X = 0.016292; 2 x 0.012 and 2 x 0.0044 ohm: 0.040292 and 0.025092.
    const steps = [
      unlimited(7200),
      { ...transformer(50, 240, 2, 1), xr: 1 },
      conductor('1/0', 1, 100, 240, 'nonmagnetic', 1),
    ];
    const [, at, end] = run({ steps, method: 'impedance' });
    near(at!.amps, 240 / 0.02304, 0.1);
    near(end!.amps, 240 / Math.hypot(0.040292, 0.025092), 0.5);
    // To the middle: 1.5 R and 1.2 X of a quarter of the winding, 0.0061095 and 0.0048876; the same conductors.
    near(at!.lineToNeutral, 120 / Math.hypot(0.0061095, 0.0048876), 1);
    near(end!.lineToNeutral, 120 / Math.hypot(0.0301095, 0.0136876), 0.5);
  });

  test('colder conductors have less resistance: 500 kcmil copper at 25 °C 0.8385 of Table 9', () => {
    const steps = [unlimited(480), conductor('500', 1, 100, 480, 'steel')];
    const at = (conductorC?: number) => run({ steps, method: 'impedance', conductorC })[1]!;
    near(at(25).r, 0.0029 * 0.8385, 1e-9);
    expect(at(75)).toEqual(at());
    expect(at(25).amps!).toBeGreaterThan(at().amps!);
    const refused = CALC_KINDS.get('fault')!({ steps, method: 'point-to-point', conductorC: 25 }, SILENT);
    expect(refused).toMatchObject({ ok: false, errors: [{ place: 'conductorC' }] });
  });
});

describe('the chain', () => {
  test('tells a step for each, and refuses what it cannot work', () => {
    const { steps } = explained((tell) =>
      CALC_KINDS.get('fault')!({ steps: [unlimited(480), transformer(150, 208, 4)], method: 'impedance' }, tell),
    );
    // Behind the transformer a second one, to neutral.
    expect(steps.length).toBe(3);
    const refused = (input: unknown): string => {
      const result = CALC_KINDS.get('fault')!(input, SILENT);
      return result.ok ? '' : result.errors.map(({ place, says }) => `${place}: ${says}`).join('; ');
    };
    const method = 'point-to-point';
    expect(refused({ steps: [transformer(150, 208, 4)], method })).toContain('steps[0]');
    expect(refused({ steps: [unlimited(480), conductor('500', 1, 10, 208, 'steel')], method })).toContain('480 V');
    expect(refused({ steps: [unlimited(480), conductor('700', 1, 10, 480, 'steel')], method })).toContain('700');
    expect(refused({ steps: [{ ...unlimited(480), faultAmps: 1, mva: 1 }], method })).toContain('not both');
  });

  test('an unlimited supply has no figure until something is in its way', () => {
    expect(run({ steps: [unlimited(480)], method: 'impedance' })).toEqual([{ amps: null, r: 0, x: 0 }]);
    const [, end] = run({ steps: [unlimited(480), conductor('500', 1, 100, 480, 'steel')], method: 'point-to-point' });
    near(end!.amps, (22_185 * 480) / (Math.sqrt(3) * 100), 0.1);
  });

  test('more in the way is never more current, by either method', () => {
    const step = fc.oneof(
      fc.record({ size: fc.constantFrom('1/0', '3/0', '500'), length: fc.integer({ min: 1, max: 400 }) }),
    );
    fc.assert(
      fc.property(fc.array(step, { maxLength: 4 }), fc.constantFrom('point-to-point', 'impedance'), (runs, method) => {
        const steps = [
          { kind: 'source', faultAmps: 40_000, volts: 480, xr: 6 },
          ...runs.map(({ size, length }) => conductor(size, 1, length, 480, 'steel')),
        ];
        const amps = run({ steps, method }).map((place) => place.amps!);
        amps.slice(1).forEach((one, i) => {
          expect(one).toBeLessThan(amps[i]!);
        });
      }),
    );
  });

  test('the constants imply the resistance of Table 8 at 25 °C and a small reactance', () => {
    // 14 to 8 AWG are those of solid conductors.
    for (const { size, copper, aluminum } of FAULT_CONSTANTS.rows.slice(4))
      for (const [metal, c] of [
        ['copper', copper],
        ['aluminum', aluminum],
      ] as const) {
        // Table 8 is at 75 °C: 0.00323 and 0.00330 a degree.
        const cold = resistance(NEC_2023, size, metal) * (1 - (metal === 'copper' ? 0.00323 : 0.0033) * 50);
        for (const [kind, one] of Object.entries(c)) {
          const z = 1000 / one;
          expect(z, `${size} ${metal} ${kind}`).toBeGreaterThan(cold * 0.995);
          expect(Math.sqrt(Math.max(0, z * z - cold * cold)), `${size} ${metal} ${kind}`).toBeLessThan(0.2);
        }
        expect(c.nonmagnetic).toBeGreaterThanOrEqual(c.steel);
      }
  });
});
