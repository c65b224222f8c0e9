import { describe, expect, test } from 'vitest';
import { plan } from '../../../../calc/plan/plan.ts';
import { panelSources } from '../../../../calc/propose/panels/panel-source.ts';
import { equipmentLines } from '../../../../calc/sheets/pdf/one-line/one-line-words.ts';
import { treeOf } from '../../../../calc/supply/tree/supply-lines.ts';
import { chargers, equipment, feeder, panel, siteOf, source } from '../small-site.ts';

describe('service equipment apart from the utility’s point', () => {
  const service = equipment('SE', 'service', { volts: 208, phases: 3, mainAmps: 400, busAmps: 400 });
  const site = siteOf({
    equipment: [source(208), service, panel('P')],
    feeders: [feeder('SVC', 'SE', { breakerAmps: 400 }), feeder('SE', 'P')],
    chargers: chargers('P', 3),
  });

  test('is bought with its metering, where the source is the utility’s', () => {
    const rows = plan(site).takeoff.filter(({ of }) => of.includes('SE') || of.includes('SVC'));
    expect(rows.find(({ item }) => item === 'service equipment')).toMatchObject({
      spec: '400 A bus, 400 A main, 208 V, three-phase, with metering',
      quantity: 1,
      of: ['SE'],
    });
    expect(rows.flatMap(({ of }) => of)).not.toContain('SVC');
  });

  test('the one-line says disconnect, metering and main bonding jumper', () => {
    const node = treeOf(site).nodes.find(({ equipment: { id } }) => id === 'SE')!;
    const words = equipmentLines(node, site, plan(site)).join('\n');
    expect(words).toContain('SE service equipment');
    expect(words).toContain('service disconnect, metering, main bonding jumper');
  });

  test('a proposed panel is fed from it, not from the utility', () => {
    expect(panelSources(site)[0]!.source.id).toBe('SE');
    const without = { ...site, equipment: site.equipment.filter(({ id }) => id !== 'SE') };
    expect(panelSources(without)[0]!.source.id).toBe('SVC');
  });
});
