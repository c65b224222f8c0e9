import { expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { doubleRows, PITCH } from './hand/lots.ts';
import {
  BURIED,
  dollars,
  EVERY,
  failing,
  longestLoose,
  lot,
  place,
  proposed,
  quantity,
  TRUNK,
} from './hanging-parts.ts';

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
