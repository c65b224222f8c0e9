import { describe, expect, test } from 'vitest';
import { lengthThrough } from '../../../routing/checks/keepout-findings.ts';
import type { Keepout, Point2, Point3 } from '../../../routing/site/site.ts';
import { raceway } from '../network/sites.ts';
import { found, keepout, square } from './keepout-parts.ts';

const through = (path: Point3[], more: Partial<Keepout> = {}) =>
  found({ raceways: [raceway('R1', path)], keepouts: [keepout(more)] }).map(({ value }) => value);

// Lengths by hand, of a square 10 ft wide.
describe('a raceway through a keep-out that blocks raceways', () => {
  test('is told with the length inside', () => {
    expect(
      found({
        raceways: [
          raceway('R1', [
            [0, 0, 11],
            [40, 0, 11],
          ]),
        ],
        keepouts: [keepout()],
      }),
    ).toEqual([
      {
        severity: 'fail',
        rule: 'keepout-crossed',
        about: ['R1', 'K1'],
        says: `Raceway R1 runs 10' 0" through keep-out K1, which blocks raceways.`,
        value: 10,
        limit: 0,
        unit: 'ft',
        source: 'keep-out of the site that blocks raceways',
      },
    ]);
  });
  test('not where the keep-out blocks something else', () => {
    expect(
      through(
        [
          [0, 0, 11],
          [40, 0, 11],
        ],
        { blocks: ['drop', 'cord', 'equipment'] },
      ),
    ).toEqual([]);
  });
  test('not beside it, nor along its outline, nor touching a corner', () => {
    expect(
      through([
        [0, 9, 11],
        [40, 9, 11],
      ]),
    ).toEqual([]);
    expect(
      through([
        [0, 5, 11],
        [40, 5, 11],
      ]),
    ).toEqual([]);
    expect(
      through([
        [0, -5, 11],
        [20, 15, 11],
      ]),
    ).toEqual([]);
    expect(
      through([
        [0, 0, 11],
        [10, 0, 11],
        [10, 20, 11],
      ]),
    ).toEqual([]);
  });
  test('wholly inside, or in several legs, adds up', () => {
    expect(
      through([
        [12, 0, 11],
        [15, 0, 11],
        [15, 4, 11],
      ]),
    ).toEqual([7]);
    expect(
      through([
        [0, 0, 11],
        [15, 0, 11],
        [15, 30, 11],
      ]),
    ).toEqual([10]);
  });
  test('over or under it is clear; at its very top or bottom it touches', () => {
    const range = { from: 0, to: 10 };
    expect(
      through(
        [
          [0, 0, 11],
          [40, 0, 11],
        ],
        range,
      ),
    ).toEqual([]);
    expect(
      through(
        [
          [0, 0, 10],
          [40, 0, 10],
        ],
        range,
      ),
    ).toEqual([]);
    expect(
      through(
        [
          [0, 0, 0],
          [40, 0, 0],
        ],
        range,
      ),
    ).toEqual([]);
    expect(
      through(
        [
          [0, 0, -2],
          [40, 0, -2],
        ],
        range,
      ),
    ).toEqual([]);
    expect(
      through(
        [
          [0, 0, 9.9],
          [40, 0, 9.9],
        ],
        range,
      ),
    ).toEqual([10]);
  });
  test('without a lower or upper bound it goes on for ever', () => {
    expect(
      through(
        [
          [0, 0, -90],
          [40, 0, -90],
        ],
        { to: 10 },
      ),
    ).toEqual([10]);
    expect(
      through(
        [
          [0, 0, 900],
          [40, 0, 900],
        ],
        { from: 10 },
      ),
    ).toEqual([10]);
  });
  test('a sloped leg counts only between its elevations', () => {
    // Rises 1 in 4 from 10 ft at x = 0: it is over 13 ft from x = 12 on, to the far edge at 20.
    expect(
      through(
        [
          [0, 0, 10],
          [40, 0, 20],
        ],
        { from: 13 },
      ),
    ).toEqual([expect.closeTo(8 * Math.hypot(1, 0.25), 9)]);
    expect(
      through(
        [
          [0, 0, 10],
          [40, 0, 20],
        ],
        { from: 16 },
      ),
    ).toEqual([]);
  });
  test('an upright leg counts by its elevations', () => {
    expect(
      through(
        [
          [15, 0, 0],
          [15, 0, 12],
        ],
        { from: 8 },
      ),
    ).toEqual([4]);
    expect(
      through(
        [
          [10, 0, 0],
          [10, 0, 12],
        ],
        { from: 8 },
      ),
    ).toEqual([]);
  });
  test('in a notch of its outline is clear', () => {
    const notched: Point2[] = [
      [10, -5],
      [20, -5],
      [20, 5],
      [16, 5],
      [16, -3],
      [14, -3],
      [14, 5],
      [10, 5],
    ];
    expect(
      through(
        [
          [0, 0, 11],
          [40, 0, 11],
        ],
        { outline: notched },
      ),
    ).toEqual([expect.closeTo(8, 9)]);
    expect(
      through(
        [
          [15, -2, 11],
          [15, 20, 11],
        ],
        { outline: notched },
      ),
    ).toEqual([]);
  });
  test('turned to any angle gives the same length', () => {
    const turn = (a: number, [x, y]: Point2): Point2 => [
      Math.cos(a) * x - Math.sin(a) * y,
      Math.sin(a) * x + Math.cos(a) * y,
    ];
    for (let degrees = 7; degrees < 360; degrees += 31) {
      const a = (degrees * Math.PI) / 180;
      const outline = square.map((p) => turn(a, p));
      const at = (x: number, y: number): Point3 => [...turn(a, [x, y]), 11];
      expect(lengthThrough(keepout({ outline }), at(0, 0), at(40, 0))).toBeCloseTo(10, 9);
      expect(lengthThrough(keepout({ outline }), at(0, 5), at(40, 5))).toBe(0);
    }
  });
});
