import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { dayView } from '../../../calc/day/figures/day-view.ts';
import { panelLoads } from '../../../calc/day/figures/panel-loads.ts';
import { supplyAtTime } from '../../../calc/day/figures/supply-at-time.ts';
import { dayGround, siteDay } from '../../../calc/day/planned-days.ts';
import { scheduleLoad } from '../../../calc/day/simulated/schedule-load.ts';
import { simulate } from '../../../calc/day/simulated/simulate.ts';
import { worldOf } from '../../../calc/day/simulated/world.ts';
import { plan } from '../../../calc/plan/plan.ts';
import { linesOf, treeOf } from '../../../calc/supply/tree/supply-lines.ts';
import { tablesOf } from '../../../calc/tables/editions.ts';
import { toSite } from '../../../routing/site/to-site.ts';

const site = toSite(JSON.parse(readFileSync('samples/fleet-yard.site.json', 'utf8')));
const planned = plan(site);
const tables = tablesOf(site.rules);
const at = (amps: (id: string) => number) =>
  supplyAtTime(site, planned.runs, tables, new Map(site.chargers.map(({ id }) => [id, amps(id)])));

describe('the supply while chargers give less than all', () => {
  test('with each at the share that management leaves it is that of the plan', () => {
    const shares = new Map(planned.supply.equipment.map(({ id, chargerShare }) => [id, chargerShare]));
    const of = new Map(site.chargers.map(({ id, from, amps }) => [id, amps * shares.get(from)!]));
    for (const one of at((id) => of.get(id)!)) {
      const whole = planned.supply.equipment.find(({ id }) => id === one.id)!;
      expect(one.volts.AB).toBeCloseTo(whole.volts.AB, 6);
      expect(one.volts.CA).toBeCloseTo(whole.volts.CA, 6);
      expect(one.amps).toBeCloseTo(Math.max(whole.amps.A, whole.amps.B, whole.amps.C), 5);
    }
  });

  test('more current never raises the least volts, and with none only the loads draw', () => {
    const [none, half, all] = [0, 2.5, 5].map((amps) => at(() => amps));
    none!.forEach((one, i) => {
      expect(half![i]!.lowest).toBeLessThanOrEqual(one.lowest + 1e-9);
      expect(all![i]!.lowest).toBeLessThanOrEqual(half![i]!.lowest + 1e-9);
    });
    // 2,400 VA of lighting at 208 V on one pair of lines, by the volts that are there.
    const board = none!.find(({ id }) => id === 'SB1')!;
    expect(board.amps).toBeGreaterThan(2400 / 208);
    expect(board.amps).toBeLessThan((1.02 * 2400) / 208);
    expect(none!.find(({ id }) => id === 'P1')!.amps).toBe(0);
  });
});

describe('the load of a day by panel, and of a schedule', () => {
  const read = siteDay(site.days[0]!, dayGround(treeOf(site), linesOf(site), site.chargers, site.loads));
  if (!read.ok) throw new Error(read.errors[0]!.says);
  const limit = read.day.limits.findIndex(({ id }) => id === 'P1');
  const view = dayView(read.day, 'equal', limit, null);

  test('panels together are the load of all, each under its own limit', () => {
    const loads = panelLoads(view, read.day, new Map(site.chargers.map(({ id, from }) => [id, from])));
    expect(loads.map(({ panel }) => panel)).toEqual(['P1', 'P2']);
    view.kw.forEach((kw, step) => {
      expect(loads.reduce((sum, one) => sum + one.kw[step]!, 0)).toBeCloseTo(kw, 9);
    });
    for (const { kw } of loads) expect(Math.max(...kw)).toBeLessThan((Math.sqrt(3) * 208 * 125) / 1000 + 1e-6);
  });

  test('a schedule loads a limit as the rule did that it was taken from', () => {
    const { amps } = simulate(worldOf(read.day), 'equal', { keepAmps: true });
    const load = scheduleLoad(read.day, amps!, limit);
    load.load.forEach((one, step) => {
      expect(one).toBeCloseTo(view.load[step]!, 9);
    });
    load.kw.forEach((one, step) => {
      expect(one).toBeCloseTo(view.kw[step]!, 9);
    });
  });
});
