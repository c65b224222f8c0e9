import { describe, expect, test } from 'vitest';
import { plan } from '../../../../calc/plan/plan.ts';
import type { Site, SiteFile } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { COLUMN, inView, isNear, placesOfItems } from '../../../../web/tables/one-line/layout.ts';
import { type OneLineItem, oneLineItems } from '../../../../web/tables/one-line/model.ts';
import { nearest } from '../../../../web/tables/one-line/nearest.ts';
import { lotBehind, SMALL_LOT } from '../../../calc/checks/faults/small-lot.ts';
import { chargers, feeder, panel, siteOf, source } from '../../../calc/supply/small-site.ts';

const itemsOf = (file: unknown): readonly OneLineItem[] => {
  const site = toSite(file as SiteFile);
  return oneLineItems(site, plan(site));
};
const all = (items: readonly OneLineItem[]): readonly OneLineItem[] =>
  items.flatMap((item) => [item, ...all(item.children)]);
const CHIPS = { row: 30, opened: new Set<string>() };
/** A source and so many panels with two chargers each. */
const broad = (count: number): Site =>
  siteOf({
    equipment: [source(208), ...Array.from({ length: count }, (_, i) => panel(`P${i}`))],
    feeders: Array.from({ length: count }, (_, i) => feeder('SVC', `P${i}`)),
    chargers: Array.from({ length: count }, (_, i) => chargers(`P${i}`, 2)).flat(),
  });

describe('what the one-line says', () => {
  test('volts, amperes, fault, device and percent loaded are those of the plan', () => {
    const site = toSite(SMALL_LOT as unknown as SiteFile);
    const { supply, devices } = plan(site);
    const solved = supply.equipment.find(({ id }) => id === 'P1')!;
    const panelItem = all(itemsOf(SMALL_LOT)).find(({ id }) => id === 'P1')!;
    const says = panelItem.says.join('; ');
    expect(says).toContain(
      `${[solved.volts.AB, solved.volts.BC, solved.volts.CA].map((v) => v.toFixed(1)).join(', ')} V`,
    );
    expect(says).toContain(`${[solved.amps.A, solved.amps.B, solved.amps.C].map((a) => a.toFixed(0)).join(', ')} A`);
    expect(says).toContain(`fault ${(solved.faultAmps! / 1000).toFixed(1)} of 22 kA`);
    expect(says).toContain(`demand ${solved.demandAmps.toFixed(0)} A, ${solved.percentLoaded!.toFixed(0)}%`);
    expect(says).toContain('main 200 A');
    const drawn = devices.filter(({ id }) => ['F1.from', 'F1.to', 'P1.main'].includes(id));
    expect(drawn.length).toBeGreaterThan(0);
    expect([panelItem.feeder!.out, panelItem.feeder!.in].filter((mark) => mark !== null)).not.toEqual([]);
    expect(panelItem.feeder!.says.join('; ')).toContain(`${supply.feeders[0]!.percentLoaded.toFixed(0)}% loaded`);
  });

  test('every charger stands once, under the lines that its circuit has', () => {
    const site = toSite(SMALL_LOT as unknown as SiteFile);
    const lines = plan(site).circuits.map(({ charger, phases }) => [charger, phases]);
    const shown = all(itemsOf(SMALL_LOT)).flatMap(({ groups }) =>
      groups.flatMap((group) => group.chargers.map(({ id }) => [id, group.lines])),
    );
    expect(shown.sort()).toEqual(lines.sort());
  });

  test('ground-fault protection is told where the file has it, of a main and of a feeder', () => {
    const site = siteOf({
      equipment: [
        source(480),
        panel('P1', { volts: 480, mainAmps: 1600, groundFault: true }),
        panel('P2', { volts: 480 }),
      ],
      feeders: [feeder('SVC', 'P1'), feeder('P1', 'P2', { groundFault: true })],
    });
    const [one, two] = all(oneLineItems(site, plan(site))).filter(({ id }) => id !== 'SVC');
    const told = [one!.says, one!.feeder!.says, two!.says, two!.feeder!.says];
    expect(told.map((says) => says.includes('ground-fault protection'))).toEqual([true, false, false, true]);
  });

  test('a transformer is told with both its voltages and its rating', () => {
    const transformer = all(itemsOf(lotBehind(undefined))).find(({ kind }) => kind === 'transformer')!;
    expect(transformer.says[0]).toMatch(/^\d+ V to 208Y\/120 V$/);
    expect(transformer.says[1]).toMatch(/kVA, \d+% loaded$/);
  });
});

describe('where it lies', () => {
  test('no two items lie over one another, and each hangs below what feeds it', () => {
    const site = broad(7);
    const { placed, width, height } = placesOfItems(oneLineItems(site, plan(site)), CHIPS);
    expect(placed).toHaveLength(8);
    for (const [i, one] of placed.entries()) {
      expect(one.x + COLUMN).toBeLessThanOrEqual(width);
      expect(one.y + one.height).toBeLessThanOrEqual(height);
      for (const other of placed.slice(i + 1))
        expect(
          Math.abs(one.x - other.x) >= COLUMN || one.y + one.height <= other.y || other.y + other.height <= one.y,
        ).toBe(true);
    }
    const [root, ...fed] = placed;
    for (const { x, y } of fed) {
      expect(y).toBe(root!.bus!.y);
      expect(x).toBeGreaterThanOrEqual(root!.bus!.from - COLUMN);
      expect(x).toBeLessThanOrEqual(root!.bus!.to);
    }
  });

  test('of 200 panels only those near the view are drawn', () => {
    const site = broad(200);
    const layout = placesOfItems(oneLineItems(site, plan(site)), CHIPS);
    const seen = { left: 20_000, top: 0, width: 1000, height: 500 };
    const drawn = inView(layout, seen).filter((placed) => isNear(placed, seen));
    expect(drawn.length).toBeLessThan(10);
    expect(drawn.length).toBeGreaterThan(4);
    // The bus over all of them is drawn wherever the view is.
    expect(inView(layout, seen).some(({ item }) => item.id === 'SVC')).toBe(true);
  });

  test('an arrow leads straight on before aside, and nowhere past the last', () => {
    const places = [
      { x: 100, y: 0 },
      { x: 40, y: 60 },
      { x: 0, y: 50 },
    ];
    expect(nearest({ x: 0, y: 0 }, places, 'ArrowRight')).toBe(0);
    expect(nearest({ x: 0, y: 0 }, places, 'ArrowDown')).toBe(2);
    expect(nearest({ x: 0, y: 0 }, places, 'ArrowUp')).toBe(-1);
  });
});
