import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Point2 } from '../../../routing/site/site.ts';
import {
  boxInUnderlay,
  boxOnSite,
  inUnderlay,
  onSite,
  type Placement,
  scaledAbout,
  turnedAbout,
  turnToAxis,
} from '../../../web/underlay/placing/placement.ts';

const number = (most: number) => fc.double({ min: -most, max: most, noNaN: true });
const point = fc.tuple(number(3000), number(3000)) as fc.Arbitrary<Point2>;
const placement: fc.Arbitrary<Placement> = fc.record({
  at: point,
  origin: point,
  scale: fc.double({ min: 0.003, max: 50, noNaN: true }),
  rotation: number(720),
});
function near(a: Point2, b: Point2, off = 1e-6): void {
  expect(Math.hypot(a[0] - b[0], a[1] - b[1])).toBeLessThan(off * (1 + Math.hypot(...a)));
}

describe('a placing', () => {
  it('takes a point of the file to the site and back', () => {
    fc.assert(fc.property(placement, point, (placed, at) => near(inUnderlay(placed, onSite(placed, at)), at)));
  });
  it('scaled or turned about a point leaves it where it is', () => {
    fc.assert(
      fc.property(
        placement,
        point,
        fc.double({ min: 0.1, max: 10, noNaN: true }),
        number(360),
        (placed, at, factor, turn) => {
          const there = onSite(placed, at);
          near(onSite(scaledAbout(placed, there, factor), at), there);
          near(onSite(turnedAbout(placed, there, turn), at), there);
        },
      ),
    );
  });
  it('scaled by two points makes them as far apart as was typed', () => {
    fc.assert(
      fc.property(placement, point, point, fc.double({ min: 1, max: 900, noNaN: true }), (placed, a, b, typed) => {
        const [p, q] = [onSite(placed, a), onSite(placed, b)];
        const reads = Math.hypot(p[0] - q[0], p[1] - q[1]);
        fc.pre(reads > 1);
        const scaled = scaledAbout(placed, p, typed / reads);
        const [r, s] = [onSite(scaled, a), onSite(scaled, b)];
        expect(Math.abs(Math.hypot(r[0] - s[0], r[1] - s[1]) / typed - 1)).toBeLessThan(1e-6);
      }),
    );
  });
  it('squared up by two points brings them along an axis, by an eighth of a turn at most', () => {
    fc.assert(
      fc.property(placement, point, point, (placed, a, b) => {
        const [p, q] = [onSite(placed, a), onSite(placed, b)];
        fc.pre(Math.hypot(p[0] - q[0], p[1] - q[1]) > 1);
        const turn = turnToAxis(p, q);
        expect(Math.abs(turn)).toBeLessThanOrEqual(45 + 1e-9);
        const turned = turnedAbout(placed, p, turn);
        const [r, s] = [onSite(turned, a), onSite(turned, b)];
        expect(Math.min(Math.abs(r[0] - s[0]), Math.abs(r[1] - s[1]))).toBeLessThan(1e-5 * (1 + Math.hypot(...p)));
      }),
    );
  });
  it('has boxes that hold what they go round', () => {
    const box = { minX: -3, minY: 2, maxX: 9, maxY: 30 };
    const placed: Placement = { at: [5, 5], origin: [1, 1], scale: 2, rotation: 90 };
    const site = boxOnSite(placed, box);
    for (const [side, to] of Object.entries({ minX: -53, minY: -3, maxX: 3, maxY: 21 }))
      expect(site[side as keyof typeof site]).toBeCloseTo(to, 9);
    const back = boxInUnderlay(placed, site);
    for (const [side, to] of Object.entries(box)) expect(back[side as keyof typeof back]).toBeCloseTo(to, 9);
  });
});
