import { describe, expect, test } from 'vitest';
import { reachFindings } from '../../../routing/checks/reach-findings.ts';
import { reachOf, reachOfChargers } from '../../../routing/reach/reach.ts';
import type { Reach } from '../../../routing/reach/reach-result.ts';
import type { Point2, SiteFile } from '../../../routing/site/site.ts';
import { one } from './reach-parts.ts';
import { CAR, charger, drop, inlet, row, siteOf, stall } from './sites.ts';

const only = (reach: readonly Reach[]): Reach => {
  expect(reach).toHaveLength(1);
  return reach[0]!;
};

describe('the reach of a charger', () => {
  // Drop at the head, 2 ft behind the bumper at y = 16; tail at y = 1; inlet heights 2.5 ft, 7.5 ft of fall.
  // Farthest: the front inlet of a car backed in, at (0, 1): round a corner (3, 16) and (3, 1), 3 ft in.
  test('is worked for every direction and inlet, and its worst case is the one with the least margin', () => {
    const { worst, cases, coverage, overVehicle } = only(
      reachOf(siteOf(one(CAR, { drops: [drop('D1', [0, 18, 10], { cord: 24 })] }))),
    );
    const plan = Math.hypot(3, 2) + 15 + 3;
    expect(cases).toHaveLength(10);
    expect(worst.direction).toBe('back-in');
    expect(worst.inlet).toBe('front');
    expect(worst.needed).toBeCloseTo(Math.hypot(plan, 7.5), 12);
    expect(worst.available).toBe(22);
    expect(worst.margin).toBeCloseTo(22 - Math.hypot(plan, 7.5), 12);
    expect(worst.inletAt).toEqual([0, 1, 2.5]);
    // The other nine lie nearer: 22 ft are enough for them, so one direction and one of five inlets is short.
    expect(coverage).toBeCloseTo(0.9, 12);
    expect(overVehicle).toBeNull();
  });

  test('goes round the vehicles of other stalls, each taken as occupied, and round columns', () => {
    const side = (parts: Partial<SiteFile>) =>
      only(
        reachOf(
          siteOf(
            one(
              { ...CAR, inlets: [inlet('rear-left', 'left', 1)] },
              { stalls: [stall('S1', [0, 0], { parking: 'nose-in' })], drops: [drop('D1', [-20, 1, 10])], ...parts },
            ),
          ),
        ),
      ).worst;
    expect(side({}).needed).toBeCloseTo(Math.hypot(17, 7.5), 12);
    const between = stall('S2', [-10, -8], { vehicle: 'car' });
    const stalls = [stall('S1', [0, 0], { parking: 'nose-in' as const }), between];
    // The neighbour's car stands from y = -7 to 8, 3 ft to either side of x = -10: the way round its head is
    // (-20, 1) (-13, 8) (-7, 8) (-3, 1).
    const round = Math.hypot(7, 7) + 6 + Math.hypot(4, 7);
    expect(side({ stalls }).needed).toBeCloseTo(Math.hypot(round, 7.5), 12);
    const columns = [{ id: 'K1', at: [-10, 1] as const, size: [2, 2] as const, rotation: 45 }];
    const half = Math.SQRT2;
    const past = Math.hypot(10, half) + Math.hypot(7, half);
    expect(side({ columns }).needed).toBeCloseTo(Math.hypot(past, 7.5), 12);
  });

  test('goes straight over a vehicle that the retractor hangs over, and says which', () => {
    const over = drop('D1', [0, 8, 10]);
    const { worst, overVehicle } = only(reachOf(siteOf(one(CAR, { drops: [over] }))));
    expect(overVehicle).toBe('S1');
    // The front inlet nose-in, 8 ft ahead; the corners are nearer.
    expect(worst.needed).toBeCloseTo(Math.hypot(8, 7.5), 12);
    expect(worst.path).toEqual([
      [0, 8],
      [0, 16],
    ]);
  });

  test('from a retractor over the very edge of a vehicle goes round it: the edge is not inside', () => {
    const { overVehicle, worst } = only(reachOf(siteOf(one(CAR, { drops: [drop('D1', [0, 16, 10])] }))));
    expect(overVehicle).toBeNull();
    expect(worst.needed).toBeCloseTo(Math.hypot(3 + 15 + 3, 7.5), 12);
  });

  test('starts at the retractor, with the way there from the box and the slack taken off the cord', () => {
    const away = drop('D1', [0, 22, 13], { retractor: [0, 18, 10], cord: 24 });
    const { worst } = only(reachOf(siteOf(one(CAR, { drops: [away], rules: { cordSlack: 1.5 } }))));
    expect(worst.available).toBe(24 - 5 - 1.5);
    expect(worst.path[0]).toEqual([0, 18]);
  });

  test('has no needed length where columns wall the retractor in, and covers nothing then', () => {
    const columns = [
      { id: 'K1', at: [0, 20] as Point2, size: [6, 1] as Point2 },
      { id: 'K2', at: [0, 17] as Point2, size: [6, 1] as Point2 },
      { id: 'K3', at: [-2.5, 18.5] as Point2, size: [1, 4] as Point2 },
      { id: 'K4', at: [2.5, 18.5] as Point2, size: [1, 4] as Point2 },
    ];
    const shut = siteOf(one(CAR, { columns }));
    const reach = reachOf(shut);
    expect(only(reach)).toMatchObject({
      coverage: 0,
      worst: { needed: null, margin: null, path: [], hang: null, direction: 'nose-in', inlet: 'rear-left' },
    });
    expect(reachFindings(shut).find(({ rule }) => rule === 'reach')?.says).toContain('no way round');
    const { cases } = only(reach);
    expect(JSON.parse(JSON.stringify(reach))).toEqual([{ ...only(reach), cases }]);
  });

  test('gives the chargers in their order, and each one its stalls in its own', () => {
    const site = siteOf({
      ...row(3),
      vehicles: { car: CAR },
      chargers: [charger('C2', 'D1', ['S2', 'S0']), charger('C1', 'D0', ['S1']), charger('C3', 'D2', [])],
    });
    expect(reachOf(site).map(({ charger: c, stall: s }) => [c, s])).toEqual([
      ['C2', 'S2'],
      ['C2', 'S0'],
      ['C1', 'S1'],
    ]);
  });

  test('may be worked some chargers at a time, to the same objects', () => {
    const site = siteOf({ ...row(4), vehicles: { car: CAR } });
    const slices = [...reachOfChargers(site, 0, 3), ...reachOfChargers(site, 3, site.chargers.length)];
    const whole = reachOf(site);
    expect(slices.length).toBe(whole.length);
    whole.forEach((reach, i) => {
      expect(reach).toBe(slices[i]);
    });
    expect(() => reachOfChargers(site, 98, 99)).toThrow(RangeError);
  });
});
