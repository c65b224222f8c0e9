import { expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { costOf } from '../../../calc/takeoff/bid/cost.ts';
import type { Point3, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import {
  BEAMS,
  BURIED,
  CANOPY,
  dollars,
  EVERY,
  failing,
  longestLoose,
  lot,
  proposed,
  quantity,
  TRUNK,
} from './hanging-parts.ts';

const unsupported = (file: SiteFile): string[] =>
  plan(toSite(file)).findings.flatMap(({ rule, about }) => (rule === 'unsupported' ? (about[0] ?? 'all') : []));
const saidOf = ({ parts }: ReturnType<typeof proposed>): readonly string[] =>
  parts.find(({ what }) => what === 'raceways')!.says;

/** Feet of what hangs, in the plan, between two lines across the lot. */
const overheadBetween = ({ raceways = [] }: SiteFile, low: number, high: number): number =>
  raceways
    .filter(({ place }) => place === 'overhead')
    .flatMap(({ path }) => path.slice(1).map((b, i) => [path[i]![1], b[1]].sort((p, q) => p - q) as [number, number]))
    .reduce((sum, [a, b]) => sum + Math.max(0, Math.min(b, high) - Math.max(a, low)), 0);

test('what is proposed hangs from steel and goes under the aisle by the conduit that is there, not over it', () => {
  const { file } = proposed(lot([BURIED, TRUNK]));
  expect(unsupported(file)).toEqual([]);
  const fresh = file.raceways!.slice(2);
  expect(fresh.length).toBeGreaterThan(0);
  // Nothing new beyond the canopy, and nothing that hangs comes down into the ground.
  for (const { path } of fresh)
    for (const [, y, z] of path) {
      expect(Math.abs(y)).toBeLessThanOrEqual(18);
      expect(z).toBeGreaterThanOrEqual(0);
    }
  const runs = plan(toSite(file)).runs;
  expect(runs.every(({ ok, raceways }) => ok && raceways.includes('U1') && raceways.includes('T1'))).toBe(true);
});

test('an open aisle between the panel and the canopy is crossed in the ground, up at a column, and its trench is priced', () => {
  const done = proposed(lot([]));
  const { file } = done;
  expect(failing(file)).toEqual([]);
  expect(longestLoose(file)).toBeLessThanOrEqual(EVERY);
  expect(overheadBetween(file, 18, 42)).toBe(0);
  const columns = new Set(file.columns!.map(({ at }) => at.join(' ')));
  const buried = file.raceways!.filter(({ place }) => place === 'underground');
  // Down at the panel's entry, at the depth of Table 300.5(A) for parking, up at a column in a kind that a car may hit.
  expect(new Set(buried.map(({ method }) => method))).toEqual(new Set(['PVC40', 'PVC80']));
  const tops = buried.flatMap(({ path }) => path.filter(([, , z]) => z > 0));
  const [down, up] = tops.sort((a, b) => b[1] - a[1]) as [Point3, Point3];
  expect(tops).toHaveLength(2);
  expect(plan(toSite(file)).findings.filter(({ rule }) => rule === 'riser')).toEqual([]);
  expect([down[0], down[1]]).toEqual([0, 50]);
  expect(columns.has(`${up[0]} ${up[1]}`)).toBe(true);
  expect(Math.min(...buried.flatMap(({ path }) => path.map(([, , z]) => z)))).toBe(-2);
  expect(quantity(file, 'trench')).toBeCloseTo(50, 6);
  // Dug, filled and patched: each has its price, and the sum has them.
  const { takeoff } = plan(toSite(file));
  const dug = takeoff.filter(({ item }) => ['saw cut', 'trench', 'backfill', 'spoil', 'patch'].includes(item));
  const priced = (rows: typeof takeoff) => costOf(rows, INVENTED_LIST, 0);
  expect(dug).toHaveLength(5);
  expect(priced(dug).missing).toEqual([]);
  expect(priced(dug).cost).toBeGreaterThan(1000);
  const rest = takeoff.filter((row) => !dug.includes(row));
  expect(dollars(file)).toBeCloseTo(priced(dug).cost + priced(rest).cost, 1);
  expect(saidOf(done).join(' ')).toMatch(/Of them 50' 0" lie in the ground, \d+' \d+" hang from steel that is drawn/);
});

test('where a beam spans the aisle the crossing hangs under it, and nothing is dug', () => {
  const bridge = { id: 'X1', from: [0, 15, 14.5] as const, to: [0, 52, 14.5] as const };
  const { file } = proposed(lot([], [...CANOPY, bridge]));
  expect(failing(file)).toEqual([]);
  expect(longestLoose(file)).toBeLessThanOrEqual(EVERY);
  expect(overheadBetween(file, 18, 42)).toBeGreaterThanOrEqual(24);
  expect(quantity(file, 'trench')).toBe(0);
  expect(dollars(file)).toBeLessThan(dollars(proposed(lot([])).file));
});

test('between beams without purlins what hangs gets stringers from beam to beam, which are counted and priced', () => {
  const done = proposed(lot([], BEAMS));
  const { file } = done;
  expect(failing(file)).toEqual([]);
  expect(longestLoose(file)).toBeLessThanOrEqual(EVERY);
  const stringers = file.members!.slice(BEAMS.length);
  expect(stringers.length).toBeGreaterThan(0);
  const feet = stringers.reduce((sum, { from, to }) => sum + Math.hypot(to[0] - from[0], to[1] - from[1]), 0);
  for (const { from, to, stringer } of stringers) {
    expect(stringer).toBe(true);
    // From one line of beams to the next.
    for (const [x, , z] of [from, to]) expect([x % 27, z]).toEqual([0, 13]);
    expect(Math.abs(to[0] - from[0])).toBe(27);
  }
  // With the 5 % of waste that raceways have.
  expect(quantity(file, 'stringer')).toBeCloseTo(1.05 * feet, 6);
  const loose = { ...file, members: BEAMS };
  expect(longestLoose(loose)).toBeGreaterThan(EVERY);
  expect(saidOf(done).join(' ')).toMatch(/from stringers, \d+ pieces of them put in and priced/);
});

test('where keep-outs shut the ground too, what hangs in the air is told with what forces it', () => {
  const shut: SiteFile['keepouts'] = [
    {
      id: 'K1',
      outline: [
        [-200, 25],
        [300, 25],
        [300, 30],
        [-200, 30],
      ],
      to: 2,
      blocks: ['raceway'],
    },
  ];
  const done = proposed({ ...lot([]), keepouts: shut });
  const loose = unsupported(done.file);
  expect(loose).toHaveLength(1);
  const said = saidOf(done);
  expect(said.some((says) => says.startsWith(`Raceway ${loose[0]} hangs from nothing over`))).toBe(true);
  expect(said.join(' ')).toContain('neither steel that is drawn nor the ground leads there');
  expect(done.parts.flatMap(({ says }) => says).some((says) => says.startsWith('Forced:'))).toBe(true);
});

test('on a site without steel the proposal says what it takes to be held, and that nobody looked at it', () => {
  const said = saidOf(proposed(lot([], [])));
  expect(said.join(' ')).toContain('No steel is drawn');
  expect(said.join(' ')).toContain('nobody looked at');
});
