import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { reachRegion } from '../../../routing/reach/region.ts';
import type { Point2, Site } from '../../../routing/site/site.ts';
import { CAR, drop, siteOf, stall } from './sites.ts';
import { withinReach } from './within-reach.ts';

const inPolygon = (polygon: readonly Point2[], [x, y]: Point2): boolean => {
  let odd = false;
  polygon.forEach(([ax, ay], i) => {
    const [bx, by] = polygon[(i + 1) % polygon.length]!;
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) odd = !odd;
  });
  return odd;
};

const edgeDistance = (polygon: readonly Point2[], [x, y]: Point2): number =>
  Math.min(
    ...polygon.map(([ax, ay], i) => {
      const [bx, by] = polygon[(i + 1) % polygon.length]!;
      const [dx, dy] = [bx - ax, by - ay];
      const t = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy || 1)));
      return Math.hypot(x - ax - t * dx, y - ay - t * dy);
    }),
  );

const area = (polygon: readonly Point2[]): number =>
  polygon.reduce((sum, [ax, ay], i) => {
    const [bx, by] = polygon[(i + 1) % polygon.length]!;
    return sum + (ax * by - bx * ay) / 2;
  }, 0);

const TOLERANCE = 0.01;
const quarter = (min: number, max: number) => fc.integer({ min: min * 4, max: max * 4 }).map((n) => n / 4);

const lot = fc
  .record({
    at: fc.tuple(quarter(-10, 40), quarter(-10, 30)),
    cars: fc.array(fc.tuple(quarter(-5, 35), quarter(-15, 15), fc.integer({ min: 0, max: 359 })), { maxLength: 7 }),
    columns: fc.array(fc.tuple(quarter(-5, 35), quarter(-5, 25)), { maxLength: 3 }),
    cord: fc.integer({ min: 10, max: 30 }),
  })
  .map(
    ({ at: [x, y], cars, columns, cord }): Site =>
      siteOf({
        vehicles: { car: CAR },
        stalls: cars.map(([sx, sy, heading], i) => stall(`S${i}`, [sx, sy], { heading })),
        columns: columns.map((place, i) => ({ id: `K${i}`, at: place, size: [1.5, 1], rotation: 20 * i })),
        drops: [drop('D1', [x, y, 10], { cord })],
      }),
  );

describe('the region within reach', () => {
  test('holds exactly the points that a taut cord reaches, away from its border', () => {
    let inside = 0;
    let outside = 0;
    fc.assert(
      fc.property(
        lot,
        fc.array(fc.tuple(quarter(-30, 60), quarter(-30, 50)), { minLength: 20, maxLength: 20 }),
        (site, points) => {
          const region = reachRegion(site, 'D1', 2.5, TOLERANCE);
          for (const [x, y] of points) {
            const point: Point2 = [x + 0.0137, y - 0.0071];
            const within = withinReach(site, 'D1', point, 2.5);
            if (region.some((polygon) => inPolygon(polygon, point)) === within) {
              within ? inside++ : outside++;
              continue;
            }
            // Off by no more than the arcs are flattened by.
            expect(Math.min(...region.map((polygon) => edgeDistance(polygon, point)))).toBeLessThan(TOLERANCE + 1e-6);
          }
        },
      ),
      { numRuns: 150 },
    );
    expect(inside).toBeGreaterThan(100);
    expect(outside).toBeGreaterThan(100);
  });

  test('with nothing around is a disc of radius sqrt(available^2 - fall^2)', () => {
    // Trade figure: 25 ft of cord with 3 ft of allowance, from 11 ft down to 2.5 ft: 20.29 ft.
    const site = siteOf({ drops: [drop('D1', [5, 5, 11])], rules: { cordSlack: 3 } });
    const radius = Math.sqrt(22 ** 2 - 8.5 ** 2);
    const [disc, ...more] = reachRegion(site, 'D1', 2.5, 0.001);
    expect(more).toEqual([]);
    for (const [x, y] of disc!) expect(Math.hypot(x - 5, y - 5)).toBeCloseTo(radius, 9);
    expect(area(disc!)).toBeCloseTo(Math.PI * radius ** 2, 0);
  });

  test('is made of polygons that run counter-clockwise, so that one fill by the non-zero rule shows their union', () => {
    fc.assert(
      fc.property(lot, (site) => {
        for (const polygon of reachRegion(site, 'D1', 2.5)) expect(area(polygon)).toBeGreaterThan(-1e-9);
      }),
      { numRuns: 50 },
    );
  });

  test('is empty where the cord does not come down so far, or is used up on the way to its retractor', () => {
    const short = siteOf({ drops: [drop('D1', [0, 0, 11], { cord: 9 })] });
    expect(reachRegion(short, 'D1', 2.5)).toEqual([]);
    expect(withinReach(short, 'D1', [0, 0], 2.5)).toBe(false);
    const away = siteOf({ drops: [drop('D1', [0, 0, 11], { cord: 20, retractor: [19, 0, 11] })] });
    expect(reachRegion(away, 'D1', 2.5)).toEqual([]);
  });

  test('does not reach into a parked vehicle, but over the one under the retractor', () => {
    const around = (x: number) =>
      siteOf({ vehicles: { car: CAR }, stalls: [stall('S1', [0, 0])], drops: [drop('D1', [x, 8, 10])] });
    expect(withinReach(around(6), 'D1', [0, 8], 2.5)).toBe(false);
    expect(withinReach(around(0), 'D1', [1, 8], 2.5)).toBe(true);
  });

  test('of a drop that is not there is a mistake of the program', () => {
    expect(() => reachRegion(siteOf(), 'D9', 2.5)).toThrow(RangeError);
  });
});
