import { describe, expect, test } from 'vitest';
import { plan } from '../../../../calc/plan/plan.ts';
import { panelTables } from '../../../../calc/sheets/pdf/schedules/panel-schedules.ts';
import { panelSheet } from '../../../../calc/sheets/schedules/panel-sheet.ts';
import { devicesOf } from '../../../../calc/supply/devices/devices.ts';
import { connectedLoads } from '../../../../calc/supply/panels/connected-lines.ts';
import { type PanelCard, panelCards, unbalancePercent } from '../../../../calc/supply/panels/panel-card.ts';
import { linesOf, treeOf } from '../../../../calc/supply/tree/supply-lines.ts';
import { NEC_2023 } from '../../../../calc/tables/nec-2023/nec-2023.ts';
import type { Site, SiteFile } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { SMALL_LOT } from '../../checks/faults/small-lot.ts';
import { chargers, feeder, load, panel, siteOf, source, supplied, transformer } from '../small-site.ts';

const cardOf = (site: Site, id = 'P'): PanelCard =>
  panelCards(site, devicesOf(site, NEC_2023), NEC_2023).find(({ schedule }) => schedule.equipment === id)!;

/** Six chargers of 32 A, two 1,200 VA lights of which one is not continuous, and a single-phase panel, on one board. */
const MIXED = siteOf({
  equipment: [source(208), panel('P', { spaces: 24 }), panel('Q', { phases: 1 })],
  feeders: [feeder('SVC', 'P'), feeder('P', 'Q')],
  chargers: [...chargers('P', 6), ...chargers('Q', 1)],
  loads: [load('P', 'L1'), load('P', 'L2', { continuous: false })],
});

describe('a panel schedule', () => {
  test('odd spaces stand on the left and even on the right, rows on lines in turn', () => {
    const { rows } = cardOf(MIXED);
    expect(rows).toHaveLength(12);
    expect(rows.map(({ left }) => left.number)).toEqual([1, 3, 5, 7, 9, 11, 13, 15, 17, 19, 21, 23]);
    expect(rows.map(({ right }) => right.number)).toEqual([2, 4, 6, 8, 10, 12, 14, 16, 18, 20, 22, 24]);
    expect(rows.map(({ line }) => line).join('')).toBe('ABCABCABCABC');
  });

  // Hand-worked: 6 x 32 A x 208 V = 39,936 VA, a third on each line; each light 1,200 VA on one; Q 6,656 VA on two.
  test('volt-amperes by line are those of its circuits', () => {
    const { lineVa, connectedVa } = cardOf(MIXED);
    expect(connectedVa).toBeCloseTo(39_936 + 2400 + 6656, 6);
    expect(lineVa.reduce((sum, { va }) => sum + va, 0)).toBeCloseTo(connectedVa, 6);
    for (const { va } of lineVa) expect(va).toBeGreaterThanOrEqual(39_936 / 3 - 1e-6);
    expect(connectedVa).toBeCloseTo(supplied(MIXED).supply.equipment.find(({ id }) => id === 'P')!.connectedVa, 6);
  });

  // 125% of 46,592 and of 1,200, 100% of 1,200 (215.2(A)(1), 215.3): 60,940 VA, 169.15 A at 208 V.
  test('the demand table counts continuous load at 125%', () => {
    const { demand, demandVa, demandAmps } = cardOf(MIXED);
    expect(demand.map(({ what, percent, demandVa: va }) => [what, percent, Math.round(va)])).toEqual([
      ['Chargers, continuous', 125, 58_240],
      ['Other load, continuous', 125, 1500],
      ['Other load', 100, 1200],
    ]);
    expect(demandVa).toBeCloseTo(60_940, 6);
    expect(demandAmps).toBeCloseTo(60_940 / (Math.sqrt(3) * 208), 6);
  });

  // A ceiling of 60 A on Q, single phase: 12,480 VA leaves its one charger alone; of 20 A on P: 7,205 VA in all.
  test('a ceiling of load management counts in place of the chargers under it', () => {
    const managed = (id: string, managedAmps: number): Site => ({
      ...MIXED,
      equipment: MIXED.equipment.map((one) => (one.id === id ? { ...one, managedAmps } : one)),
    });
    expect(cardOf(managed('Q', 60)).demand[0]!.demandVa).toBeCloseTo(58_240, 6);
    const row = cardOf(managed('P', 20)).demand[0]!;
    expect(row.what).toBe('Chargers, continuous, managed to 20 A');
    expect(row.demandVa).toBeCloseTo(1.25 * 20 * 208 * Math.sqrt(3), 6);
  });

  test('behind a transformer the load lies evenly on the lines ahead of it', () => {
    const site = siteOf({
      equipment: [source(480), panel('M', { volts: 480 }), transformer('T'), panel('P')],
      feeders: [feeder('SVC', 'M'), feeder('M', 'T'), feeder('T', 'P')],
      chargers: chargers('P', 1),
    });
    const loads = connectedLoads(treeOf(site), linesOf(site), site.chargers, site.loads);
    expect(loads[treeOf(site).placeOf.get('M')!]!.lines.map((va) => Math.round(va))).toEqual([2219, 2219, 2219]);
    expect(loads[treeOf(site).placeOf.get('P')!]!.lines.map((va) => Math.round(va))).toEqual([3328, 3328, 0]);
  });

  test('a circuit that was issued and is gone leaves a spare; what holds nothing is a space', () => {
    const issued = {
      circuits: new Map([['OLD', { panel: 'P', spaces: [21, 23] }]]),
      conduits: new Map(),
      boxes: new Map(),
    };
    const before = cardOf(MIXED);
    const { rows, spares, blank } = cardOf({ ...MIXED, issued });
    expect([spares, blank]).toEqual([2, before.blank - 2]);
    expect(rows[10]!.left.cell).toEqual({ kind: 'spare', was: 'OLD', pole: 0 });
    const own = cardOf({
      ...MIXED,
      issued: {
        circuits: new Map([['EV-P-1', { panel: 'P', spaces: [22, 24] }]]),
        conduits: new Map(),
        boxes: new Map(),
      },
    });
    expect(own.rows[10]!.right.cell).toMatchObject({
      kind: 'circuit',
      pole: 0,
      circuit: { id: 'EV-P-1', issued: true },
    });
  });

  test('the sheet and the drawing set show the same schedule', () => {
    const site = toSite(SMALL_LOT as unknown as SiteFile);
    const of = plan(site);
    const card = panelCards(site, of.devices, NEC_2023)[0]!;
    const table = panelTables({ site, plan: of })[0]!;
    // After the spaces, a total for each line.
    expect(table.rows).toHaveLength(card.rows.length + card.lineVa.length);
    expect(table.rows.slice(-card.lineVa.length).map(([total, , , va]) => [total, va])).toEqual(
      card.lineVa.map(({ line, va }) => [`Total line ${line}`, va.toFixed(0)]),
    );
    const sheet = panelSheet(site, of);
    for (const { id, spaces, breakerAmps, va } of card.schedule.circuits.map(
      (circuit) =>
        card.rows
          .flatMap(({ left, right }) => [left.cell, right.cell])
          .flatMap((cell) => (cell.kind === 'circuit' && cell.circuit.id === circuit.id ? [cell.circuit] : []))[0]!,
    )) {
      expect(sheet).toContainEqual(expect.arrayContaining([spaces.join(', '), id, breakerAmps, va]));
      expect(JSON.stringify(table.rows)).toContain(id);
    }
  });
});

// Hand-worked: lines of 30, 20 and 10 A have a mean of 20, and the greatest is half as much again.
test('unbalance is the greatest line over the mean', () => {
  expect(unbalancePercent({ amps: { A: 30, B: 20, C: 10 } }, 'ABC')).toBeCloseTo(50);
  expect(unbalancePercent({ amps: { A: 30, B: 10, C: 0 } }, 'AB')).toBeCloseTo(50);
  expect(unbalancePercent({ amps: { A: 0, B: 0, C: 0 } }, 'ABC')).toBe(0);
});
