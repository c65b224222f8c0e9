import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { catenary, riseAt } from '../../../routing/reach/cords/catenary.ts';
import { hang } from '../../../routing/reach/cords/hang.ts';
import type { Point2 } from '../../../routing/site/site.ts';

const over = (span: number): Point2[] => [
  [0, 0],
  [span, 0],
];

describe('a catenary', () => {
  test('passes through both ends and is as long as the cord, from barely slack to mostly slack', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 60, noNaN: true }),
        fc.double({ min: -15, max: 15, noNaN: true }),
        fc.double({ min: 1e-5, max: 40, noNaN: true }),
        (span, fall, slack) => {
          const length = Math.hypot(span, fall) + slack;
          const curve = catenary(length, span, fall)!;
          const { a, bottom } = curve;
          // The length of a cosh(x / a) between two places is the difference of a sinh(x / a).
          const along = a * (Math.sinh((span - bottom) / a) - Math.sinh(-bottom / a));
          expect(along / length).toBeCloseTo(1, 7);
          expect(riseAt(curve, 0) - riseAt(curve, span)).toBeCloseTo(fall, 6);
        },
      ),
      { numRuns: 500 },
    );
  });

  test('is none where the cord is taut, too short, or hangs straight down', () => {
    expect(catenary(10, 10, 0)).toBeNull();
    expect(catenary(9, 10, 0)).toBeNull();
    expect(catenary(20, 0, 5)).toBeNull();
  });
});

describe('a hanging cord', () => {
  test('has no lowest point where it does not arrive', () => {
    expect(hang(over(12), 11, 2.5, 14.7, 6.67)).toBeNull();
    expect(hang([], 11, 2.5, 20, 6.67)).toBeNull();
  });

  test('that is taut is lowest at the inlet and under the headroom over the share of its fall below it', () => {
    // From 11 ft to 3 ft over 12 ft, 7 ft of headroom: the last half.
    expect(hang(over(12), 11, 3, Math.hypot(12, 8), 7)).toEqual({
      low: 3,
      lowAt: [12, 0],
      strip: {
        from: [6, 0],
        to: [12, 0],
        length: 6,
        path: [
          [6, 0],
          [12, 0],
        ],
      },
    });
  });

  test('lies on the ground where the curve would go below it', () => {
    const down = hang(over(8), 11, 2.5, 25, 6.67)!;
    expect(down.low).toBe(0);
    expect(down.lowAt[0]).toBeGreaterThan(4);
  });

  test('straight down and up again is half its slack below the inlet', () => {
    // From 11 ft to 3 ft with 12 ft out: 8 ft down, 2 ft more and 2 ft up again.
    expect(hang([[1, 2]], 11, 3, 12, 6.67)).toMatchObject({ low: 1, lowAt: [1, 2], strip: { length: 0 } });
  });

  test('nowhere under the headroom has no strip', () => {
    expect(hang(over(10), 11, 9, 10.5, 6.67)?.strip).toBeNull();
  });

  test('has its strip where a curve worked out step by step is under the headroom', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 2, max: 25, noNaN: true }),
        fc.double({ min: 2, max: 4, noNaN: true }),
        fc.double({ min: 0.05, max: 3, noNaN: true }),
        (span, to, slack) => {
          const length = Math.hypot(span, 11 - to) + slack;
          const curve = catenary(length, span, 11 - to)!;
          const { strip } = hang(over(span), 11, to, length, 6.67)!;
          for (let x = 0; x <= span; x += span / 50) {
            const z = 11 - riseAt(curve, 0) + riseAt(curve, x);
            if (Math.abs(z - 6.67) < 1e-6) continue;
            expect(strip !== null && x >= strip.from[0] && x <= strip.to[0]).toBe(z < 6.67);
          }
        },
      ),
    );
  });

  test('is laid along the bends of its plan path, which keep their places in the strip', () => {
    const bent: Point2[] = [
      [0, 0],
      [6, 0],
      [6, 6],
    ];
    const straight = hang(over(12), 11, 3, 16, 7)!;
    const { low, lowAt, strip } = hang(bent, 11, 3, 16, 7)!;
    expect(low).toBeCloseTo(straight.low, 12);
    expect(lowAt[0] + lowAt[1]).toBeCloseTo(straight.lowAt[0], 9);
    expect(strip?.length).toBeCloseTo(straight.strip!.length, 9);
    expect(strip?.path).toHaveLength(3);
    expect(strip?.path[1]).toEqual([6, 0]);
  });
});
