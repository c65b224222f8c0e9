import { beforeEach, expect, test, vi } from 'vitest';
import { commissioning } from '../../../calc/field/commissioning/commissioning.ts';
import { plan } from '../../../calc/plan/plan.ts';
import { feederProspects } from '../../../calc/supply/feeders/feeder-prospects.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { makeLot } from '../../bench/make-lot.ts';

/** What the time of sheets goes by, counted: seconds are another machine's. */
const count = vi.hoisted(() => ({ solutions: 0, options: 0 }));

vi.mock('../../../calc/supply/load-flow/sweep.ts', async (original) => {
  const real = await original<typeof import('../../../calc/supply/load-flow/sweep.ts')>();
  const solve: typeof real.solve = (...args) => {
    count.solutions++;
    return real.solve(...args);
  };
  return { ...real, solve };
});
vi.mock('../../../calc/supply/feeders/feeder-options.ts', async (original) => {
  const real = await original<typeof import('../../../calc/supply/feeders/feeder-options.ts')>();
  const feederOptions: typeof real.feederOptions = (...args) => {
    count.options++;
    return real.feederOptions(...args);
  };
  return { ...real, feederOptions };
});

beforeEach(() => {
  count.solutions = 0;
  count.options = 0;
});

const LOT = toSite(makeLot({ name: 'made', stalls: 120, perCanopy: 40 }));

test('volts at boxes are solved once for all chargers of a board that lie across its lines and draw as much', () => {
  const planned = plan(LOT);
  expect(planned.branches.length).toBeGreaterThan(0);
  const before = count.solutions;
  const sheets = commissioning(LOT, planned);
  expect(sheets.filter(({ kind }) => kind === 'charger')).toHaveLength(120);
  // Three boards of three pairs of lines, and all off; the supply itself is solved along the way.
  const supplies = 3;
  expect(count.solutions - before).toBeLessThanOrEqual(3 * 3 + 1 + supplies);
});

test('ways to use feeders that stand are worked once for all that are alike', () => {
  const prospects = feederProspects(LOT);
  expect(prospects).toHaveLength(3);
  expect(count.options).toBe(1);
  const ways = prospects.map((one) => (one.ok ? one.ways : []));
  expect(ways[0]!.length).toBeGreaterThan(5);
  expect(ways[1]).toEqual(ways[0]);
  // Another length is another feeder.
  const [first, ...others] = LOT.feeders;
  const longer = { ...LOT, feeders: [{ ...first!, length: 400 }, ...others] };
  const [other] = feederProspects(longer);
  expect(count.options).toBe(2);
  expect(other!.ok && other!.ways[0]!.worstDropPercent).not.toBe(ways[0]![0]!.worstDropPercent);
});
