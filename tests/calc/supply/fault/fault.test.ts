import { describe, expect, test } from 'vitest';
import { whyEquipment } from '../../../../calc/why/why-supply.ts';
import type { Equipment } from '../../../../routing/site/site.ts';
import { feeder, type Parts, panel, siteOf, source, supplied, transformer } from '../small-site.ts';
import { AS_PRINTED, of, utility } from './fault-parts.ts';

const findings = (parts: Parts, rule: string) =>
  supplied(siteOf(parts)).findings.filter((finding) => finding.rule === rule);
const chain = (rest: Partial<Equipment>, at: Partial<Equipment> = {}): Parts => ({
  rules: AS_PRINTED,
  equipment: [utility(rest), transformer('T'), panel('P', at)],
  feeders: [feeder('SVC', 'T'), feeder('T', 'P', { length: 50 })],
});

describe('fault current from the figure of the source', () => {
  test('through a feeder, a transformer and a feeder, by hand', () => {
    // 30 kA at 480 V, X/R 6: Z 0.0092376, R 0.0015186, X 0.0091118. 100 ft of 3/0 in PVC: 0.0077 + j0.0042.
    // To 208 V by (208/480)²: 0.0017312 + j0.0024997. 150 kVA, 4.5%, X/R 2: 0.012979: 0.0058045 + j0.011609.
    // At T 0.0075357 + j0.0141087, 0.0159950: 120.089 / 0.0159950 = 7,508 A. 50 ft more: 0.00385 + j0.0021.
    const parts = chain({ faultAmps: 30_000, faultXr: 6 });
    expect(of(parts, 'SVC')).toBeCloseTo(30_000, 6);
    expect(of(parts, 'T')!).toBeGreaterThan(7500);
    expect(of(parts, 'T')!).toBeLessThan(7516);
    expect(of(parts, 'P')!).toBeCloseTo(120.089 / Math.hypot(0.0113857, 0.0162087), -1);
  });

  test('reaches a board straight from the source, which had none', () => {
    const parts: Parts = {
      rules: AS_PRINTED,
      equipment: [{ ...source(208), faultAmps: 22_000 }, panel('P')],
      feeders: [feeder('SVC', 'P')],
    };
    // 120.089 / 22,000 = 0.0054586, all reactance; 0.0077 + j0.0042 more: 120.089 / 0.0123592.
    expect(of(parts, 'P')!).toBeCloseTo(120.089 / Math.hypot(0.0077, 0.0096586), -1);
  });

  test('without a figure the supply is unlimited, and it is said', () => {
    // 150 kVA, 4.5% at 208 V: 416.4 x 100 / 4.5 = 9,252 A, behind 100 ft of feeder: 0.0058045 + j0.011609 and by the
    // square of 208 / 480 0.0014459 + j0.0007887: 120.089 / 0.0143649.
    expect(of(chain({}), 'T')!).toBeCloseTo(120.089 / Math.hypot(0.0072504, 0.0123977), -1);
    const alone = { ...chain({}), feeders: [feeder('T', 'P')] };
    expect(of(alone, 'T')!).toBeCloseTo(9252, -1);
    expect(of(chain({}), 'SVC')).toBeUndefined();
    const notes = findings(chain({}), 'fault-current').map(({ says }) => says);
    expect(notes.some((says) => says.includes('No figure is given') && says.includes('(SVC)'))).toBe(true);
    expect(notes.some((says) => says.includes('unlimited'))).toBe(true);
  });

  test('without a figure or a transformer a board has what its feeder lets through, and it is said', () => {
    const parts: Parts = { rules: AS_PRINTED, equipment: [source(208), panel('P')], feeders: [feeder('SVC', 'P')] };
    // 0.0077 + j0.0042: 120.089 / 0.0087710.
    expect(of(parts, 'P')!).toBeCloseTo(120.089 / Math.hypot(0.0077, 0.0042), -1);
    expect(findings(parts, 'fault-current')).toMatchObject([
      { severity: 'note', about: ['P'], says: expect.stringContaining('unlimited supply') },
      { severity: 'note', about: ['SVC'], says: expect.stringContaining('more than there is') },
    ]);
    const rated = { ...parts, equipment: [source(208), panel('P', { interruptingAmps: 10_000 })] };
    expect(findings(rated, 'interrupting-rating')).toMatchObject([{ severity: 'warn', limit: 10_000 }]);
  });

  test('of a feeder of which nothing is known it says for which boards there is none', () => {
    const parts: Parts = {
      equipment: [source(208), panel('P')],
      feeders: [feeder('SVC', 'P', { conductor: { size: '3-0', metal: 'copper', sets: 1, insulation: 'XHHW-2' } })],
    };
    expect(of(parts, 'P')).toBeUndefined();
    expect(findings(parts, 'fault-current')).toMatchObject([{ severity: 'note', about: ['SVC', 'P'] }]);
  });

  test('the most is with cold conductors and 90% of the nameplate, the least with hot ones and 110%', () => {
    const parts = { ...chain({ faultAmps: 30_000, faultXr: 6 }), rules: {} };
    const row = supplied(siteOf(parts)).supply.equipment.find(({ id }) => id === 'P')!;
    // By hand. Copper at 25 °C has 1 - 50 x 0.00323 = 0.8385 of its resistance at 75 °C; (208/480)² = 0.187778.
    // Source 0.0015186 + j0.0091118 and 0.0077 x 0.8385 + j0.0042, by the ratio: 0.0014976 + j0.0024997.
    // 0.9 of 0.0058045 + j0.011609; 0.00385 x 0.8385 + j0.0021.
    const [r, x] = [0.0014976 + 0.005224 + 0.0032282, 0.0024997 + 0.0104481 + 0.0021];
    expect(row.faultAmps!).toBeCloseTo(120.089 / Math.hypot(r, x), -1);
    expect(row.fault!.xr!).toBeCloseTo(x / r, 2);
    // To neutral two thirds of what is ahead, the winding once, the feeder's line and its neutral.
    const neutral = Math.hypot(
      (2 / 3) * 0.0014976 + 0.005224 + 2 * 0.0032282,
      (2 / 3) * 0.0024997 + 0.0104481 + 0.0042,
    );
    expect(row.fault!.lineToNeutral!).toBeCloseTo(120.089 / neutral, -1);
    // Least: 0.0015186 + 0.0077 and j0.0091118 + j0.0042 by the ratio; 1.1 of the winding; 0.00385 + j0.0021.
    const least = Math.hypot(0.001731 + 0.006385 + 0.00385, 0.0024997 + 0.0127699 + 0.0021);
    expect(row.fault!.least.lineToLine).toBeCloseTo(208 / (2 * least), -1);
    expect(row.fault!.least.lineToGround!).toBeLessThan(row.fault!.least.lineToLine);
  });

  test('a delta without a neutral has no fault to ground', () => {
    const parts: Parts = {
      equipment: [{ ...source(240), faultAmps: 9000 }, panel('P', { volts: 240 })],
      feeders: [feeder('SVC', 'P')],
    };
    const { fault } = supplied(siteOf(parts)).supply.equipment[1]!;
    expect(Object.keys(fault!)).not.toContain('lineToNeutral');
    expect(Object.keys(fault!.least)).toEqual(['lineToLine']);
  });

  test('a rating below it fails, one above does not, and boards without one are named', () => {
    const at = (interruptingAmps: number): Parts => chain({ faultAmps: 30_000 }, { interruptingAmps });
    const amps = of(at(5000), 'P')!;
    expect(findings(at(5000), 'interrupting-rating')).toMatchObject([
      { severity: 'fail', about: ['P'], value: amps, limit: 5000, unit: 'A' },
    ]);
    expect(findings(at(10_000), 'interrupting-rating')).toEqual([]);
    expect(findings(at(Math.ceil(amps)), 'interrupting-rating')).toEqual([]);
    expect(findings(at(Math.floor(amps)), 'interrupting-rating')).toHaveLength(1);
    expect(findings(chain({ faultAmps: 30_000 }), 'fault-current')[0]!.says).toContain('none is entered for P');
    expect(findings(at(10_000), 'fault-current')).toEqual([]);
  });

  test('a figure on what something feeds does nothing, and is told', () => {
    const parts = chain({ faultAmps: 30_000 }, { faultAmps: 1000 });
    expect(of(parts, 'P')).toBe(of(chain({ faultAmps: 30_000 }), 'P'));
    expect(findings(parts, 'supply-data').some(({ about }) => about.includes('P'))).toBe(true);
  });

  test('steps tell the source, every part on the way and the sum', () => {
    const step = whyEquipment(siteOf(chain({ faultAmps: 30_000, faultXr: 6 })), 'P').find(
      ({ find }) => find === 'available fault current',
    )!;
    expect(Object.keys(step.values)).toEqual(
      expect.arrayContaining(['SVC', 'feeder F-T', 'T', 'feeder F-P', 'in all']),
    );
    expect(step.values.SVC).toContain('X/R 6');
    expect(step.result).toBe(of(chain({ faultAmps: 30_000, faultXr: 6 }), 'P'));
  });
});
