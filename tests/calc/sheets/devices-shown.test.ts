import fc from 'fast-check';
import { expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { equipmentLines, feederLines } from '../../../calc/sheets/pdf/one-line/one-line-words.ts';
import { feederConduitsOf, feederSchedule } from '../../../calc/sheets/pdf/schedules/feeder-schedule.ts';
import { panelTables } from '../../../calc/sheets/pdf/schedules/panel-schedules.ts';
import { panelSheet } from '../../../calc/sheets/schedules/panel-sheet.ts';
import { panelSchedules } from '../../../calc/supply/panels/panel-schedule.ts';
import { treeOf } from '../../../calc/supply/tree/supply-lines.ts';
import { anySupply } from '../supply/devices/any-supply.ts';
import { feeder, panel, siteOf, source, transformer } from '../supply/small-site.ts';

test('every device of any supply is on the one-line where it stands, with its rating', () => {
  let shown = 0;
  fc.assert(
    fc.property(anySupply, (parts) => {
      const site = siteOf(parts);
      const planned = plan(site);
      const conduits = feederConduitsOf({ site });
      const words = new Map(
        treeOf(site).nodes.map((node) => [
          node.equipment.id,
          {
            own: equipmentLines(node, site, planned).join('\n'),
            feeder: feederLines(node, site, planned, conduits).join('\n'),
          },
        ]),
      );
      for (const { id, use, at, of, amps, poles, protects } of planned.devices) {
        const { own, feeder } = words.get(id.endsWith('.from') ? protects[1]! : at)!;
        shown++;
        if (amps === null)
          expect(own, id).toMatch(use === 'main' ? /no main drawn/ : new RegExp(`no ${use} device drawn`));
        else if (use === 'charger' || use === 'load') expect(own, id).toContain(`${amps} A ${poles}P`);
        else if (of === at) expect(own, id).toContain(`main ${amps} A`);
        else if (use === 'main') expect(own, id).toContain(`main ${amps} A, of ${of}`);
        else expect(feeder, id).toContain(`${of}  ${amps} A ${poles}P`);
      }
    }),
    { numRuns: 20 },
  );
  expect(shown).toBeGreaterThan(100);
});

test('and every device in a panel is in its schedule; a tap takes no space', () => {
  let shown = 0;
  fc.assert(
    fc.property(anySupply, (parts) => {
      const site = siteOf(parts);
      const planned = plan(site);
      const tables = panelTables({ site, plan: planned });
      const schedules = [...panelSchedules(site).values()];
      schedules.forEach(({ equipment, circuits }, i) => {
        const mine = planned.devices.filter(({ at }) => at === equipment);
        const branches = mine.filter(({ use }) => use !== 'main');
        expect(circuits.map(({ id }) => id).sort()).toEqual(branches.map(({ of }) => of).sort());
        const [lead] = tables[i]!.lead!;
        for (const { amps, use } of mine)
          if (use === 'main') expect(lead).toContain(amps === null ? 'no main drawn' : `main ${amps} A`);
        const cells = JSON.stringify(tables[i]!.rows);
        for (const { amps, poles } of branches) expect(cells).toContain(`${amps} A ${poles}P`);
        const sheet = panelSheet(site, planned).filter(([panel, , lines]) => panel === equipment && lines !== null);
        for (const { of, amps, use } of mine)
          if (amps !== null)
            expect(sheet.some((row) => row[3] === (use === 'main' ? equipment : of) && row[5] === amps)).toBe(true);
        shown += mine.length;
      });
    }),
    { numRuns: 20 },
  );
  expect(shown).toBeGreaterThan(50);
});

test('the feeder schedule says at which end each device stands', () => {
  const at = (device: 'from' | 'to' | 'both' | undefined): string | undefined => {
    const site = siteOf({
      equipment: [source(480), transformer('T1'), panel('P1')],
      feeders: [feeder('SVC', 'T1'), feeder('T1', 'P1', device === undefined ? {} : { device })],
    });
    const { columns, rows } = feederSchedule({ site, plan: plan(site) });
    const column = columns.findIndex(({ head }) => head === 'Breaker');
    return rows.find(([id]) => id === 'F-P1')![column] as string;
  };
  expect([at(undefined), at('from'), at('to'), at('both')]).toEqual([
    '200 A at P1',
    '200 A at T1',
    '200 A at P1',
    '200 A at both ends',
  ]);
});

test('the one-line says which breakers have ground-fault protection and a way to less arc energy, where the file does', () => {
  const linesOf = (has: boolean) => {
    const main = has ? ({ groundFault: true, arcEnergy: 'differential' } as const) : {};
    const site = siteOf({
      equipment: [source(480), panel('P1', { volts: 480, mainAmps: 1600, ...main }), panel('P2', { volts: 480 })],
      feeders: [feeder('SVC', 'P1'), feeder('P1', 'P2', has ? { groundFault: true } : {})],
    });
    const [planned, conduits] = [plan(site), feederConduitsOf({ site })];
    const node = (id: string) => treeOf(site).nodes.find(({ equipment }) => equipment.id === id)!;
    return {
      main: equipmentLines(node('P1'), site, planned),
      ofMain: feederLines(node('P1'), site, planned, conduits),
      feeder: feederLines(node('P2'), site, planned, conduits),
    };
  };
  const said = linesOf(true);
  const words = 'ground-fault protection of equipment';
  expect(said.main.slice(2, 5)).toEqual(['main 1600 A', words, 'arc energy: differential relaying']);
  expect(said.feeder[1]).toBe(words);
  expect(said.ofMain).not.toContain(words);
  for (const lines of Object.values(linesOf(false))) expect(lines.join(' ')).not.toMatch(/ground-fault|arc energy/);
});
