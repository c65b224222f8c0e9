import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { alternativeOf } from '../../../calc/plan/compared/alternative.ts';
import { changeOrder } from '../../../calc/plan/compared/change-order.ts';
import { alternates } from '../../../calc/plan/compared/comparison.ts';
import { revision } from '../../../calc/plan/compared/revision.ts';
import { SUBTOTALS, subtotals } from '../../../calc/plan/compared/subtotals.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { changeOrderSheet } from '../../../calc/sheets/cost/change-order-sheet.ts';
import { partsOfRow } from '../../../calc/takeoff/bid/cost-parts.ts';
import { sumOf } from '../../../calc/takeoff/bid/money.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { libraryLot } from '../../bench/samples/library-lot.ts';
import { anySupply } from '../supply/devices/any-supply.ts';
import { siteOf } from '../supply/small-site.ts';

const priced = (file: SiteFile, name = 'lot') => alternativeOf(name, toSite(file), INVENTED_LIST);
const LOT = libraryLot();
const base = priced(LOT);

/** The lot with one drop moved, or its cords longer, or a charger of fewer amperes. */
const anyChange = fc
  .record({
    drop: fc.nat(LOT.drops!.length - 1),
    by: fc.integer({ min: -20, max: 20 }),
    cord: fc.constantFrom(20, 25),
    amps: fc.constantFrom(16, 24, 32),
    charger: fc.nat(LOT.chargers!.length - 1),
  })
  .map(
    ({ drop, by, cord, amps, charger }): SiteFile => ({
      ...LOT,
      drops: LOT.drops!.map((one, i) => {
        const [x, y, z] = one.box;
        return i === drop ? { ...one, cord, box: [x + by / 10, y, z] as const } : one;
      }) as NonNullable<SiteFile['drops']>,
      chargers: LOT.chargers!.map((one, i) => (i === charger ? { ...one, amps } : one)),
    }),
  );

describe('a change order', () => {
  test('is the price of the later less that of the earlier, and its lines and markups are, to the cent', () => {
    let lines = 0;
    fc.assert(
      fc.property(anyChange, (file) => {
        const after = priced(file);
        const order = changeOrder(base, after);
        const difference = Math.round(after.cost.price * 100) - Math.round(base.cost.price * 100);
        expect(Math.round(order.total * 100)).toBe(difference);
        const markups = order.markups.map(({ dollars }) => dollars);
        expect(sumOf([...order.lines.map(({ extension }) => extension), ...markups])).toBe(order.total);
        expect(sumOf([order.adds, order.deducts, ...markups])).toBe(order.total);
        expect(alternates([base, after])[0]?.adds).toBe(order.total);
        // There and back again.
        expect(changeOrder(after, base).total).toBe(-order.total + 0);
        lines += order.lines.length;
      }),
      { numRuns: 12 },
    );
    expect(lines).toBeGreaterThan(12);
  });
  test('of no change is none', () => {
    expect(changeOrder(base, priced(structuredClone(LOT)))).toEqual({
      lines: [],
      adds: 0,
      deducts: 0,
      markups: [],
      restocking: null,
      total: 0,
    });
  });

  const fewer = priced({ ...LOT, chargers: LOT.chargers!.slice(1), drops: LOT.drops!.slice(1) }, 'fewer');
  test('has a line for what is deducted, with its quantity, material and hours', () => {
    const module = changeOrder(base, fewer).lines.find(({ item }) => item === 'charging module')!;
    expect(module).toMatchObject({ before: 16, after: 15, material: -690 });
    expect(module.hours).toBeLessThan(0);
    expect(module.of).toEqual([LOT.chargers![0]!.id]);
  });
  test('has restocking on what goes back, where it is asked for', () => {
    const asked = changeOrder(base, fewer, { restocking: INVENTED_LIST });
    const back = sumOf(asked.lines.flatMap(({ material }) => (material < 0 ? [-material] : [])));
    expect(asked.restocking).toBeCloseTo(0.15 * back, 2);
    expect(asked.total).toBe(sumOf([changeOrder(base, fewer).total, asked.restocking!]));
  });
  test('is named by the elements that changed', () => {
    const changes = revision(base, fewer);
    const gone = changes.elements.find(({ id }) => id === LOT.drops![0]!.id)!;
    const items = gone.lines.map((number) => changes.order.lines[number - 1]!.item);
    for (const item of ['charging module', 'cord', 'retractor', 'breaker']) expect(items).toContain(item);
  });
  test('as a sheet adds up to its total', () => {
    const order = changeOrder(base, fewer, { restocking: INVENTED_LIST });
    const rows = changeOrderSheet({ units: 'ft' }, order);
    const total = rows.find((row) => row[1] === 'total of the change order')![10];
    const amounts = rows.slice(1).flatMap((row) => (typeof row[10] === 'number' ? [row[10]] : []));
    // Lines, then adds and deducts, which say the same again, markups, restocking, and the total.
    const lines = order.lines.length;
    expect(sumOf([...amounts.slice(0, lines), ...amounts.slice(lines + 2, -1)])).toBe(total);
  });
});

describe('sums in every direction', () => {
  test('by system, phase, panel and area are the bill, to the cent, on any site', () => {
    let dearest = 0;
    const check = (one: ReturnType<typeof priced>): void => {
      for (const by of SUBTOTALS) {
        const sums = subtotals(one, by);
        expect(sumOf(sums.map(({ cost }) => cost)), by).toBe(one.cost.cost);
        expect(sumOf(sums.map(({ material }) => material)), by).toBe(one.cost.material);
        expect(sums.reduce((sum, { hours }) => sum + hours, 0)).toBeCloseTo(one.cost.hours, 6);
        expect(new Set(sums.map(({ name }) => name)).size).toBe(sums.length);
      }
      for (const row of one.cost.rows) {
        const parts = partsOfRow(row);
        expect(sumOf(parts.map(({ material }) => material))).toBe(row.material);
        expect(sumOf(parts.map(({ labor }) => labor))).toBe(row.labor);
      }
      dearest = Math.max(dearest, one.cost.cost);
    };
    fc.assert(
      fc.property(anySupply, (parts) => check(alternativeOf('any', siteOf(parts), INVENTED_LIST))),
      { numRuns: 30 },
    );
    fc.assert(
      fc.property(anyChange, (file) => check(priced(file))),
      { numRuns: 5 },
    );
    expect(dearest).toBeGreaterThan(10_000);
  });
  test('name the panels, and the rows of stalls', () => {
    expect(subtotals(base, 'panel').map(({ name }) => name)).toContain('P1');
    const areas = subtotals(base, 'area').map(({ name }) => name);
    expect(areas.filter((name) => name.startsWith('stalls'))).toHaveLength(2);
  });
});
