import { beforeEach, expect, test, vi } from 'vitest';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { propose, type What } from '../../../calc/propose/propose.ts';
import { placesTried } from '../../../calc/propose/shifted-whole.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { bareLot } from '../../bench/bare-lot.ts';
import { fleetYard } from '../../bench/samples/fleet-yard.ts';
import { HANDS } from './hand/hands.ts';

/** What takes the time of a proposal, counted: seconds are another machine's. */
const { count, counted } = vi.hoisted(() => {
  const count: Record<string, number> = {};
  const counted = <Args extends readonly unknown[], Answer>(name: string, work: (...args: Args) => Answer) => {
    count[name] = 0;
    return (...args: Args): Answer => {
      count[name]!++;
      return work(...args);
    };
  };
  return { count, counted };
});

vi.mock('../../../routing/propose/equipment/stands-free.ts', async (original) => {
  const real = await original<typeof import('../../../routing/propose/equipment/stands-free.ts')>();
  return {
    standsFreeOfGround: counted('room on the ground', real.standsFreeOfGround),
    standsFreeOfOthers: counted('room beside others', real.standsFreeOfOthers),
  };
});
vi.mock('../../../routing/propose/equipment/place-weights.ts', async (original) => {
  const real = await original<typeof import('../../../routing/propose/equipment/place-weights.ts')>();
  return {
    ...real,
    weightsOf: (...args: Parameters<typeof real.weightsOf>) => {
      const weights = real.weightsOf(...args);
      return {
        ...weights,
        weigh: (at: Parameters<typeof weights.weigh>[0]) => {
          count['places weighed whole'] = (count['places weighed whole'] ?? 0) + 1;
          return weights.weigh(at);
        },
      };
    },
  };
});
vi.mock('../../../routing/propose/equipment/propose-equipment.ts', async (original) => {
  const real = await original<typeof import('../../../routing/propose/equipment/propose-equipment.ts')>();
  return { ...real, proposeEquipment: counted('panels proposed', real.proposeEquipment) };
});
vi.mock('../../../routing/propose/shared-route.ts', async (original) => {
  const real = await original<typeof import('../../../routing/propose/shared-route.ts')>();
  return { ...real, sharedRoute: counted('routes searched', real.sharedRoute) };
});
vi.mock('../../../calc/plan/plan.ts', async (original) => {
  const real = await original<typeof import('../../../calc/plan/plan.ts')>();
  return { ...real, plan: counted('plans', real.plan) };
});

beforeEach(() => {
  for (const name of Object.keys(count)) count[name] = 0;
});

const proposed = (file: SiteFile, what: What): SiteFile =>
  propose(file, { what, cordsADrop: 1, prices: INVENTED_LIST }).file;

/** Half as much again as it takes. */
const most = (counts: Readonly<Record<string, number>>): void => {
  for (const [name, taken] of Object.entries(counts)) expect(count[name], name).toBeLessThanOrEqual(1.5 * taken);
};

test('room for a transformer is looked for on the ground once, whatever panels come to stand about it', () => {
  const { drops, chargers, raceways, pullpoints, feeders, loads, asBuilt, ...yard } = fleetYard();
  const source = yard.equipment!.filter(({ kind }) => kind === 'source');
  proposed({ ...yard, equipment: source }, 'equipment');
  most({ 'room on the ground': 46_600, 'room beside others': 1070, 'places weighed whole': 750, plans: 40 });
});

test('panels of a lot of many canopies take work by its stalls, not by their pairs', () => {
  proposed(bareLot(240), 'equipment');
  most({ 'room on the ground': 23_600, 'room beside others': 14_200, 'places weighed whole': 20_200, plans: 32 });
});

test('places that panels are moved to are no more than the lot is small', () => {
  expect(placesTried(1, 8)).toBe(10);
  for (const [panels, chargers] of [
    [2, 16],
    [6, 102],
    [12, 240],
    [50, 1200],
  ] as const)
    expect(panels * placesTried(panels, chargers) * chargers).toBeLessThanOrEqual(3600);
  expect(placesTried(12, 240)).toBe(0);
});

test('ways to set panels that are alike, and orders of drops, are weighed once each', () => {
  proposed(HANDS[16]().ground, 'all');
  // What a search that is stopped at once gives is planned too: drops as usual, their panels and routes.
  // Two panels are moved: where each stands and the places near it are told apart by two feeders, branches and six plans.
  const moved = 2 * (1 + placesTried(2, 16));
  most({
    'panels proposed': 7,
    'routes searched': 22 + 3 * moved,
    plans: 110 + 6 * moved,
    'places weighed whole': 564,
  });
});
