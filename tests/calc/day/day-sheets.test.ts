import { describe, expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { dayCarsSheet, dayLoadSheet, dayMetersSheet } from '../../../calc/sheets/days/day-sheets.ts';
import { daySummarySheet } from '../../../calc/sheets/days/day-summary-sheet.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { managedLot } from './managed-lot.ts';

const span = { from: '00:00', to: '00:00' };
const site = toSite(
  managedLot({
    days: [
      {
        id: 'day',
        from: '08:00',
        to: '12:00',
        step: 60,
        cars: [
          { arrive: '08:00', leave: '12:00', kwh: 12 },
          { arrive: '09:00', leave: '12:00', kwh: 6 },
        ],
        tariff: {
          energy: [
            { from: '08:00', to: '10:00', price: 0.3 },
            { ...span, price: 0.1 },
          ],
          days: 20,
        },
      },
    ],
  }),
);
const table = (rows: readonly (readonly unknown[])[]) =>
  rows.slice(
    1,
    rows.findIndex((row) => row.length === 0),
  );
const sum = (values: readonly unknown[]) => values.reduce<number>((all, one) => all + Number(one), 0);

describe('sheets of a day of charging', () => {
  test('the load of each step adds up to what the cars got', () => {
    const rows = table(dayLoadSheet(site)!);
    const { got } = plan(site).days[0]!.strategies.equal!;
    const perStep = new Map(rows.map((row) => [row[1], Number(row[4])]));
    expect(sum([...perStep.values()])).toBeCloseTo(sum(got), 2);
    expect([...perStep.keys()]).toEqual(['08:00', '09:00', '10:00', '11:00']);
    const limits = rows.filter((row) => row[6] !== 'kW');
    expect(limits.length).toBeGreaterThan(4);
    for (const row of limits) expect(Number(row[7])).toBeLessThanOrEqual(Number(row[8]) + 1e-3);
  });

  test('what each rule gives in a step, and what each panel does, stand beside the limits', () => {
    const rows = table(dayLoadSheet(site)!);
    const [head] = dayLoadSheet(site)!;
    const equal = head!.indexOf('charging equal shares (kW)');
    // The rule of the lot is one of them, and its panels together are all that charges.
    for (const row of rows) expect(row[equal]).toBe(row[4]);
    const panels = rows.filter((row) => row[6] === 'kW');
    expect(panels.map((row) => row.slice(5, 9))).toEqual(panels.map((row) => ['P1', 'kW', row[4], null]));
    expect(panels).toHaveLength(4);
  });

  test('a summary has what the plan has of each rule, and the least ceilings of the lot’s', () => {
    const rows = table(daySummarySheet(site)!);
    const { strategies } = plan(site).days[0]!;
    expect(rows.map((row) => row[3])).toEqual(
      Object.values(strategies).map(({ energy }) => expect.closeTo(energy, 3) as number),
    );
    expect(rows.map((row) => row[2])).toEqual(['', 'yes', '', '', '']);
    expect(rows[1]![11]).toMatch(/^P1 \d+ A$/);
    expect(rows[1]![10]).toBeCloseTo(strategies.equal!.cost, 2);
  });

  test('a row a car, and a row a charger whose energy is that of its cars and whose cost is by the hour', () => {
    const cars = table(dayCarsSheet(site)!);
    expect(cars.map((row) => row.slice(0, 7))).toEqual([
      ['day', 1, 'EV1', '08:00', '12:00', 12, 12],
      ['day', 2, 'EV2', '09:00', '12:00', 6, 6],
    ]);
    const meters = table(dayMetersSheet(site)!);
    expect(sum(meters.map((row) => row[4]))).toBeCloseTo(18, 6);
    // EV1: 32 A at 208 V is 6.656 kWh in the first hour and 5.344 in the second, both at 0.30; EV2: 6 kWh in the second.
    expect(meters.map((row) => row[7])).toEqual([72, 36]);
  });

  test('there are none where there is no day', () => {
    const { days: _, ...bare } = managedLot();
    for (const sheet of [daySummarySheet, dayLoadSheet, dayCarsSheet, dayMetersSheet])
      expect(sheet(toSite(bare))).toBeNull();
  });
});
