import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { phasorDrop } from '../../../../calc/circuits/line-drop.ts';
import { supplyOf } from '../../../../calc/supply/supply.ts';
import { NEC_2023 } from '../../../../calc/tables/nec-2023/nec-2023.ts';
import type { Run } from '../../../../routing/network/run.ts';
import { BRANCH, chargers, feeder, load, panel, siteOf, source, supplied } from '../small-site.ts';
import { behind480, rowOf } from '../supply-parts.ts';

describe('the supply of a site', () => {
  test('one charger beside its source drops what a single circuit does, in phasors', () => {
    const { boxes, supply } = supplied(siteOf({ equipment: [source(208)], chargers: chargers('SVC', 1) }));
    const single = phasorDrop({ phases: 1, volts: 208, amps: 32, ...BRANCH, powerFactor: 0.99 });
    expect(boxes[0]!.volts).toBeCloseTo(single.voltsAtLoad, 9);
    expect(boxes[0]!.totalDropPercent).toBeCloseTo(single.dropPercent, 9);
    expect(boxes[0]!.branchDropPercent).toBeCloseTo(single.dropPercent, 9);
    expect(supply.equipment[0]!.amps).toMatchObject({ A: expect.closeTo(32, 9), B: expect.closeTo(32, 9), C: 0 });
  });

  test('a three-phase charger beside its source drops what a balanced circuit does', () => {
    const three = chargers('SVC', 1, { phases: 3, volts: 480 });
    const { boxes } = supplied(siteOf({ equipment: [source(480)], chargers: three }));
    const balanced = phasorDrop({ phases: 3, volts: 480, amps: 32, ...BRANCH, powerFactor: 0.99 });
    expect(boxes[0]!.volts).toBeCloseTo(balanced.voltsAtLoad, 9);
  });

  test('the total drop is that of the feeders and that of the branch', () => {
    const site = siteOf(behind480(6));
    const { boxes, supply } = supplied(site);
    const at = supply.equipment.find(({ id }) => id === 'P')!;
    const ahead = (100 * (208 - at.volts.AB)) / 208;
    expect(boxes[0]!.totalDropPercent).toBeCloseTo(ahead + boxes[0]!.branchDropPercent, 9);
  });

  test('a charger without a run draws nothing and has no box', () => {
    const site = siteOf(behind480(3));
    const { boxes, supply } = supplied(site, ['EV-P-2']);
    expect(boxes[1]).toBeNull();
    const fewer = siteOf({ ...behind480(3), chargers: [site.chargers[0]!, { ...site.chargers[2]!, id: 'other' }] });
    expect(supply.equipment[2]!.connectedVa).toBeCloseTo(2 * 32 * 208, 6);
    expect(rowOf(fewer, 'P').connectedVa).toBeCloseTo(2 * 32 * 208, 6);
  });

  test('the drop grows with the length of the feeder, with the chargers on it and with their branch', () => {
    const worst = (length: number, count: number, r: number): number => {
      const feeders = [feeder('SVC', 'P', { length })];
      const site = siteOf({ equipment: [source(208), panel('P')], feeders, chargers: chargers('P', count) });
      const { boxes } = supplied(site, [], { r, x: 0.005 });
      return Math.max(...boxes.map((box) => box!.totalDropPercent));
    };
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 400 }),
        fc.integer({ min: 1, max: 8 }),
        fc.double({ min: 0.01, max: 0.3, noNaN: true }),
        (length, count, r) => {
          const here = worst(length, 3 * count, r);
          expect(worst(length + 10, 3 * count, r)).toBeGreaterThan(here);
          expect(worst(length, 3 * count, r * 1.1)).toBeGreaterThan(here);
          if (length > 0) expect(worst(length, 3 * count + 3, r)).toBeGreaterThan(here);
        },
      ),
      { numRuns: 60 },
    );
  });

  test('a feeder without a length follows the raceways, in what they are made of', () => {
    const { length: _l, raceway: _r, ...bare } = feeder('SVC', 'P');
    const along = (method: 'EMT' | 'PVC40'): ReturnType<typeof supplied> =>
      supplied(
        siteOf({
          equipment: [source(208), { ...panel('P'), entry: [100, 0, 0] }],
          feeders: [bare],
          chargers: chargers('P', 6),
          raceways: [
            {
              id: 'R',
              path: [
                [0, 0, 3],
                [100, 0, 3],
              ],
              method,
              place: 'surface',
            },
          ],
        }),
      );
    const given = (raceway: 'EMT' | 'PVC40'): ReturnType<typeof supplied> =>
      supplied(
        siteOf({
          equipment: [source(208), panel('P')],
          feeders: [{ ...bare, length: 106, raceway }],
          chargers: chargers('P', 6),
        }),
      );
    expect(along('EMT').supply.feeders[0]!.length).toBeCloseTo(106, 9);
    for (const method of ['EMT', 'PVC40'] as const)
      expect(along(method).supply.feeders[0]!.dropPercent).toBeCloseTo(given(method).supply.feeders[0]!.dropPercent, 9);
    expect(along('EMT').supply.feeders[0]!.dropPercent).not.toBeCloseTo(
      along('PVC40').supply.feeders[0]!.dropPercent,
      3,
    );
  });

  test('sets in parallel share the impedance of a feeder', () => {
    const drop = (sets: number, length: number): number => {
      const conductor = { size: '3/0', metal: 'copper', sets, insulation: 'XHHW-2' } as const;
      const feeders = [feeder('SVC', 'P', { length, conductor })];
      return supplied(siteOf({ equipment: [source(208), panel('P')], feeders, chargers: chargers('P', 6) })).supply
        .feeders[0]!.dropPercent;
    };
    expect(drop(2, 200)).toBeCloseTo(drop(1, 100), 9);
  });

  test('a longer branch changes the volts at its own box only; all else is the same object', () => {
    const site = siteOf(behind480(6));
    const runs = site.chargers.map(({ id }) => ({ charger: id, length: 90 }) as Run);
    const ohms = site.chargers.map(() => BRANCH);
    const first = supplyOf(site, runs, ohms, NEC_2023);
    const longer = supplyOf(
      { ...site, drops: [...site.drops] },
      runs.with(2, { ...runs[2]!, length: 120 }),
      ohms.with(2, { r: 0.1, x: 0.007 }),
      NEC_2023,
    );
    expect(longer.supply).toBe(first.supply);
    longer.boxes.forEach((box, i) => {
      if (i === 2) expect(box!.volts).toBeLessThan(first.boxes[2]!.volts);
      else expect(box).toBe(first.boxes[i]);
    });
    const lost = supplyOf(site, runs.with(2, { ...runs[2]!, length: null }), ohms, NEC_2023);
    expect(lost.supply.equipment[2]!.connectedVa).toBeCloseTo(5 * 32 * 208, 6);
  });

  test('a feeder past its greatest power has figures at nominal voltage and a finding that says so', () => {
    const loads = [load('P', 'L', { phases: 3, volts: 208, va: 5e6 })];
    const result = supplied(
      siteOf({ equipment: [source(208), panel('P')], feeders: [feeder('SVC', 'P', { length: 500 })], loads }),
    );
    expect(result.findings.find(({ rule }) => rule === 'supply-unsettled')).toMatchObject({
      severity: 'fail',
      about: ['SVC'],
    });
    expect(JSON.stringify(result.supply)).not.toContain('null');
  });
});
