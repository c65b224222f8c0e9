import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { designOf } from '../../../calc/branches/design.ts';
import { equipmentBranches } from '../../../calc/branches/equipment-branches.ts';
import { homeRun } from '../../../calc/branches/home-runs/home-run.ts';
import { type GroupingTask, leastGrouping } from '../../../calc/branches/home-runs/least-grouping.ts';
import { sharedBetween, travelOrder } from '../../../calc/branches/home-runs/travel-order.ts';
import type { ConduitWay } from '../../../calc/branches/way.ts';
import { runsOf } from '../../../routing/network/runs.ts';
import type { Point3, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { anyLot, trunkLot } from './lots.ts';

/** Every way to put items in groups of at most `most`. */
function* groupings(items: readonly number[], most: number): Generator<number[][]> {
  const [first, ...rest] = items;
  if (first === undefined) {
    yield [];
    return;
  }
  for (const others of groupings(rest, most)) {
    yield [[first], ...others];
    for (let i = 0; i < others.length; i++)
      if (others[i]!.length < most) yield others.map((group, j) => (i === j ? [first, ...group] : group));
  }
}

/** What the home runs of each panel cost as planned, and the ways to group them otherwise. */
function panelsOf(file: SiteFile) {
  const site = toSite(file);
  const design = designOf(site.rules);
  return equipmentBranches(site, runsOf(site).runs, design).map(({ homeRuns }) => {
    const ways = homeRuns.flatMap(({ homeRun }) => homeRun.ways);
    const travel = travelOrder(ways);
    const costOf = (members: readonly number[]): number => {
      const ascending = [...members].sort((a, b) => a - b);
      const own = ascending.map((place) => travel.ways[place]!);
      return homeRun(design, own, sharedBetween(travel, ascending))?.cost ?? Infinity;
    };
    const placeOf = (way: ConduitWay): number => travel.ways.indexOf(way);
    return {
      planned: homeRuns.reduce((sum, { homeRun: { ways: own } }) => sum + costOf(own.map(placeOf)), 0),
      count: ways.length,
      costOf,
      most: site.rules.circuitsPerConduit,
      byId: ways
        .map((way) => way)
        .sort((a, b) => (a.charger.id < b.charger.id ? -1 : 1))
        .map(placeOf),
    };
  });
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

describe('sharing conduits', () => {
  test('costs no more than any other grouping of up to six circuits', () => {
    fc.assert(
      fc.property(anyLot({ mostChargers: 6 }), (file) => {
        for (const { planned, count, costOf, most } of panelsOf(file)) {
          const all = Array.from({ length: count }, (_, i) => i);
          for (const grouping of groupings(all, most))
            expect(planned).toBeLessThanOrEqual(sum(grouping.map(costOf)) + 1e-4);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('costs no more than a conduit for each circuit or than a fixed number to a conduit', () => {
    fc.assert(
      fc.property(anyLot({ mostChargers: 30 }), (file) => {
        for (const { planned, byId, costOf, most } of panelsOf(file)) {
          for (let size = 1; size <= most; size++) {
            const fixed = Array.from({ length: Math.ceil(byId.length / size) }, (_, i) =>
              byId.slice(i * size, (i + 1) * size),
            );
            expect(planned).toBeLessThanOrEqual(sum(fixed.map(costOf)) + 1e-4);
          }
        }
      }),
      { numRuns: 40 },
    );
  });

  test('on a trunk of like chargers the farthest travel together', () => {
    const file = trunkLot([50, 60, 70, 80, 90, 100, 110]);
    const [panel] = panelsOf(file);
    const site = toSite(file);
    const [branches] = equipmentBranches(site, runsOf(site).runs, designOf(site.rules));
    const groups = branches!.homeRuns.map(({ homeRun: { ways } }) => ways.map(({ charger }) => charger.id));
    expect(groups).toContainEqual(['C5', 'C6', 'C7']);
    expect(panel!.planned).toBeGreaterThan(0);
  });
});

/** Ids of the chargers of each home run, and the size of its first conduit. */
const homeRunsOf = (file: SiteFile, panel: string) => {
  const site = toSite(file);
  const own = equipmentBranches(site, runsOf(site).runs, designOf(site.rules)).find(
    (one) => one.equipment.id === panel,
  );
  return own!.homeRuns.map(({ circuits, conduits }) => [
    circuits.map(({ charger, conductor }) => `${charger} ${conductor.size}`),
    conduits.map(({ tradeSize, length }) => `${tradeSize} ${length.toFixed(6)}`),
  ]);
};

describe('two panels whose branches look alike', () => {
  const taps = [40, 55, 70, 85, 100, 115, 130, 145, 160, 175, 190, 205];
  /** A trunk beside another: ids with a prefix, moved by so many feet. */
  const trunk = (prefix: string, y: number): SiteFile => {
    const own = trunkLot(taps);
    const at = ([x, , z]: Point3): Point3 => [x, y, z];
    return {
      ...own,
      raceways: own.raceways!.map((one) => ({ ...one, id: `${prefix}R`, path: one.path.map(at) })),
      equipment: own.equipment!.map((one) => ({ ...one, id: `${prefix}P`, at: [0, y], entry: at(one.entry!) })),
      drops: own.drops!.map((one) => ({ ...one, id: `${prefix}${one.id}`, box: at(one.box) })),
      chargers: own.chargers!.map((one) => ({
        ...one,
        id: `${prefix}${one.id}`,
        drop: `${prefix}${one.drop}`,
        from: `${prefix}P`,
      })),
    };
  };
  const together = (a: SiteFile, b: SiteFile): SiteFile => ({
    ...a,
    raceways: [...a.raceways!, ...b.raceways!],
    equipment: [...a.equipment!, ...b.equipment!],
    drops: [...a.drops!, ...b.drops!],
    chargers: [...a.chargers!, ...b.chargers!],
    pullpoints: [...(a.pullpoints ?? []), ...(b.pullpoints ?? [])],
  });
  const other = trunk('B', 40);
  const ways: readonly (readonly [string, SiteFile])[] = [
    ['nothing', other],
    ['the load', { ...other, chargers: other.chargers!.map((one) => ({ ...one, amps: 80 })) }],
    ['the pilots', { ...other, chargers: other.chargers!.map((one) => ({ ...one, pilot: true })) }],
    ['the method', { ...other, raceways: other.raceways!.map((one) => ({ ...one, method: 'PVC80' })) }],
    ['how warm it is', { ...other, raceways: other.raceways!.map((one) => ({ ...one, ambientC: 60 })) }],
    ['a roof below', { ...other, raceways: other.raceways!.map((one) => ({ ...one, aboveRoof: 0.02 })) }],
    ['a pull point', { ...other, pullpoints: [{ id: 'PB', at: [62, 40, 10] }] }],
    ['names in another order', { ...other, chargers: other.chargers!.map((one, i) => ({ ...one, id: `B${99 - i}` })) }],
    ['one box', { ...other, drops: other.drops!.map((one, i) => (i === 3 ? { ...one, box: [82, 40, 10] } : one)) }],
  ];
  test.each(ways)('but for %s are each grouped as if it were alone', (_, file) => {
    const both = together(trunk('A', 0), file);
    expect(homeRunsOf(both, 'BP')).toEqual(homeRunsOf(file, 'BP'));
    expect(homeRunsOf(both, 'AP')).toEqual(homeRunsOf(trunk('A', 0), 'AP'));
  });
});

describe('least grouping', () => {
  /** Costs that know only who is in the group: nothing that an order could help with. */
  const anyTask = (count: number): fc.Arbitrary<GroupingTask> =>
    fc.record({ most: fc.integer({ min: 1, max: 4 }), seed: fc.nat(1e6) }).map(({ most, seed }) => ({
      count,
      most,
      costOf: (members) => {
        let hash = seed;
        for (const member of members) hash = (hash * 1103515245 + member * 12345 + 7) % 2147483648;
        return 1 + (hash % 1000) / 250 + members.length / 2;
      },
      others: [],
      isOpen: () => true,
    }));

  test('is the least of all up to seven items', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 7 }).chain(anyTask), (task) => {
        const found = sum(leastGrouping(task).map((members) => task.costOf(members)));
        const all = Array.from({ length: task.count }, (_, i) => i);
        let least = Infinity;
        for (const grouping of groupings(all, task.most)) least = Math.min(least, sum(grouping.map(task.costOf)));
        expect(found).toBeCloseTo(least, 5);
      }),
      { numRuns: 60 },
    );
  });

  test('beyond ten items puts each in one group of a size that is allowed', () => {
    fc.assert(
      fc.property(fc.integer({ min: 11, max: 30 }).chain(anyTask), (task) => {
        const groups = leastGrouping(task);
        expect(groups.flat().sort((a, b) => a - b)).toEqual(Array.from({ length: task.count }, (_, i) => i));
        expect(Math.max(...groups.map(({ length }) => length))).toBeLessThanOrEqual(task.most);
      }),
      { numRuns: 30 },
    );
  });
});
