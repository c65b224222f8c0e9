import { describe, expect, test } from 'vitest';
import { treeOf } from '../../../calc/supply/tree/supply-lines.ts';
import { systemName } from '../../../calc/supply/tree/system.ts';
import { chargers, equipment, feeder, panel, rulesOf, siteOf, source, supplied, transformer } from './small-site.ts';

const namesOf = (site: Parameters<typeof treeOf>[0]): string[] =>
  treeOf(site).nodes.map(({ equipment: { id }, system }) => `${id} ${systemName(system)}`);

describe('the supply is a tree from the source', () => {
  test('each piece of equipment stands after what feeds it, whatever the order of the file', () => {
    const site = siteOf({
      equipment: [panel('P'), transformer('T'), source(480)],
      feeders: [feeder('T', 'P'), feeder('SVC', 'T')],
    });
    expect(namesOf(site)).toEqual(['SVC 480Y/277 V', 'T 208Y/120 V', 'P 208Y/120 V']);
    expect(treeOf(site).findings).toEqual([]);
  });

  test('without a source panels are held at their nominal voltage, and a note says so', () => {
    const site = siteOf({ equipment: [panel('P'), panel('Q', { volts: 240 })], chargers: chargers('P', 3) });
    const { supply, findings } = supplied(site);
    expect(supply.equipment.map(({ volts }) => Math.round(volts.AB))).toEqual([208, 240]);
    expect(findings.find(({ rule }) => rule === 'supply-source')).toMatchObject({
      severity: 'note',
      about: ['P', 'Q'],
    });
  });

  test('equipment that nothing feeds beside a source is worth a look', () => {
    const { findings } = supplied(siteOf({ equipment: [source(208), panel('P')] }));
    expect(findings.find(({ rule }) => rule === 'supply-source')).toMatchObject({ severity: 'warn', about: ['P'] });
  });

  test.each([
    ['a second feeder into one panel', [feeder('SVC', 'P'), feeder('SVC', 'P', { id: 'F2' })], 'F2'],
    ['a ring', [feeder('P', 'Q'), feeder('Q', 'P', { id: 'F2' })], 'F2'],
    ['a feeder from equipment to itself', [feeder('P', 'P', { id: 'F2' })], 'F2'],
    ['a feeder into a source', [feeder('P', 'SVC', { id: 'F2' })], 'F2'],
  ])('%s is left out with a finding, and the rest is worked', (_, feeders, culprit) => {
    const site = siteOf({
      equipment: [source(208), panel('P'), panel('Q')],
      feeders,
      chargers: chargers('P', 3),
    });
    const { findings, supply } = supplied(site);
    const told = findings.filter(({ rule }) => rule === 'supply-tree');
    expect(told).toHaveLength(1);
    expect(told[0]).toMatchObject({ severity: 'fail' });
    expect(told[0]!.about[0]).toBe(culprit);
    expect(supply.equipment).toHaveLength(3);
    for (const { volts } of supply.equipment) expect(volts.AB).toBeGreaterThan(200);
  });

  test('volts that are not given come from what feeds it, else from what it feeds, which is told', () => {
    const inherited = siteOf({ equipment: [source(480), equipment('P', 'panelboard')], feeders: [feeder('SVC', 'P')] });
    expect(namesOf(inherited)).toEqual(['SVC 480Y/277 V', 'P 480Y/277 V']);
    expect(rulesOf(supplied(inherited))).toEqual(['fault-current', 'fault-current', 'bonding']);
    const guessed = siteOf({ equipment: [equipment('P', 'panelboard')], chargers: chargers('P', 1, { volts: 240 }) });
    expect(namesOf(guessed)).toEqual(['P 240 V']);
    expect(rulesOf(supplied(guessed))).toContain('supply-data');
  });

  test('a transformer without nameplate figures is ideal, which is told', () => {
    const { impedancePercent: _, ...bare } = transformer('T');
    const site = siteOf({ equipment: [source(480), bare, panel('P')], feeders: [feeder('SVC', 'T', { length: 0 })] });
    const result = supplied(site);
    expect(result.supply.equipment[1]!.volts.AB).toBeCloseTo(208, 9);
    expect(result.supply.equipment[1]!.faultAmps).toBeUndefined();
    expect(result.findings.find(({ rule }) => rule === 'supply-data')!.about).toEqual(['T']);
  });

  test('single-phase equipment has two lines of what feeds it', () => {
    const site = siteOf({
      equipment: [source(208), panel('P', { phases: 1 })],
      feeders: [feeder('SVC', 'P')],
      chargers: chargers('P', 2),
    });
    const { supply } = supplied(site);
    const at = supply.equipment[1]!;
    expect(Object.values(at.volts).filter((volts) => volts > 0)).toHaveLength(3);
    expect(Math.max(at.amps.A, at.amps.B, at.amps.C)).toBeCloseTo(64, 9);
    expect(Math.min(at.amps.A, at.amps.B, at.amps.C)).toBe(0);
  });

  test('a single-phase service has two lines half a turn apart', () => {
    const site = siteOf({
      equipment: [equipment('SVC', 'source', { volts: 240, phases: 1 })],
      chargers: chargers('SVC', 2, { volts: 240 }),
    });
    expect(systemName(treeOf(site).nodes[0]!.system)).toBe('120/240 V');
    const { volts, amps } = supplied(site).supply.equipment[0]!;
    expect(volts).toEqual({ AB: 240, BC: 0, CA: 0, AN: 120, BN: 120 });
    expect(amps).toMatchObject({ A: expect.closeTo(64, 9), B: expect.closeTo(64, 9), C: 0, N: expect.closeTo(0, 9) });
  });
});
