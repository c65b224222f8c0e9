import { describe, expect, test } from 'vitest';
import { reachOf } from '../../../routing/reach/reach.ts';
import { reachRegion } from '../../../routing/reach/region.ts';
import type { Point2, Point3 } from '../../../routing/site/site.ts';
import { charger, drop, inlet, siteOf, stall } from '../../routing/reach/sites.ts';
import { withinReach } from '../../routing/reach/within-reach.ts';
import stored from './pedestals.json';

/** A stored lot with its one pedestal. */
function siteFor({ car, stalls, own, box, cord }: (typeof stored.cases)[number]) {
  return siteOf({
    vehicles: {
      car: {
        length: car.length,
        width: car.width,
        height: car.height,
        inlets: [inlet('one', car.side as 'left' | 'right', car.along, car.inletHeight)],
      },
    },
    stalls: stalls.map(({ at, heading }, i) => stall(`S${i}`, at as unknown as Point2, { heading })),
    drops: [drop('D1', box as unknown as Point3, { cord, mount: 'pedestal' })],
    chargers: [charger('C1', 'D1', [`S${own}`])],
  });
}

describe('cords of pedestals, by shapely and networkx', () => {
  test('go down to the foot, along the ground and up to the inlet', () => {
    expect(stored.cases).toHaveLength(24);
    const arrive = stored.cases.flatMap((one) => one.rows.map(({ margin }) => margin >= 0));
    // Both answers are asked for.
    expect(new Set(arrive).size).toBe(2);
    for (const one of stored.cases) {
      const [reach] = reachOf(siteFor(one));
      expect(reach!.coverage).toBeCloseTo(one.coverage, 9);
      one.rows.forEach((row, i) => {
        expect(reach!.cases[i]!.direction).toBe(row.direction);
        expect(reach!.cases[i]!.needed).toBeCloseTo(row.needed, 6);
        expect(reach!.cases[i]!.margin).toBeCloseTo(row.margin, 6);
      });
    }
  });

  test('reach as far in the drawn region as their plan length allows', () => {
    for (const one of stored.cases) {
      const site = siteFor(one);
      const left = one.cord - 2 - one.box[2]! - one.car.inletHeight;
      const away = 1000;
      // Far from every car the region is a disc of what is left after the way down and up.
      const alone = siteOf({
        drops: [drop('D1', [away, 0, one.box[2]!], { cord: one.cord, mount: 'pedestal' })],
      });
      expect(withinReach(alone, 'D1', [away + left - 1e-6, 0], one.car.inletHeight)).toBe(true);
      expect(withinReach(alone, 'D1', [away + left + 1e-6, 0], one.car.inletHeight)).toBe(false);
      const far = reachRegion(site, 'D1', one.car.inletHeight).flat();
      for (const [x, y] of far) expect(Math.hypot(x - one.box[0]!, y - one.box[1]!)).toBeLessThanOrEqual(left + 1e-6);
    }
  });
});
