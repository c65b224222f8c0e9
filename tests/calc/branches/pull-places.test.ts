import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type PullLimits, pullPlaces } from '../../../calc/branches/pulls/pull-places.ts';
import { bendsOf } from '../../../routing/network/bends.ts';
import { distance } from '../../../routing/plane/space.ts';
import type { Point3 } from '../../../routing/site/site.ts';

const LIMITS = { bendLimit: 360, pullLimit: 200 };

const placesOn = (path: readonly Point3[], limits: PullLimits): readonly Point3[] =>
  pullPlaces(path, limits).map(({ at }) => at);

describe('pull places', () => {
  test('are none on a conduit within its limits', () => {
    expect(
      placesOn(
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
      placesOn(
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

  test('stand at the fifth quarter bend, which the box takes in', () => {
    const path: Point3[] = [
      [0, 0, 0],
      [10, 0, 0],
      [10, 10, 0],
      [20, 10, 0],
      [20, 20, 0],
      [30, 20, 0],
      [30, 30, 0],
    ];
    expect(placesOn(path, LIMITS)).toEqual([[30, 20, 0]]);
  });

  test('say how far along they are', () => {
    const path: Point3[] = [
      [0, 0, 0],
      [150, 0, 0],
      [150, 0, 300],
    ];
    expect(pullPlaces(path, LIMITS)).toEqual([
      { at: [150, 0, 50], along: 200 },
      { at: [150, 0, 250], along: 400 },
    ]);
  });

  // Legs of whole feet turn at whole feet: of places at whole feet, a search breadth first finds fewest.
  test('are as few as a search of all places finds', () => {
    const leg = fc.record({ axis: fc.constantFrom(0, 1, 2), by: fc.integer({ min: 2, max: 40 }) });
    fc.assert(
      fc.property(
        fc.array(leg, { minLength: 1, maxLength: 14 }),
        fc.constantFrom(180, 270, 360),
        fc.integer({ min: 20, max: 120 }),
        (legs, bendLimit, pullLimit) => {
          const path: Point3[] = [[0, 0, 0]];
          for (const { axis, by } of legs) {
            const next: [number, number, number] = [...path.at(-1)!];
            next[axis]! += by;
            path.push(next);
          }
          expect(pullPlaces(path, { bendLimit, pullLimit })).toHaveLength(fewest(path, { bendLimit, pullLimit }));
        },
      ),
    );
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
        const stretches = cutAt(path, placesOn(path, LIMITS));
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

/** Fewest pull points at whole feet that bring a path of whole feet within its limits. A turn inside one is no bend. */
function fewest(path: readonly Point3[], { bendLimit, pullLimit }: PullLimits): number {
  const at = [0];
  for (let i = 1; i < path.length; i++) at.push(at[i - 1]! + distance(path[i - 1]!, path[i]!));
  const length = at.at(-1)!;
  const bends = new Map(bendsOf(path).map((bend) => [at[bend.at]!, bend.degrees]));
  const reached = new Map([[0, 0]]);
  const queue = [0];
  for (const start of queue) {
    let degrees = 0;
    for (let end = start + 1; end <= Math.min(length, start + pullLimit); end++) {
      if (degrees <= bendLimit && end === length) return reached.get(start)!;
      if (!reached.has(end)) {
        reached.set(end, reached.get(start)! + 1);
        queue.push(end);
      }
      degrees += bends.get(end) ?? 0;
      if (degrees > bendLimit) break;
    }
  }
  throw new Error('no way to open it');
}
