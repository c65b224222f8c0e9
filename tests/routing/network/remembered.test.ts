import { expect, test } from 'vitest';
import { networkOf } from '../../../routing/network/network.ts';
import { runsOf } from '../../../routing/network/runs.ts';
import type { Site } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { makeLot } from '../../bench/make-lot.ts';

const lot = (): Site => toSite(makeLot({ name: 'invented', stalls: 240 }));
const changed = <T>(list: readonly T[], at: number, change: (item: T) => T): T[] =>
  list.map((item, i) => (i === at ? change(item) : item));
const differing = (a: readonly unknown[], b: readonly unknown[]): number[] =>
  a.flatMap((item, i) => (item === b[i] ? [] : [i]));

test('the same site gives the same runs and findings', () => {
  const site = lot();
  expect(runsOf({ ...site })).toBe(runsOf(site));
});

test('moving one drop works out the runs of its chargers alone, and builds no network', () => {
  const site = lot();
  const before = runsOf(site);
  const after: Site = {
    ...site,
    drops: changed(site.drops, 77, (d) => ({ ...d, box: [d.box[0] + 1, d.box[1], d.box[2]] })),
  };
  const now = runsOf(after);
  expect(differing(before.runs, now.runs)).toEqual([77]);
  expect(now.runs[77]!.length).toBe(before.runs[77]!.length! + 1);
  expect(networkOf(after.raceways, 0.25)).toBe(networkOf(site.raceways, 0.25));
});

test('so does moving it back: the runs are those of the first site', () => {
  const site = lot();
  const before = runsOf(site);
  runsOf({ ...site, drops: changed(site.drops, 5, (d) => ({ ...d, box: [0, 0, 50] })) });
  expect(runsOf(site).runs).toEqual(before.runs);
  expect(differing(before.runs, runsOf(site).runs).length).toBeLessThanOrEqual(1);
});

test('changing one charger, or the order of chargers or drops, keeps the other runs', () => {
  const site = lot();
  const before = runsOf(site);
  const limited = runsOf({ ...site, chargers: changed(site.chargers, 3, (c) => ({ ...c, branchLimit: 20 })) });
  expect(differing(before.runs, limited.runs)).toEqual([3]);
  expect(limited.findings.filter(({ about }) => about[0] === site.chargers[3]!.id)).toHaveLength(1);
  const turned = runsOf({ ...site, chargers: site.chargers.toReversed(), drops: site.drops.toReversed() });
  expect(differing(before.runs, turned.runs.toReversed())).toEqual([]);
});

test('a drop that is taken out and one that is put in leave the other runs', () => {
  const site = lot();
  const before = runsOf(site);
  const without = runsOf({ ...site, drops: site.drops.slice(1), chargers: site.chargers.slice(1) });
  expect(differing(before.runs.slice(1), without.runs)).toEqual([]);
});

test('moving a piece of equipment works out what it feeds, and nothing else', () => {
  const site = lot();
  const before = runsOf(site);
  const moved = runsOf({
    ...site,
    equipment: changed(site.equipment, 1, (e) => ({ ...e, entry: [e.entry[0], e.entry[1], e.entry[2] - 1] as const })),
  });
  const fed = site.chargers.flatMap(({ from }, i) => (from === site.equipment[1]!.id ? [i] : []));
  expect(fed.length).toBeGreaterThan(0);
  expect(fed.length).toBeLessThan(site.chargers.length);
  expect(differing(before.runs, moved.runs)).toEqual(fed);
});

test('a change of the rules or of a raceway reaches every run', () => {
  const site = lot();
  const before = runsOf(site);
  const allowed = runsOf({
    ...site,
    rules: { ...site.rules, allowance: { ...site.rules.allowance, equipment: 8, box: 2 } },
  });
  expect(allowed.runs.map((run) => run.conductorLength)).toEqual(before.runs.map((run) => run.length! + 10));
  const apart = {
    ...site,
    equipment: site.equipment.map((e) => ({ ...e, entry: [e.entry[0], e.entry[1] + 1, e.entry[2]] as const })),
  };
  expect(runsOf(apart).runs.every(({ length }) => length !== null)).toBe(true);
  const close = runsOf({ ...apart, rules: { ...site.rules, tapLimit: 0.5 } });
  expect(close.runs.every(({ length }) => length === null)).toBe(true);
  const lifted = runsOf({
    ...site,
    raceways: site.raceways.map((r) => ({ ...r, path: r.path.map(([x, y, z]) => [x, y, z + 1] as const) })),
  });
  expect(differing(before.runs, lifted.runs)).toHaveLength(before.runs.length);
});
