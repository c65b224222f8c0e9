import { describe, expect, test } from 'vitest';
import { purchaseSheet } from '../../../calc/sheets/cost/purchase-sheet.ts';
import { buyWords } from '../../../calc/takeoff/buying/buy-words.ts';
import { PACKAGES, packageOf, packOf } from '../../../calc/takeoff/buying/packages.ts';
import { pullSchedule } from '../../../calc/takeoff/buying/pull-schedule.ts';
import { purchaseOf } from '../../../calc/takeoff/buying/purchase.ts';
import { plannedSample } from '../../outside/sheets/planned-samples.ts';

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

describe.each(['library-pedestals', 'fleet-yard'])('what is bought for %s', (name) => {
  const { site, planned } = plannedSample(name);
  const lines = purchaseOf(planned.takeoff);

  test('is every item of the takeoff but work, once, in the order of the packages', () => {
    const wanted = planned.takeoff.filter(({ item }) => packageOf(item) !== null);
    for (const { item, spec, parts } of wanted) {
      // The feeder's conduit may be in one line with that of the branches.
      const names = item === 'feeder raceway' ? [item, 'raceway'] : [item];
      const own = lines.filter((line) => names.includes(line.item) && line.spec === spec);
      expect(own.length, `${item} ${spec}`).toBeGreaterThan(0);
      if (item.endsWith('raceway')) continue;
      expect(sum(own.map(({ needed }) => needed)), `${item} ${spec}`).toBeCloseTo(
        sum(parts.map(({ quantity }) => quantity)),
        6,
      );
    }
    const places = lines.map((line) => PACKAGES.indexOf(line.package));
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });

  test('has the sticks and reels of the takeoff, and what is left over of them', () => {
    for (const bought of ['stick', 'reel'] as const) {
      const rows = planned.takeoff.filter(({ item }) => item === (bought === 'reel' ? 'reel' : 'raceway stick'));
      const own = lines.filter((line) => line.bought === bought && !['threaded rod', 'stringer'].includes(line.item));
      expect(sum(own.map(({ buy }) => buy))).toBe(sum(rows.map(({ quantity }) => quantity)));
      for (const { buy, each, needed, left } of own) expect(left).toBeCloseTo(buy * each! - needed, 6);
    }
  });

  test('is told row by row: so many sticks and reels, with what is left over, and nothing for work', () => {
    for (const row of planned.takeoff) {
      const { buy, left } = buyWords(row, site.units);
      if (packageOf(row.item) === null) expect([row.item, buy, left]).toEqual([row.item, '', '']);
      else expect(buy, `${row.item} ${row.spec}`).toMatch(/^[\d,]+( ft)?(: |, |$)/);
      if (row.bought === undefined || row.bought.stock === 0) continue;
      const [, many] = /: ([\d,]+) (?:stick|reel)s? of /.exec(buy) ?? [];
      if (many) expect(Number(many.replace(',', '')) * row.bought.stock).toBeCloseTo(row.bought.quantity, 6);
    }
  });

  test('has lead times and submittals on its gear', () => {
    const gear = lines.filter(({ item }) => ['panelboard', 'switchboard', 'transformer'].includes(item));
    for (const { leadWeeks, submittal } of gear) expect([leadWeeks > 0, submittal]).toEqual([true, true]);
    expect(lines.find(({ item }) => item === 'coupling')?.leadWeeks ?? 0).toBe(0);
  });

  test('is pulled as the schedule says: each circuit and each grounding conductor once, from reels that hold them', () => {
    const pulls = pullSchedule(site, planned);
    const circuits = pulls.filter(({ kind }) => kind === 'circuit');
    expect(circuits.map(({ of }) => of).sort()).toEqual(planned.circuits.map(({ charger }) => charger).sort());
    const greens = pulls.filter(({ kind }) => kind === 'grounding').flatMap(({ through }) => through);
    expect(greens.sort()).toEqual(planned.conduits.map(({ id }) => id).sort());
    const lengths = new Map(planned.runs.map(({ charger, conductorLength }) => [charger, conductorLength!]));
    for (const { of, feet, colors, reels } of circuits) {
      expect(feet - lengths.get(of)!).toBeGreaterThanOrEqual(-1e-9);
      expect(feet - lengths.get(of)!).toBeLessThan(1);
      expect(reels).toHaveLength(colors.length);
    }
    const feeders = site.feeders.filter(({ existing }) => existing !== true);
    expect(pulls.filter(({ kind }) => kind === 'feeder')).toHaveLength(
      sum(feeders.map(({ conductor }) => conductor.sets)),
    );
  });

  test('names on each reel what is pulled from it, in the order of the schedule', () => {
    const turn = pullSchedule(site, planned).map(({ of }) => of);
    const reels = purchaseSheet(site, planned).filter((row) => String(row[6]).startsWith('reel'));
    expect(reels.length).toBeGreaterThan(0);
    for (const row of reels) {
      const places = String(row[11])
        .split(' ')
        .map((of) => turn.indexOf(of));
      expect(Math.min(...places)).toBeGreaterThanOrEqual(0);
      expect(places).toEqual([...places].sort((a, b) => a - b));
    }
  });
});

test('small conduit comes in bundles and its fittings in boxes, large by the piece; straps by the hundred', () => {
  expect(packOf('raceway', 0.5)).toEqual({ of: 10, called: 'bundle' });
  expect(packOf('coupling', 1)).toEqual({ of: 20, called: 'box' });
  expect(packOf('coupling', 3)).toBeNull();
  expect(packOf('strap', 0.75)).toEqual({ of: 100, called: 'box' });
  expect(packOf('panelboard', null)).toBeNull();
});

test.each([
  [
    { item: 'conductor', unit: 'ft', quantity: 1005, bought: { quantity: 1500, stock: 500, left: 543 } },
    '1,500 ft: 3 reels of 500 ft',
    '543 ft',
  ],
  [
    { item: 'raceway', unit: 'ft', quantity: 9, bought: { quantity: 10, stock: 10, left: 1.2 } },
    '10 ft: 1 stick of 10 ft',
    '1 ft',
  ],
  [
    { item: 'raceway', unit: 'ft', quantity: 14, bought: { quantity: 14.6, stock: 10, left: 0.6 } },
    '15 ft, of sticks of 10 ft',
    '0.6 ft',
  ],
  [
    { item: 'feeder conductor', unit: 'ft', quantity: 739, bought: { quantity: 744, stock: 0, left: 40 } },
    '744 ft, cut to length',
    '40 ft',
  ],
  [{ item: 'connector', unit: 'each', quantity: 60, spec: 'EMT 1 in' }, '60: 3 boxes of 20', ''],
  [{ item: 'trench', unit: 'ft', quantity: 60 }, '', ''],
])('%j is bought as %j, with %j left over', (row, buy, left) => {
  const parts = 'bought' in row ? [] : [{ of: 'X', quantity: row.quantity }];
  expect(buyWords({ spec: '', high: 0, basis: '', of: [], parts, ...row }, 'ft')).toEqual({ buy, left });
});
