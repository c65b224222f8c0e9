import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Conduit } from '../../../calc/plan-file/branches.ts';
import type { Run } from '../../../routing/network/run.ts';
import type { Point3 } from '../../../routing/site/site.ts';
import { atLength, planPointAt, unrolled } from '../../../web/strip/unrolled.ts';

const runAlong = (path: readonly Point3[], legs: readonly (string | null)[]): Run => ({
  charger: 'EV1',
  drop: 'D1',
  from: 'P1',
  length: 0,
  conductorLength: 0,
  taps: { equipment: 0, box: 0 },
  path,
  raceways: [],
  legs,
  bends: 0,
  bendDegrees: 0,
  ok: true,
});

/** Up 5 ft, 20 ft east, 9 ft north, and a 2 ft tap to the box. */
const PATH: Point3[] = [
  [0, 0, 6],
  [0, 0, 11],
  [20, 0, 11],
  [20, 9, 11],
  [22, 9, 11],
];
const RUN = runAlong(PATH, ['R1', 'R1', 'R2', null]);

const conduit = (id: string, length: number): Conduit => ({ id, length }) as Conduit;

test('legs in plan lie one after the other and a riser stands', () => {
  const flat = unrolled(RUN, [], []);
  expect(flat?.legs.map(({ kind, length }) => [kind, length])).toEqual([
    ['riser', 5],
    ['level', 20],
    ['level', 9],
    ['tap', 2],
  ]);
  expect(flat).toMatchObject({ along: 31, low: 6, high: 11 });
  expect(flat?.bends).toHaveLength(3);
});

test('conduits lie end to end over the developed length, risers counted', () => {
  const flat = unrolled(RUN, [conduit('a', 15), conduit('b', 21)], []);
  expect(flat?.conduits.map(({ from, to }) => [from.along, to.along])).toEqual([
    [0, 10],
    [10, 31],
  ]);
});

test('a pull point on the run is shown where it lies, one off it is not', () => {
  const flat = unrolled(
    RUN,
    [],
    [
      { id: 'PB1', at: [12, 0.1, 11] },
      { id: 'PB2', at: [12, 3, 11] },
    ],
  );
  expect(flat?.pullpoints.map(({ id }) => id)).toEqual(['PB1']);
  expect(flat?.pullpoints[0]?.at.along).toBeCloseTo(12, 9);
});

test('a charger without a run has no strip', () => {
  expect(unrolled(runAlong([], []), [], [])).toBeNull();
});

test('a place on the strip is the place in the plan that lies as far along', () => {
  expect(planPointAt(PATH, 0)).toEqual([0, 0]);
  expect(planPointAt(PATH, 25)).toEqual([20, 5]);
  expect(planPointAt(PATH, 99)).toEqual([22, 9]);
});

test('unrolling keeps the developed length of any path', () => {
  const coordinate = fc.double({ min: -100, max: 100, noNaN: true });
  const path = fc.array(fc.tuple(coordinate, coordinate, coordinate), { minLength: 2, maxLength: 12 });
  fc.assert(
    fc.property(path, (points) => {
      const flat = unrolled(
        runAlong(
          points,
          points.slice(1).map(() => 'R'),
        ),
        [],
        [],
      );
      const space = points
        .slice(1)
        .reduce((sum, b, i) => sum + Math.hypot(b[0] - points[i]![0], b[1] - points[i]![1], b[2] - points[i]![2]), 0);
      const drawn = flat!.legs.reduce(
        (sum, { from, to }) => sum + Math.hypot(to.along - from.along, to.up - from.up),
        0,
      );
      expect(drawn).toBeCloseTo(space, 4);
      expect(atLength(flat!.legs, space).along).toBeCloseTo(flat!.along, 4);
    }),
  );
});
