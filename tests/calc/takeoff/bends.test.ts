import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { elbowsFor, isBent } from '../../../calc/takeoff/conduits/bends.ts';
import type { Method } from '../../../routing/site/schema/vocabulary.ts';
import type { Point3, SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { box } from '../../routing/network/sites.ts';
import { trunkLot } from '../branches/lots.ts';

describe('elbows by the angle that is there', () => {
  test.each([
    [90, [90]],
    [88, [90]],
    [60, [60]],
    [58, [60]],
    [45, [45]],
    [22, [22.5]],
    // Two that add up, of the fewest kinds that come nearest.
    [75, [60, 15]],
    [120, [90, 30]],
    [135, [90, 45]],
    [105, [90, 15]],
    [180, [90, 90]],
    [3, []],
  ])('%f degrees', (degrees, elbows) => {
    expect(elbowsFor(degrees)).toEqual(elbows);
  });

  test('come within a few degrees of any corner to 120, and within 15 of any', () => {
    fc.assert(
      fc.property(fc.double({ min: 4, max: 180, noNaN: true }), (degrees) => {
        const off = Math.abs(elbowsFor(degrees).reduce((sum, one) => sum + one, 0) - degrees);
        expect(off).toBeLessThanOrEqual(degrees <= 120 ? 7.25 : 15);
      }),
    );
  });
});

test('steel is bent on the job up to the size of the rule, plastic not at all, and tray has no size', () => {
  expect([isBent('EMT', '1-1/4', '1-1/4'), isBent('EMT', '1-1/2', '1-1/4')]).toEqual([true, false]);
  expect([isBent('RMC', '1/2', '1/2'), isBent('PVC40', '1/2', '2')]).toEqual([true, false]);
  expect([isBent('tray', null, '2'), isBent('EMT', '1/2', 'none')]).toEqual([false, false]);
});

describe('a spur that leaves a trunk at 60 degrees', () => {
  // 40 ft along the trunk, then 20 ft at 60 degrees.
  const corner: Point3 = [40, 0, 10];
  const end: Point3 = [50, 17.32050808, 10];
  const lot = (method: Method, size?: '2'): SiteFile =>
    trunkLot([50], {
      drops: [box('D1', end)],
      raceways: [
        {
          id: 'R1',
          path: [[0, 0, 10], corner, end],
          method,
          place: size === undefined ? 'overhead' : 'underground',
        },
      ],
      ...(size && { rules: { undergroundTradeSize: size } }),
    });
  const items = (file: SiteFile, item: string): [string, number][] =>
    plan(toSite(file))
      .takeoff.filter((row) => row.item === item)
      .map(({ spec, quantity }) => [spec, quantity]);

  test('has an elbow of 60 degrees in plastic: six belled sticks and one coupling at the elbow', () => {
    expect(items(lot('PVC40'), 'elbow')).toEqual([['PVC40 1/2 in, 60 degrees', 1]]);
    expect(items(lot('PVC40'), 'coupling')).toEqual([['PVC40 1/2 in', 1]]);
    expect(items(lot('PVC40'), 'field bend')).toEqual([]);
  });

  test('is bent in EMT of 1/2 in.: 60 ft in six sticks have five couplings', () => {
    expect(items(lot('EMT'), 'field bend')).toEqual([['EMT 1/2 in', 1]]);
    expect(items(lot('EMT'), 'coupling')).toEqual([['EMT 1/2 in', 5]]);
  });

  test.each([
    ['none', [['EMT 1/2 in, 60 degrees', 1]], []],
    ['1/2', [], [['EMT 1/2 in', 1]]],
  ] as const)(
    'a site where %s is the largest that is bent buys elbows %j and bends %j',
    (bentTradeSize, elbows, bends) => {
      const file = { ...lot('EMT'), rules: { bentTradeSize } };
      expect(items(file, 'elbow')).toEqual(elbows);
      expect(items(file, 'field bend')).toEqual(bends);
    },
  );

  test('has an elbow in EMT of 2 in.: three couplings in 40 ft, one in 20 and two at the elbow', () => {
    expect(items(lot('EMT', '2'), 'elbow')).toEqual([['EMT 2 in, 60 degrees', 1]]);
    expect(items(lot('EMT', '2'), 'coupling')).toEqual([['EMT 2 in', 3 + 1 + 2]]);
  });
});
