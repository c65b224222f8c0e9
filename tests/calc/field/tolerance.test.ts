import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Machine } from '../../../calc/cli/machine.ts';
import { newVerb } from '../../../calc/cli/verbs/new.ts';
import type { MovablePoint } from '../../../calc/field/moved-point.ts';
import { FARTHEST, passes, rayEnd, type Tolerance, toleranceSteps } from '../../../calc/field/tolerance.ts';
import { readSite } from '../../../routing/site/file/read.ts';
import type { Site } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { libraryLot } from './start-lot.ts';

/** A quarter of an inch, feet: well over the 1/16 in to which a way is closed in on. */
const QUARTER = 1 / 48;

/** The room round a point, without a pause. */
function toleranceOf(site: Site, point: MovablePoint): Tolerance {
  const steps = toleranceSteps(site, point);
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}

/** Where the polygon of a tolerance ends along a direction, feet. */
function reachAt({ rays }: Tolerance, degrees: number): number {
  const [dx, dy] = rayEnd({ degrees, feet: 1 });
  for (let i = 0; i < rays.length; i++) {
    const [a, b] = [rayEnd(rays[i]!), rayEnd(rays[(i + 1) % rays.length]!)];
    const [ex, ey] = [b[0] - a[0], b[1] - a[1]];
    const cross = dx * ey - dy * ex;
    if (Math.abs(cross) < 1e-12) continue;
    const along = (a[0] * ey - a[1] * ex) / cross;
    const share = (a[0] * dy - a[1] * dx) / cross;
    if (along > 0 && share >= -1e-9 && share <= 1 + 1e-9) return along;
  }
  return 0;
}

function cases(site: Site, points: readonly MovablePoint[], count: number): number {
  const rooms = new Map(points.map((point) => [point, toleranceOf(site, point)]));
  let tried = 0;
  fc.assert(
    fc.property(fc.constantFrom(...points), fc.nat(), fc.integer({ min: 0, max: 3599 }), (point, pick, tenths) => {
      const room = rooms.get(point)!;
      expect(room.fails).toEqual([]);
      const [x, y] = rayEnd({ degrees: tenths / 10, feet: Math.max(0, reachAt(room, tenths / 10) - QUARTER) });
      expect(passes(site, point, [x, y, 0])).toBe(true);
      const ray = room.rays[pick % room.rays.length]!;
      const [ox, oy] = rayEnd({ ...ray, feet: ray.feet + QUARTER });
      if (ray.stop) expect(passes(site, point, [ox, oy, 0])).toBe(false);
      else expect(ray.feet).toBe(FARTHEST);
      tried++;
    }),
    { numRuns: count },
  );
  return tried;
}

test('just inside the room round a point everything passes, just outside it something does not, in 200 cases', () => {
  const read = readSite(newVerb([], { stalls: '4', replace: false }, {} as Machine).out);
  const start = toSite(read.ok ? read.file : expect.fail());
  const points: MovablePoint[] = [
    { list: 'drops', id: start.drops[0]!.id, part: 'box' },
    { list: 'drops', id: start.drops[1]!.id, part: 'retractor' },
    { list: 'drops', id: start.drops[2]!.id },
    { list: 'equipment', id: start.equipment.at(-1)!.id },
  ];
  expect(cases(start, points, 200)).toBe(200);
});

test('the room is told with what stops it, up and down too; round what fails there is none', () => {
  const site = toSite(libraryLot());
  const room = toleranceOf(site, { list: 'drops', id: 'D05', part: 'retractor' });
  expect(room.rays.length).toBeGreaterThanOrEqual(16);
  expect(room.rays.some(({ stop }) => stop !== null)).toBe(true);
  for (const [sign, way] of [
    [1, room.up],
    [-1, room.down],
  ] as const) {
    const point: MovablePoint = { list: 'drops', id: 'D05', part: 'retractor' };
    expect(passes(site, point, [0, 0, sign * Math.max(0, way.feet - QUARTER)])).toBe(true);
    if (way.stop) expect(passes(site, point, [0, 0, sign * (way.feet + QUARTER)])).toBe(false);
  }
  const short = { ...site, drops: site.drops.map((drop) => (drop.id === 'D05' ? { ...drop, cord: 8 } : drop)) };
  const none = toleranceOf(short, { list: 'drops', id: 'D05' });
  expect(none.rays).toEqual([]);
  expect(none.fails.map(({ severity }) => severity)).toContain('fail');
});
