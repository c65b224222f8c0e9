import { describe, expect, test } from 'vitest';
import { chargers, feeder, load, panel, siteOf, source, supplied } from '../small-site.ts';
import { behind480, rowOf } from '../supply-parts.ts';

describe('the supply of a site', () => {
  test('demand counts continuous load 125% and other load once', () => {
    const loads = [load('P', 'L', { phases: 3, volts: 208, va: 3600, continuous: false })];
    const site = siteOf({ equipment: [panel('P')], loads });
    expect(rowOf(site, 'P').demandAmps).toBeCloseTo(3600 / (Math.sqrt(3) * 208), 9);
    const steady = siteOf({ equipment: [panel('P')], loads: [{ ...loads[0]!, continuous: true }] });
    expect(rowOf(steady, 'P').demandAmps).toBeCloseTo((1.25 * 3600) / (Math.sqrt(3) * 208), 9);
    // Three equal two-pole chargers make sqrt 3 of one in each line.
    const three = siteOf({ equipment: [panel('P')], chargers: chargers('P', 3) });
    expect(rowOf(three, 'P').demandAmps).toBeCloseTo(1.25 * Math.sqrt(3) * 32, 6);
  });

  test('demand on the other side of a transformer is in the ratio of the voltages', () => {
    const { feeders, transformers } = supplied(siteOf(behind480(12))).supply;
    const [ahead, behind] = feeders;
    expect(ahead!.demandAmps).toBeCloseTo((behind!.demandAmps * 208) / 480, 6);
    // 12 chargers of 32 A at 208 V are 80 kVA; at the lower voltage that is there they take a little less.
    expect(transformers[0]!.loadKva).toBeGreaterThan(75);
    expect(transformers[0]!.loadKva).toBeLessThan(80);
    expect(transformers[0]!.percentLoaded).toBeCloseTo((100 * transformers[0]!.loadKva) / 150, 9);
  });

  test('load management scales all chargers under it by one factor, and only where they exceed it', () => {
    const equipment = [panel('P', { managedAmps: 100 })];
    const site = siteOf({ equipment, chargers: chargers('P', 12) });
    const row = rowOf(site, 'P');
    expect(Math.max(row.amps.A, row.amps.B, row.amps.C)).toBeCloseTo(100, 8);
    expect(row.chargerShare).toBeCloseTo(100 / ((12 / 3) * 32 * Math.sqrt(3)), 8);
    expect(row.demandAmps).toBeCloseTo(125, 6);
    expect(rowOf(siteOf({ equipment, chargers: chargers('P', 3) }), 'P').chargerShare).toBe(1);
  });

  test('a ceiling above counts all chargers beyond it, after the ceilings there', () => {
    const site = siteOf({
      equipment: [source(208), panel('M', { managedAmps: 100 }), panel('P', { managedAmps: 80 }), panel('Q')],
      feeders: [feeder('SVC', 'M'), feeder('M', 'P'), feeder('M', 'Q')],
      chargers: [...chargers('P', 6), ...chargers('Q', 3)],
    });
    const { equipment } = supplied(site).supply;
    const share = (id: string): number => equipment.find((row) => row.id === id)!.chargerShare;
    const amps = equipment.find((row) => row.id === 'M')!.amps;
    expect(Math.max(amps.A, amps.B, amps.C)).toBeCloseTo(100, 8);
    // P alone would have 80 of 110.9 A; both are then scaled by the same factor.
    expect(share('P') / share('Q')).toBeCloseTo(80 / (2 * 32 * Math.sqrt(3)), 3);
  });

  test('the neutral of a four-wire feeder moves with the load on it; a three-wire one has none', () => {
    const site = siteOf({
      equipment: [source(208), panel('P')],
      feeders: [feeder('SVC', 'P')],
      loads: [load('P', 'L', { va: 6000 })],
    });
    const { equipment, feeders } = supplied(site).supply;
    const at = equipment[1]!;
    expect(feeders[0]!.amps.N).toBeCloseTo(feeders[0]!.amps.A, 9);
    expect(at.volts.AN!).toBeLessThan(at.volts.BN!);
    // The loaded line falls by two conductors, the others rise by about half of one: section 5's shift.
    expect(at.volts.BN!).toBeGreaterThan(208 / Math.sqrt(3));
    const three = supplied(
      siteOf({ equipment: [source(240), panel('P', { volts: 240 })], feeders: [feeder('SVC', 'P')] }),
    );
    expect(three.supply.equipment[1]!.volts.AN).toBeUndefined();
    expect(three.supply.feeders[0]!.amps.N).toBeUndefined();
  });

  test('generation is given with and without, and only where there is some', () => {
    const solar = load('P', 'PV', { volts: 208, phases: 3, va: 20_000, generation: true });
    const site = siteOf(behind480(6, { loads: [solar] }));
    const { supply } = supplied(site);
    const [on, off] = [supply, supply.withoutGeneration!].map((one) => one.equipment[2]!);
    expect(on!.amps.A).toBeLessThan(off!.amps.A);
    expect(on!.volts.AB).toBeGreaterThan(off!.volts.AB);
    expect(on!.demandAmps).toBe(off!.demandAmps);
    expect(supplied(siteOf(behind480(6))).supply.withoutGeneration).toBeUndefined();
  });
});
