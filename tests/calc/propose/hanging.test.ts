import { expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { propose, type What } from '../../../calc/propose/propose.ts';
import { costOf } from '../../../calc/takeoff/cost.ts';
import type { Point3, Raceway, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { doubleRows, PITCH } from './hand/lots.ts';

const BEAMS = [0, 27, 54, 81, 108].map((x, i) => ({
  id: `B${i + 1}`,
  from: [x, -18, 13] as const,
  to: [x, 18, 13] as const,
}));
const CANOPY: NonNullable<SiteFile['members']> = [
  ...BEAMS,
  ...[-15, -9, -3, 3, 9, 15].map((y) => ({ id: `PU${y}`, from: [0, y, 13.5] as const, to: [108, y, 13.5] as const })),
];

/** Twenty-four stalls under a canopy, and their panel beyond the drive aisle, 24 ft wide. */
const lot = (raceways: readonly Raceway[], members: NonNullable<SiteFile['members']> = CANOPY): SiteFile => ({
  format: 'overrow/site',
  version: 1,
  units: 'ft',
  name: 'over the aisle',
  stalls: [1, -1].flatMap((side) =>
    Array.from({ length: 12 }, (_, i) => ({
      id: `S${side > 0 ? 'N' : 'S'}${i + 1}`,
      at: [i * 9 + 4.5, side * 18] as const,
      width: 9,
      depth: 18,
      heading: side > 0 ? 270 : 90,
    })),
  ),
  columns: [0, 27, 54, 81, 108].map((x, i) => ({ id: `C${i + 1}`, at: [x, 0], size: [1, 1], height: 13 })),
  members,
  aisles: [
    {
      id: 'A1',
      outline: [
        [-10, 18],
        [120, 18],
        [120, 42],
        [-10, 42],
      ],
    },
  ],
  equipment: [
    {
      id: 'P1',
      kind: 'panelboard',
      at: [0, 50],
      size: [3, 1, 6],
      entry: [0, 50, 2],
      volts: 208,
      phases: 3,
      busAmps: 800,
      mainAmps: 800,
      spaces: 84,
    },
  ],
  raceways,
});

const BURIED: Raceway = {
  id: 'U1',
  path: [
    [0, 50, 2],
    [0, 50, -2],
    [0, 0, -2],
    [0, 0, 2],
  ],
  method: 'PVC40',
  place: 'underground',
};
const TRUNK: Raceway = {
  id: 'T1',
  path: [
    [0, 0, 2],
    [0, 0, 11],
    [108, 0, 11],
  ],
  method: 'EMT',
  place: 'overhead',
};

const proposed = (file: SiteFile, what: What = 'all') => propose(file, { what, cordsADrop: 1, prices: INVENTED_LIST });
const failing = (file: SiteFile): string[] =>
  plan(toSite(file)).findings.flatMap(({ severity, says }) => (severity === 'fail' ? [says] : []));
const unsupported = (file: SiteFile): string[] =>
  plan(toSite(file)).findings.flatMap(({ rule, about }) => (rule === 'unsupported' ? (about[0] ?? 'all') : []));
const quantity = (file: SiteFile, item: string): number =>
  plan(toSite(file)).takeoff.reduce((sum, row) => sum + (row.item === item ? row.quantity : 0), 0);
const dollars = (file: SiteFile): number => costOf(plan(toSite(file)).takeoff, INVENTED_LIST, 0).cost;
const saidOf = ({ parts }: ReturnType<typeof proposed>): readonly string[] =>
  parts.find(({ what }) => what === 'raceways')!.says;

/** EMT to 1 in. is supported each 10 ft (NEC 358.30(A)). */
const EVERY = 10;
/** The reach of a member, `hangReach` of the rules. */
const REACH = 3;

/**
 * The longest stretch of what hangs that no member holds, by places a tenth of a foot apart along it: an own look at
 * distances to line segments in the plan. Upright legs stand against something.
 */
function longestLoose({ raceways = [], members = [] }: SiteFile): number {
  let longest = 0;
  for (const { path, place } of raceways) {
    if (place !== 'overhead') continue;
    let loose = 0;
    path.slice(1).forEach((b, i) => {
      const a = path[i]!;
      const long = Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);
      if (Math.hypot(b[0] - a[0], b[1] - a[1]) < 0.01) {
        loose = 0;
        return;
      }
      const n = Math.ceil(long * 10);
      for (let k = 0; k < n; k++) {
        const t = (k + 0.5) / n;
        const at = [0, 1, 2].map((axis) => a[axis]! + (b[axis]! - a[axis]!) * t) as [number, number, number];
        const isHeld = members.some(({ from, to }) => {
          const [ux, uy] = [to[0] - from[0], to[1] - from[1]];
          const s = Math.min(1, Math.max(0, ((at[0] - from[0]) * ux + (at[1] - from[1]) * uy) / (ux * ux + uy * uy)));
          const level = from[2] + (to[2] - from[2]) * s;
          return Math.hypot(from[0] + ux * s - at[0], from[1] + uy * s - at[1]) <= REACH && level >= at[2];
        });
        loose = isHeld ? 0 : loose + long / n;
        longest = Math.max(longest, loose);
      }
    });
  }
  return longest;
}

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

/** Turned about the origin by quarters. */
function turned(file: SiteFile, quarters: number): SiteFile {
  const [c, s] = [
    [1, 0],
    [0, 1],
    [-1, 0],
    [0, -1],
  ][quarters]! as [number, number];
  const flat = ([x, y]: readonly [number, number]): [number, number] => [x * c - y * s, x * s + y * c];
  const space = ([x, y, z]: readonly [number, number, number]): [number, number, number] => [...flat([x, y]), z];
  return {
    ...file,
    stalls: file.stalls!.map((one) => ({ ...one, at: flat(one.at), heading: (one.heading + 90 * quarters) % 360 })),
    columns: file.columns!.map((one) => ({ ...one, at: flat(one.at) })),
    members: file.members!.map((one) => ({ ...one, from: space(one.from), to: space(one.to) })),
    aisles: file.aisles!.map((one) => ({ ...one, outline: one.outline.map(flat) })),
    equipment: file.equipment!.map((one) => ({
      ...one,
      at: flat(one.at),
      entry: space(one.entry),
      rotation: 90 * quarters,
    })),
    drops: file.drops!.map((one) => ({
      ...one,
      box: space(one.box),
      ...(one.retractor && { retractor: space(one.retractor) }),
    })),
  };
}

test('the raceways of a turned lot cost the same', () => {
  const drawn = proposed(lot([])).file;
  const bare: SiteFile = { ...drawn, raceways: [], pullpoints: [] };
  const straight = dollars(proposed(bare, 'raceways').file);
  const { file } = proposed(turned(bare, 1), 'raceways');
  expect(failing(file)).toEqual([]);
  expect(dollars(file) / straight).toBeCloseTo(1, 2);
});

test('a raceway that stands is filled first: two more circuits go into the conduit of one that has room for them, the rest beside it', () => {
  const all = proposed(lot([BURIED, TRUNK])).file;
  const { equipment } = all;
  const far = all.chargers!.toSorted((a, b) => place(all, b.drop)[0] - place(all, a.drop)[0]).slice(0, 5);
  const some = (n: number): SiteFile => {
    const chargers = far.slice(0, n);
    const drops = all.drops!.filter(({ id }) => chargers.some(({ drop }) => drop === id));
    return { ...lot([BURIED, TRUNK]), equipment: equipment!, drops, chargers };
  };
  const one = proposed(some(1), 'raceways').file;
  for (const n of [3, 5]) {
    const { file } = proposed({ ...some(n), raceways: one.raceways! }, 'raceways');
    expect(failing(file)).toEqual([]);
    // Nothing new lies beside what stands: neither in the trench nor along the trunk.
    for (const { path } of file.raceways!.slice(one.raceways!.length))
      for (const [, y, z] of path) expect([z > 0, Math.abs(y) <= 18]).toEqual([true, true]);
    const buried = plan(toSite(file)).conduits.filter(({ method }) => method === 'PVC40');
    const filled = buried.map(({ circuits }) => circuits.length).sort((a, b) => b - a);
    // Three circuits at most to a conduit: rule `circuitsPerConduit`.
    expect(filled).toEqual(n === 3 ? [3] : [3, 2]);
    expect(quantity(file, 'trench')).toBeCloseTo(quantity(one, 'trench'), 6);
  }
});

const place = ({ drops = [] }: SiteFile, id: string): Point3 => drops.find((one) => one.id === id)!.box;

test('canopies too small for a panel each share one, through a trench that is cheaper than another panel', () => {
  const ground = doubleRows({ volts: 208, away: 40, along: 1, canopies: 3 });
  const { file, parts } = proposed(ground);
  expect(failing(file)).toEqual([]);
  expect(file.equipment!.filter(({ kind }) => kind === 'panelboard').length).toBeLessThan(3);
  expect(parts.flatMap(({ says }) => says).join(' ')).toMatch(/\d+' 0" of them in the ground, where no steel leads on/);
  expect(longestLoose(file)).toBeLessThanOrEqual(EVERY);
  // A panel for each, as it was: each canopy by itself proposed and added up costs more.
  const apart = [0, 1, 2].map((k) => {
    const own = (y: number): boolean => Math.round(y / PITCH) === k;
    const only = proposed({
      ...ground,
      stalls: ground.stalls!.filter(({ at }) => own(at[1])),
      columns: ground.columns!.filter(({ at }) => own(at[1])),
      members: ground.members!.filter(({ from, to }) => own((from[1] + to[1]) / 2)),
    }).file;
    return dollars(only);
  });
  expect(dollars(file)).toBeLessThan(apart.reduce((sum, one) => sum + one, 0));
});
