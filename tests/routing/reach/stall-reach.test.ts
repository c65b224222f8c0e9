import { describe, expect, test } from 'vitest';
import { obstacleOf } from '../../../routing/plane/obstacle.ts';
import { cordTo, nearAmong } from '../../../routing/reach/cords/cords.ts';
import {
  casesIn,
  coverageOf,
  inletCases,
  inletsAt,
  reachCases,
  stallReach,
  worstAt,
} from '../../../routing/reach/stall-reach.ts';
import { CAR, inlet, stall } from './sites.ts';

const NO_WAY = Number.NEGATIVE_INFINITY;
const north = stall('S1', [0, 0]);

describe('the cases of a stall', () => {
  test('are every direction and inlet, nose-in first, directions equally likely and inlets by their share', () => {
    const car = { ...CAR, inlets: [inlet('a', 'left', 0.5, 2.5, 3), inlet('b', 'right', 0.5, 2.5, 1)] };
    const cases = inletCases(north, car, 2).map(({ direction, inlet: name, share }) => [direction, name, share]);
    expect(cases).toEqual([
      ['nose-in', 'a', 0.375],
      ['nose-in', 'b', 0.125],
      ['back-in', 'a', 0.375],
      ['back-in', 'b', 0.125],
    ]);
  });

  test('share equally where every share is zero, and one direction has it all', () => {
    const car = { ...CAR, inlets: CAR.inlets.map((one) => ({ ...one, share: 0 })) };
    for (const { share } of inletCases({ ...north, parking: 'nose-in' }, car, 2)) expect(share).toBeCloseTo(0.2, 12);
  });
});

describe('coverage', () => {
  test('is the share with a margin of zero or more, and exactly 1 where no case that can occur is short', () => {
    const of = (...cases: [share: number, margin: number | null][]) =>
      coverageOf(
        cases.map(([share]) => ({ share })),
        cases.map(([, margin]) => margin ?? NO_WAY),
      );
    expect(of([0.5, 1], [0.3, 0], [0.2, -0.1])).toBeCloseTo(0.8, 12);
    expect(of(...Array.from({ length: 10 }, (): [number, number] => [0.1, 1]))).toBe(1);
    expect(of([1, 2], [0, -3])).toBe(1);
    expect(of([0.5, 2], [0.5, null])).toBe(0.5);
    // Rounding, not a short cord.
    expect(of([1, -1e-12])).toBe(1);
  });
});

test('the worst case has the least margin, one without a way before all, of equal ones the first', () => {
  const pick = (...margins: (number | null)[]) => worstAt(margins.map((margin) => margin ?? NO_WAY));
  expect(pick(3, 1, 2)).toBe(1);
  expect(pick(1, 1 - 1e-13, 2)).toBe(0);
  expect(pick(-4, null, null)).toBe(1);
});

describe('reach to a stall', () => {
  const near = nearAmong([
    obstacleOf([
      [3, 1],
      [3, 16],
      [-3, 16],
      [-3, 1],
    ]),
  ]);

  // Retractor 2 ft behind the head of the car, in its middle line: round the near corner at (3, 16), 3.606 ft, then
  // 1.5 ft down the side to the inlet at (3, 14.5); 6 ft of fall.
  test('adds the plan length round the vehicle and the fall in elevation by Pythagoras', () => {
    const car = { ...CAR, inlets: [inlet('front-right', 'right', 0.1, 4)] };
    const likely = casesIn(north, car);
    const at = inletsAt(north, car, 2, likely);
    const reached = stallReach({ from: [0, 18, 10], available: 10, onGround: false }, likely, at, near);
    const cases = reachCases(likely, reached.needed, 10);
    const cord = cordTo(reached.cords, 0);
    const plan = Math.hypot(3, 2) + 1.5;
    expect(cord?.length).toBeCloseTo(plan, 12);
    expect(cases[0]?.needed).toBeCloseTo(Math.hypot(plan, 6), 12);
    expect(cases[0]?.margin).toBeCloseTo(10 - Math.hypot(plan, 6), 12);
    expect(cord?.path).toEqual([
      [0, 18],
      [3, 16],
      [3, 14.5],
    ]);
  });
});
