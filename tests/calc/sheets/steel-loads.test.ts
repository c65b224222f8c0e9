import { describe, expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { MADE_OF, steelLoadsSheet } from '../../../calc/sheets/site-work/steel-loads-sheet.ts';
import { steelLoads } from '../../../calc/steel/steel-loads.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { box, charger, panel, raceway } from '../../routing/network/sites.ts';

const file = (more: Partial<SiteFile> = {}): SiteFile => ({
  format: 'overrow/site',
  version: 1,
  units: 'ft',
  name: 'steel',
  equipment: [panel('P1', [0, 0, 11])],
  raceways: [
    raceway('R1', [
      [0, 0, 11],
      [30, 0, 11],
    ]),
  ],
  drops: [box('D1', [30, 0, 11]), box('D2', [30, 0.5, 11])],
  chargers: [charger('C1', 'D1', 'P1'), charger('C2', 'D2', 'P1')],
  members: [{ id: 'B1', from: [0, 0, 12], to: [40, 0, 12] }],
  rules: { circuitsPerConduit: 1 },
  ...more,
});

describe('the loads on the steel', () => {
  const site = toSite(file());
  const planned = plan(site);
  const [head, ...rows] = steelLoadsSheet(site, planned);
  const column = (name: string): number => head!.indexOf(name);
  const [all, ...parts] = rows.slice(
    0,
    rows.findIndex((row) => row.length === 0),
  );
  const loads = parts.filter((row) => row[column('load')] !== 'rests');

  test('a member has all of its points and lines, which add up to it, part for part', () => {
    expect(all![column('member')]).toBe('B1');
    expect(loads.map((row) => row[column('load')])).toContain('line');
    for (const name of ['pounds', ...MADE_OF.map((what) => `${what} (lb)`)]) {
      const sum = loads.reduce((total, row) => total + Number(row[column(name)] ?? 0), 0);
      expect(sum, name).toBeCloseTo(Number(all![column(name)] ?? 0), 1);
    }
    const made = MADE_OF.reduce((total, what) => total + Number(all![column(`${what} (lb)`)] ?? 0), 0);
    expect(made).toBeCloseTo(Number(all![column('pounds')]), 1);
  });

  test('its reactions are what it carries, and turn it about neither end', () => {
    const rests = parts.filter((row) => row[column('load')] === 'rests');
    expect(rests.map((row) => [row[column('from (ft)')], row[column('of')]])).toEqual([
      [0, 'end'],
      [40, 'end'],
    ]);
    const [first, last] = rests.map((row) => Number(row[column('reaction (lb)')]));
    expect(first! + last!).toBeCloseTo(Number(all![column('pounds')]), 1);
    const turning = loads.reduce((sum, row) => {
      const [from, to, pounds] = ['from (ft)', 'to (ft)', 'pounds'].map((name) => row[column(name)]);
      return sum + Number(pounds) * (to === null ? Number(from) : (Number(from) + Number(to)) / 2);
    }, 0);
    expect(last! * 40).toBeCloseTo(turning, 0);
  });

  test('full trapezes: two of 1/2 in on 12 in leave room for three more, each filled to 0.52 lb a foot with 4% of 0.3 lb', () => {
    // 2 x 0.706 + 1 + 3 = 5.412 in are taken; (12 - 5.412) / 1.706 = 3.86: three more.
    const filled = 5 * (0.52 + 0.04 * 0.3);
    const drawn = 2 * (0.3 * 1.04 + (2 * 64 + 38) / 1000);
    expect(steelLoads(site, planned)[0]!.whenFilled).toBeCloseTo(30 * (filled - drawn), 6);
  });

  test('the sources of the weights and the caution stand under it', () => {
    const words = rows.map((row) => String(row[0] ?? '')).join(' ');
    expect(words).toContain('Capacity is checked by others');
    expect(words).toContain('common practice, no source');
    expect(words).toContain('ANSI C80.3');
  });
});

test('what hangs from nothing is listed too, and a metric file has meters', () => {
  const far = toSite(file({ members: [{ id: 'B1', from: [0, 50, 12], to: [40, 50, 12] }] }));
  const rows = steelLoadsSheet(far, plan(far));
  expect(rows.filter(([, load]) => load === 'hangs from nothing').length).toBeGreaterThan(2);
  const metric = toSite({ ...file(), units: 'm' });
  expect(steelLoadsSheet(metric, plan(metric))[0]).toContain('from (m)');
});
