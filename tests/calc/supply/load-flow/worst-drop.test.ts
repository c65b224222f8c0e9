import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { voltageDrop } from '../../../../calc/circuits/voltage-drop.ts';
import { marginsOf } from '../../../../calc/plan/margins.ts';
import { plan } from '../../../../calc/plan/plan.ts';
import { NEC_2023 } from '../../../../calc/tables/nec-2023/nec-2023.ts';
import { whyMargin } from '../../../../calc/why/why-margins.ts';
import { whyBox } from '../../../../calc/why/why-supply.ts';
import { readSite } from '../../../../routing/site/file/read.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { fleetYard } from '../../../bench/samples/fleet-yard.ts';
import {
  BRANCH,
  chargers,
  feeder,
  load,
  type Parts,
  panel,
  siteOf,
  source,
  supplied,
  transformer,
} from '../small-site.ts';

function hospital() {
  const read = readSite(readFileSync('samples/hospital-lot.site.json', 'utf8'));
  if (!read.ok) throw new Error('the sample is not valid');
  const site = toSite(read.file);
  return { site, plan: plan(site) };
}

describe('a charger that load management lets run at its rating', () => {
  test('two on one pair under 40 A: the other is left 8 A, the feeder carries 40 A as before, its branch 32 A', () => {
    const site = siteOf({
      equipment: [{ ...source(240), phases: 1 }, panel('P', { volts: 240, phases: 1, managedAmps: 40 })],
      feeders: [feeder('SVC', 'P')],
      chargers: chargers('P', 2, { volts: 240 }),
    });
    const [box] = supplied(site).boxes;
    const upstream = voltageDrop(NEC_2023, {
      method: 'exact',
      phases: 1,
      volts: 240,
      amps: 40,
      length: 100,
      conductor: { size: '3/0', metal: 'copper' },
      raceway: 'PVC',
      powerFactor: 0.99,
    });
    // The branch's current lags the volts at the panel: there and back 2 x 32 x (0.078 x 0.99 + 0.005 x 0.141) = 4.99 V.
    const along = 2 * 32 * (BRANCH.r * 0.99 + BRANCH.x * Math.sqrt(1 - 0.99 ** 2));
    const across = 2 * 32 * (BRANCH.x * 0.99 - BRANCH.r * Math.sqrt(1 - 0.99 ** 2));
    const atBox = Math.hypot(upstream.voltsAtLoad - along, across);
    // To 0.0005%: the single drop lets its current lag the source, the supply the panel.
    expect(box!.worstDropPercent).toBeCloseTo((100 * (240 - atBox)) / 240, 3);
    // As managed each has 20 A, and less than its branch alone would drop at 32 A.
    expect(box!.totalDropPercent).toBeLessThan(box!.worstDropPercent - 0.5);
  });

  test('alone on its pair it takes the line to the ceiling, and the others give way', () => {
    // One on each pair, 30 A: together 17.3 A each, a balanced 30 A. One at 32 A is over the ceiling by itself: the others off.
    const site = siteOf({
      equipment: [source(208), panel('P', { managedAmps: 30 })],
      feeders: [feeder('SVC', 'P', { length: 500 })],
      chargers: chargers('P', 3),
    });
    const lone = siteOf({
      equipment: [source(208), panel('P')],
      feeders: [feeder('SVC', 'P', { length: 500 })],
      chargers: chargers('P', 1),
    });
    expect(supplied(site).boxes[0]!.worstDropPercent).toBeCloseTo(supplied(lone).boxes[0]!.totalDropPercent, 6);
  });

  test('the yard: 3.98% ahead of its panel and 2.48% of branch are 6.46%, not the 4.73% of all together', () => {
    const file = fleetYard();
    const conductor = { size: '250', metal: 'copper', sets: 1, insulation: 'XHHW-2' } as const;
    const site = toSite({
      ...file,
      equipment: file.equipment!.map((one) => (one.managedAmps === undefined ? one : { ...one, managedAmps: 150 })),
      feeders: file.feeders!.map((one) => (one.from === 'SB1' ? { ...one, conductor } : one)),
      rules: { ...file.rules, dropLimit: { branch: 2.5 } },
    });
    const planned = plan(site);
    const circuit = planned.circuits.find(({ charger }) => charger === 'EV11')!;
    expect(circuit.branchDropPercent).toBeCloseTo(2.48, 2);
    expect(circuit.totalDropPercent).toBeCloseTo(4.73, 2);
    expect(circuit.worstDropPercent).toBeCloseTo(6.46, 2);
    expect(planned.findings.find(({ rule }) => rule === 'total-drop')!.value).toBeCloseTo(6.46, 2);
    expect(marginsOf(planned, site).get('EV11')!.volts).toMatchObject({ of: 'total', limit: 5 });
    expect(marginsOf(planned, site).get('EV11')!.volts!.left).toBeCloseTo(5 - 6.46, 2);
    expect(whyMargin(site, planned, 'EV11', 'volts')[0]!.source).toBe('site rule "voltage drop of feeders and branch"');
    const worst = whyBox(site, 'EV11').at(-1)!;
    expect(worst.result).toBe(circuit.worstDropPercent);
  });

  test('the hospital: 1.83% ahead and 2.93% of branch are about 4.8%; of no circuit is it below the branch', () => {
    const { site, plan: planned } = hospital();
    const circuit = planned.circuits.find(({ charger }) => charger === 'EV184')!;
    expect(circuit.branchDropPercent).toBeCloseTo(2.93, 2);
    expect(circuit.totalDropPercent).toBeLessThan(circuit.branchDropPercent);
    expect(circuit.worstDropPercent).toBeCloseTo(4.79, 2);
    for (const one of planned.circuits) {
      expect(one.worstDropPercent).toBeGreaterThanOrEqual(one.branchDropPercent);
      expect(one.worstDropPercent).toBeGreaterThanOrEqual(one.totalDropPercent - 1e-9);
      const { volts } = marginsOf(planned, site).get(one.charger)!;
      expect(volts!.left).toBe(Math.min(3 - one.branchDropPercent, 5 - one.worstDropPercent));
    }
  });

  const managed = fc.option(fc.integer({ min: 20, max: 150 }), { nil: undefined });
  const tree = fc.record({
    ceilings: fc.tuple(managed, managed, managed, managed),
    counts: fc.tuple(fc.integer({ min: 1, max: 7 }), fc.integer({ min: 0, max: 7 }), fc.integer({ min: 0, max: 3 })),
    lengths: fc.tuple(fc.integer({ min: 10, max: 150 }), fc.integer({ min: 10, max: 150 })),
    solar: fc.integer({ min: 0, max: 20_000 }),
  });
  const partsOf = ({
    ceilings,
    counts,
    lengths,
    solar,
  }: typeof tree extends fc.Arbitrary<infer T> ? T : never): Parts => {
    const held = (i: number) => (ceilings[i] === undefined ? {} : { managedAmps: ceilings[i] });
    return {
      equipment: [
        source(480),
        transformer('T', held(0)),
        panel('M', held(1)),
        panel('P', held(2)),
        panel('Q', held(3)),
      ],
      feeders: [
        feeder('SVC', 'T', { length: lengths[0] }),
        feeder('T', 'M', { length: 10 }),
        feeder('M', 'P', { length: lengths[1] }),
        feeder('M', 'Q'),
      ],
      chargers: [
        ...chargers('P', counts[0]),
        ...chargers('Q', counts[1], { amps: 40 }),
        ...chargers('M', counts[2], { phases: 3, amps: 24 }),
      ],
      loads: [load('Q', 'PV', { volts: 208, phases: 3, va: solar, generation: true }), load('P', 'L')],
    };
  };

  test('is never better off than by its branch alone or as managed; unmanaged it is the drop of all on', () => {
    fc.assert(
      fc.property(tree, (one) => {
        const parts = partsOf(one);
        const free = one.ceilings.every((ceiling) => ceiling === undefined);
        const alone = supplied(siteOf({ equipment: [panel('P')], chargers: chargers('P', 1) })).boxes[0]!;
        const result = supplied(siteOf(parts));
        result.boxes.forEach((box, i) => {
          if (result.boxes.length === 0) return;
          // Alone on a stiff panel a charger of 32 A drops what its branch does.
          if (i < one.counts[0]) expect(box!.worstDropPercent).toBeGreaterThanOrEqual(alone.totalDropPercent - 1e-9);
          expect(box!.worstDropPercent).toBeGreaterThanOrEqual(box!.totalDropPercent - 1e-6);
          if (free && one.solar === 0) expect(box!.worstDropPercent).toBeCloseTo(box!.totalDropPercent, 9);
        });
      }),
      { numRuns: 60 },
    );
  });
});
