import { describe, expect, test } from 'vitest';
import { alternativeOf } from '../../../../calc/plan/compared/alternative.ts';
import { plan } from '../../../../calc/plan/plan.ts';
import { INVENTED_LIST } from '../../../../calc/prices/invented-list.ts';
import { mend } from '../../../../calc/propose/anew/mend.ts';
import { propose } from '../../../../calc/propose/propose.ts';
import { startSite } from '../../../../calc/propose/start-site.ts';
import type { SiteFile } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';

const LOT = propose(startSite({ name: 'Eight', stalls: 8, rows: 2 }), {
  what: 'all',
  cordsADrop: 1,
  prices: INVENTED_LIST,
  answers: 0,
}).file;

const worst = (file: SiteFile): number =>
  Math.max(...plan(toSite(file)).circuits.map(({ worstDropPercent }) => worstDropPercent));

const within = (file: SiteFile, total: number): SiteFile => ({
  ...file,
  rules: { ...file.rules, dropLimit: { ...file.rules?.dropLimit, total } },
});

const dollars = (file: SiteFile): number => alternativeOf('', toSite(file), INVENTED_LIST).cost.price;

/** Chargers that see more than the limit. */
const over = (file: SiteFile): readonly string[] =>
  plan(toSite(file)).findings.flatMap(({ rule, about }) => (rule === 'total-drop' ? about : []));

describe('where the drop in volts comes past its limit', () => {
  const limit = worst(LOT) - 0.2;
  const file = within(LOT, limit);
  const { broken, left, mended } = mend(file, LOT, INVENTED_LIST)!;

  test('larger conductors hold it, of what is cheapest to make larger, and every way stays', () => {
    expect(broken.chargers.length).toBeGreaterThan(0);
    expect(left.fails).toBeGreaterThan(0);
    expect(mended!.fails).toBe(0);
    expect(mended!.says).toMatch(/Larger conductors of/);
    expect(over(mended!.file)).toEqual([]);
    expect(mended!.price).toBe(dollars(mended!.file));
    expect(mended!.price).toBeGreaterThan(left.price);
    const paths = (one: SiteFile): unknown => plan(toSite(one)).runs.map(({ path }) => path);
    expect(paths(mended!.file)).toEqual(paths(file));
  });

  test('it costs no more than the next size of the feeder, or a lower limit of drop for the branches, that hold it too', () => {
    const byBranches = [2, 1.5, 1, 0.75, 0.5].map(
      (branchDrop): SiteFile => ({
        ...file,
        chargers: file.chargers!.map((one) => (broken.chargers.includes(one.id) ? { ...one, branchDrop } : one)),
      }),
    );
    const bySets = {
      ...file,
      feeders: file.feeders!.map((one) => ({ ...one, conductor: { ...one.conductor, sets: one.conductor.sets + 1 } })),
    };
    const hold = [...byBranches, bySets].filter((one) => over(one).length === 0);
    expect(hold.length).toBeGreaterThan(0);
    for (const one of hold) expect(mended!.price).toBeLessThanOrEqual(dollars(one) + 0.005);
  });
});

test('a drop that was moved so far that its way takes too much drop gets the way and larger conductors at once', () => {
  const limit = worst(LOT) + 0.02;
  const before = within(LOT, limit);
  const far = plan(toSite(LOT)).circuits.reduce((a, b) => (b.worstDropPercent > a.worstDropPercent ? b : a));
  const { drop } = LOT.chargers!.find(({ id }) => id === far.charger)!;
  const file: SiteFile = {
    ...before,
    drops: before.drops!.map((one) => {
      if (one.id !== drop) return one;
      const to = ([x, y, z]: readonly [number, number, number]): [number, number, number] => [x, y + 7, z];
      return { ...one, box: to(one.box), ...(one.retractor && { retractor: to(one.retractor) }) };
    }),
  };
  const { mended, broken } = mend(file, before, INVENTED_LIST)!;
  expect(broken.chargers).toContain(far.charger);
  expect(mended!.fails).toBe(0);
  expect(over(mended!.file)).toEqual([]);
});
