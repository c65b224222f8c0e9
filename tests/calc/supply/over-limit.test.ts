import { describe, expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { feederLines } from '../../../calc/sheets/pdf/one-line/one-line-words.ts';
import { feederConduitsOf, feederSchedule } from '../../../calc/sheets/pdf/schedules/feeder-schedule.ts';
import { feederProspects } from '../../../calc/supply/feeders/feeder-prospects.ts';
import { treeOf } from '../../../calc/supply/tree/supply-lines.ts';
import { costOf } from '../../../calc/takeoff/bid/cost.ts';
import { whyFeeder } from '../../../calc/why/why-supply.ts';
import type { Feeder, Site } from '../../../routing/site/site.ts';
import { chargers, equipment, feeder, load, panel, siteOf, supplied, transformer } from './small-site.ts';

/** 300 kVA behind 500 ft at some voltage, of conductors and a breaker that no table at 600 V would let pass. */
const yard = (volts: number, rest: Partial<Feeder> = {}): Site =>
  siteOf({
    equipment: [
      equipment('SVC', 'source', { volts, faultAmps: 5000, faultXr: 8 }),
      transformer('T1', { kva: 300, primaryVolts: volts, impedancePercent: 4, xr: 4 }),
      panel('P1', { mainAmps: 800, busAmps: 800 }),
    ],
    feeders: [
      feeder('SVC', 'T1', {
        conductor: { size: '4', metal: 'aluminum', sets: 2, insulation: 'XHHW-2' },
        breakerAmps: 1300,
        length: 500,
        ...rest,
      }),
      feeder('T1', 'P1', {
        conductor: { size: '500', metal: 'copper', sets: 2, insulation: 'XHHW-2' },
        breakerAmps: 800,
        device: 'from',
      }),
    ],
    loads: [load('P1', 'L1', { volts: 208, phases: 3, va: 120_000, continuous: false })],
  });

/** What the tables of low voltage say of F-T1, or of the primary of T1. */
const LOW = [
  'feeder-size',
  'feeder-conductor',
  'parallel-size',
  'breaker-rating',
  'feeder-overload',
  'transformer-protection',
];

describe('over 1,000 V', () => {
  const site = yard(12_470);
  const planned = plan(site);
  test('nothing of the tables at low voltage is said, and the reason is', () => {
    const about = (at: Site) =>
      supplied(at).findings.filter(({ rule, about }) => LOW.includes(rule) && about.includes('F-T1'));
    expect(about(site)).toEqual([]);
    // The same at 480 V: conductors, sets under 1/0, no standard rating, 450.3(B).
    expect(new Set(about(yard(480)).map(({ rule }) => rule))).toEqual(
      new Set(['feeder-conductor', 'parallel-size', 'breaker-rating', 'transformer-protection']),
    );
    const told = supplied(site).findings.filter(({ rule }) => rule === 'over-limit');
    expect(told).toMatchObject([
      { severity: 'warn', about: ['F-T1', 'SVC', 'T1'], value: 12_470, limit: 1000, unit: 'V' },
    ]);
    expect(supplied(yard(480)).findings.map(({ rule }) => rule)).not.toContain('over-limit');
  });

  test('no such plan is called sound', () => {
    expect(planned.findings.map(({ rule }) => rule)).not.toContain('sound');
    expect(planned.notChecked).toContain('what works over 1000 V (2 pieces of equipment)');
  });

  test('volts, amperes and fault current are worked', () => {
    const row = planned.supply.feeders.find(({ id }) => id === 'F-T1')!;
    // 120 kVA and what the winding loses, at 12,470 V: 5.56 A a line and a little more.
    expect(row.amps.A).toBeGreaterThan(120_000 / (Math.sqrt(3) * 12_470));
    expect(row.amps.A).toBeLessThan(1.02 * (120_000 / (Math.sqrt(3) * 12_470)));
    expect(row.dropPercent).toBeGreaterThan(0);
    expect(row.dropPercent).toBeLessThan(0.1);
    // By hand, ohms a line at 208 V: source 12470 / sqrt 3 / 5000 x (208 / 12470)^2, winding 0.04 x 208^2 / 300,000.
    const source = (12_470 / Math.sqrt(3) / 5000) * (208 / 12_470) ** 2;
    const winding = (0.04 * 208 ** 2) / 300_000;
    const fault = planned.supply.equipment.find(({ id }) => id === 'T1')!.faultAmps!;
    // The feeder's own ohms only lower it, and no impedance tolerance of a transformer is over 10%.
    expect(fault).toBeLessThan(208 / Math.sqrt(3) / (source + 0.9 * winding));
    expect(fault).toBeGreaterThan(208 / Math.sqrt(3) / (source + winding) / 1.05);
  });

  test('no low-voltage conductor, raceway or breaker is bought; what is, has no price', () => {
    const mine = planned.takeoff.filter(({ of }) => of.includes('F-T1'));
    expect(mine.map(({ item, spec, quantity }) => [item, spec, quantity])).toEqual([
      ['feeder over 1,000 V', '12470 V', 500],
      ['device over 1,000 V', '3-pole 1300 A, 12470 V', 1],
    ]);
    const { missing } = costOf(planned.takeoff, INVENTED_LIST, 1);
    expect(missing.map(({ item }) => item)).toEqual(expect.arrayContaining(mine.map(({ item }) => item)));
  });

  test('schedule, one-line and steps say that its conductors are not designed here', () => {
    const words = 'conductors not designed here, over 1000 V';
    const row = feederSchedule({ site, plan: planned }).rows.find(([id]) => id === 'F-T1')!;
    expect(row).toContain(words);
    const node = treeOf(site).nodes.find(({ equipment: { id } }) => id === 'T1')!;
    const lines = feederLines(node, site, planned, feederConduitsOf({ site }));
    expect(lines[1]).toBe(`${words}, 500' 0"`);
    expect(lines.join()).not.toContain('aluminum');
    const steps = whyFeeder(site, 'F-T1');
    expect(steps.at(-1)).toMatchObject({ formula: 'not worked: the tables end at 1000 V' });
    expect(steps.map(({ find }) => find)).not.toContain('table ampacity');
  });

  test('what an existing one can carry is refused', () => {
    const [prospects] = feederProspects(yard(12_470, { existing: true }));
    expect(prospects).toMatchObject({ ok: false, says: expect.stringContaining('over the 1000 V') });
  });
});

test('a load over 1,000 V on its busbar is not held against ratings of panels', () => {
  const at = (volts: number) =>
    supplied(
      siteOf({
        equipment: [
          equipment('SVC', 'source', { volts }),
          equipment('MV', 'switchboard', { volts, busAmps: 10, mainAmps: 20 }),
          transformer('T1', { kva: 300, primaryVolts: volts }),
        ],
        feeders: [feeder('SVC', 'MV'), feeder('MV', 'T1')],
        chargers: chargers('T1', 12),
      }),
    ).findings.map(({ rule }) => rule);
  expect(at(480)).toContain('bus-overload');
  expect(at(4160)).not.toContain('bus-overload');
});
