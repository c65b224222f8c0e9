import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { dayFigures, dayFigureWords } from '../../../calc/day/figures/day-figures.ts';
import { lackWords } from '../../../calc/day/figures/day-words.ts';
import { dayGround, plannedDay } from '../../../calc/day/planned-days.ts';
import { SHORT } from '../../../calc/day/simulated/outcome.ts';
import { alternativeOf } from '../../../calc/plan/compared/alternative.ts';
import { comparison } from '../../../calc/plan/compared/comparison.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { linesOf, treeOf } from '../../../calc/supply/tree/supply-lines.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { managedLot } from './managed-lot.ts';

const yard = JSON.parse(readFileSync('samples/fleet-yard.site.json', 'utf8'));
const withHeld = (p1: number, p2: number) =>
  toSite({
    ...yard,
    equipment: yard.equipment.map((one: { id: string }) =>
      one.id === 'P1' ? { ...one, managedAmps: p1 } : one.id === 'P2' ? { ...one, managedAmps: p2 } : one,
    ),
  });

describe('what decides between ways of feeding a day', () => {
  const site = toSite(yard);
  const [figures] = dayFigures(site);

  test('is what the plan has of the day under its rule', () => {
    const planned = plannedDay(site.days[0]!, dayGround(treeOf(site), linesOf(site), site.chargers, site.loads));
    const own = planned.strategies.deadline!;
    expect(figures).toMatchObject({ day: 'overnight', strategy: 'deadline', cars: 48, carsShort: 0 });
    expect(figures!.energy).toBeCloseTo(own.energy, 9);
    expect(figures!.cost).toBeCloseTo(own.cost, 9);
    expect(figures!.peakKw).toBeCloseTo(own.peakKw, 9);
  });

  test('each ceiling serves the cars under it, together too, and an ampere less does not', () => {
    const [p1, p2] = figures!.ceilings.map(({ least }) => least!);
    expect(figures!.ceilings.map(({ limit }) => limit)).toEqual(['P1', 'P2']);
    expect(dayFigures(withHeld(p1!, p2!))[0]!.carsShort).toBe(0);
    expect(dayFigures(withHeld(p1! - 1, p2!))[0]!.carsShort).toBeGreaterThan(0);
    expect(dayFigures(withHeld(p1!, p2! - 1))[0]!.carsShort).toBeGreaterThan(0);
  });

  test('without a tariff there is no cost, without management no ceiling', () => {
    const lot = managedLot();
    expect(dayFigures(toSite(lot))[0]).toMatchObject({ cost: null, ceilings: [{ limit: 'P1' }] });
    const free = { ...lot, equipment: lot.equipment!.map(({ managedAmps: _, ...one }) => one) };
    expect(dayFigures(toSite(free as typeof lot))[0]).toMatchObject({ strategy: 'unmanaged', ceilings: [] });
    expect(dayFigures(toSite({ ...lot, days: [] }))).toEqual([]);
  });

  test('is said in a line', () => {
    const words = dayFigureWords({ ...figures!, ceilings: [{ limit: 'P1', least: 115 }], cost: 3612.456 });
    expect(words).toBe(
      'day overnight: 971 of 971 kWh, 20.2 kWh a car in its stay, nobody short, peak 86.5 kW, serves all at P1 115 A, energy and demand 3612.46 a billing period',
    );
  });

  test('what is short is never told as nothing', () => {
    const words = (worstShort: number) => dayFigureWords({ ...figures!, carsShort: 1, worstShort });
    expect(words(0.004)).toContain('1 car short, worst by less than 0.1 kWh');
    expect(words(0.06)).toContain('1 car short, worst by 0.1 kWh');
    expect(lackWords(0)).toBe('0.0 kWh');
    // Under what counts as short there is nothing to tell.
    expect(lackWords(SHORT / 2)).toBe('0.0 kWh');
  });

  test('stands beside the price where ways are compared, and nowhere without a day', () => {
    const of = (name: string, one: typeof site) => alternativeOf(name, one, INVENTED_LIST);
    const facts = comparison([of('a', site), of('b', withHeld(60, 60))]);
    const short = facts.find(({ fact }) => fact === 'cars short on the charging day')!;
    expect(short.values[0]).toBe(0);
    expect(short.values[1]).toBeGreaterThan(4);
    expect(short).toMatchObject({ better: 'less', differs: true });
    const none = toSite({ ...managedLot(), days: [] });
    expect(comparison([of('a', none), of('b', none)]).some(({ fact }) => /day|ceiling/.test(fact))).toBe(false);
  });
});
