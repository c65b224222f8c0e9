import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { HAND, pullOf, restOf } from '../../../routing/reach/cords/pull.ts';
import type { Point2 } from '../../../routing/site/site.ts';

const straight = (span: number): Point2[] => [
  [0, 0],
  [span, 0],
];

describe('the pull of a cord', () => {
  test('a level cord pulls as the textbook has it: w (S^2 - s^2) / 2s sideways, w S down, w (S^2 + s^2) / 2s in all', () => {
    // Half a length of 11 ft and a sag of 4 ft: the span follows from a = (121 - 16) / 8.
    const a = (11 ** 2 - 4 ** 2) / (2 * 4);
    const span = 2 * a * Math.asinh(11 / a);
    const pull = pullOf(straight(span), 20, 20, 22, 0.5)!;
    expect(pull.sideways).toBeCloseTo(0.5 * a, 6);
    expect(pull.down).toBeCloseTo(0.5 * 11, 6);
    expect(pull.pounds).toBeCloseTo((0.5 * (121 + 16)) / 8, 6);
    expect(pull.fromPlumb).toBeCloseTo((Math.atan2(a, 11) * 180) / Math.PI, 6);
    expect(pull.heading).toBe(0);
    expect(pull.taut).toBe(false);
  });

  test('a chain of short links in balance: what is down here less what is down there is its weight', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 2, max: 20, noNaN: true }),
        fc.double({ min: 0, max: 7, noNaN: true }),
        fc.double({ min: 0.3, max: 4, noNaN: true }),
        (span, drop, slack) => {
          const length = Math.hypot(span, drop) + slack;
          const here = pullOf(straight(span), 60, 60 - drop, length, 0.5)!;
          const there = pullOf(straight(span), 60 - drop, 60, length, 0.5)!;
          fc.pre(!here.taut && !there.taut);
          expect(here.sideways).toBeCloseTo(there.sideways, 6);
          expect(here.down + there.down).toBeCloseTo(0.5 * length, 6);
          expect(here.pounds).toBeCloseTo(Math.hypot(here.down, here.sideways), 9);
        },
      ),
    );
  });

  test('a cord let out to the ground pulls with what hangs down to it', () => {
    expect(pullOf(straight(6), 10, 3, 30, 0.5)).toMatchObject({ pounds: 5, sideways: 0, fromPlumb: 0 });
  });
  test('straight below, a cord goes down and comes up: half its length and of the difference', () => {
    expect(pullOf(straight(0), 10, 3, 12, 0.5)).toMatchObject({ pounds: 4.75, heading: null });
  });
  test('a taut cord pulls no harder than a person does, along itself', () => {
    const pull = pullOf(straight(3), 10, 6, 5, 0.5)!;
    expect(pull).toMatchObject({ pounds: HAND, taut: true });
    expect(pull.down).toBeCloseTo((HAND * 4) / 5, 9);
    expect(pull.sideways).toBeCloseTo((HAND * 3) / 5, 9);
  });
  test('a cord that does not arrive pulls nothing', () => {
    expect(pullOf(straight(12), 10, 3, 10, 0.5)).toBeNull();
    expect(pullOf([], 10, 3, 10, 0.5)).toBeNull();
  });
  test('it leaves towards the first corner that it bears on', () => {
    const round: Point2[] = [
      [0, 0],
      [0, -4],
      [5, -4],
    ];
    expect(pullOf(round, 10, 3, 13, 0.5)!.heading).toBe(270);
  });
});

test('a connector rests where its cord ends, and the retractor holds what hangs at its rest height', () => {
  expect(restOf([0, 0, 10], 22, 3, 0.32, 2)).toEqual({ free: 0, held: { takesUp: 15, pounds: 0.32 * 7 + 2 } });
  expect(restOf([0, 0, 10], 6, undefined, 0.32, 2)).toEqual({ free: 4, held: null });
  expect(restOf([0, 0, 10], 6, 5, 0.5, 2)).toEqual({ free: 4, held: { takesUp: 1, pounds: 4.5 } });
});
