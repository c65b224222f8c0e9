import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pullPlaces } from '../../../calc/conduits/pull-places.ts';
import { bendsOf } from '../../../routing/network/bends.ts';
import { distance } from '../../../routing/plane/space.ts';
import type { Point3 } from '../../../routing/site/site.ts';

const LIMITS = { bendLimit: 360, pullLimit: 200 };

describe('pull places', () => {
  test('are none on a conduit within its limits', () => {
    expect(
      pullPlaces(
        [
          [0, 0, 0],
          [200, 0, 0],
        ],
        LIMITS,
      ),
    ).toEqual([]);
  });

  test('divide a straight by the pull limit', () => {
    expect(
      pullPlaces(
        [
          [0, 0, 0],
          [450, 0, 0],
        ],
        LIMITS,
      ),
    ).toEqual([
      [200, 0, 0],
      [400, 0, 0],
    ]);
  });

  test('stop a foot short of the fifth quarter bend', () => {
    const path: Point3[] = [
      [0, 0, 0],
      [10, 0, 0],
      [10, 10, 0],
      [20, 10, 0],
      [20, 20, 0],
      [30, 20, 0],
      [30, 30, 0],
    ];
    expect(pullPlaces(path, LIMITS)).toEqual([[29, 20, 0]]);
  });

  test('leave no stretch between openings past its limits, wherever a conduit turns', () => {
    const leg = fc.record({ axis: fc.constantFrom(0, 1, 2), by: fc.integer({ min: 2, max: 300 }) });
    fc.assert(
      fc.property(fc.array(leg, { minLength: 1, maxLength: 12 }), (legs) => {
        const path: Point3[] = [[0, 0, 0]];
        for (const { axis, by } of legs) {
          const next: [number, number, number] = [...path.at(-1)!];
          next[axis]! += by;
          path.push(next);
        }
        const stretches = cutAt(path, pullPlaces(path, LIMITS));
        for (const stretch of stretches) {
          const degrees = bendsOf(stretch).reduce((sum, bend) => sum + bend.degrees, 0);
          const feet = stretch.slice(1).reduce((sum, to, i) => sum + distance(stretch[i]!, to), 0);
          expect(degrees).toBeLessThanOrEqual(360 + 1e-6);
          expect(feet).toBeLessThanOrEqual(200 + 1e-6);
        }
      }),
    );
  });
});

/** The stretches of a path between places on it, in order. */
function cutAt(path: readonly Point3[], places: readonly Point3[]): Point3[][] {
  const stretches: Point3[][] = [[path[0]!]];
  let next = 0;
  for (let i = 0; i + 1 < path.length; i++) {
    const from = path[i]!;
    const to = path[i + 1]!;
    while (next < places.length) {
      const place = places[next]!;
      if (Math.abs(distance(from, place) + distance(place, to) - distance(from, to)) > 1e-9) break;
      stretches.at(-1)!.push(place);
      stretches.push([place]);
      next++;
    }
    stretches.at(-1)!.push(to);
  }
  expect(next).toBe(places.length);
  return stretches;
}
