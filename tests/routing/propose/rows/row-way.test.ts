import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lineWay, rowWay, stretchWay } from '../../../../routing/propose/rows/row-way.ts';
import { stallRow } from '../../../../routing/propose/rows/stall-row.ts';
import type { Point2, Stall } from '../../../../routing/site/site.ts';
import { PLAIN_ROW } from './plain-row.ts';

const named = (stalls: readonly { at: Point2; width: number; depth: number; heading: number }[], from = 1): Stall[] =>
  stalls.map(({ at, width, depth, heading }, i) => ({ id: `S${from + i}`, at, width, depth, heading }));

const ids = (...all: readonly number[]): ReadonlySet<string> => new Set(all.map((n) => `S${n}`));

describe('the row that a stall stands in', () => {
  test('goes on where it ends, a pitch from its last stall: W / sin a along the aisle where stalls are angled', () => {
    // 9 / sin 60° = 10.392 ft: the width parallel to the aisle of the usual stall layout tables.
    const stalls = named(stallRow([0, 0], [100, 0], 4, { ...PLAIN_ROW, angle: 60 }).stalls);
    const way = rowWay(stalls, ids(4))!;
    expect(way.degrees).toBeCloseTo(0, 9);
    expect(way.next).toBeCloseTo(9 / Math.sin(Math.PI / 3), 8);
    expect(rowWay(stalls, ids(1))!.degrees).toBeCloseTo(180, 9);
  });

  test('of several goes on by all of them', () => {
    const stalls = named(stallRow([0, 0], [0, 100], 5, PLAIN_ROW).stalls);
    expect(rowWay(stalls, ids(1, 2, 3, 4, 5))).toEqual({ degrees: 90, next: 45 });
    expect(rowWay(stalls, ids(4, 5))).toEqual({ degrees: 90, next: 18 });
    expect(rowWay(stalls, ids(1, 2))).toEqual({ degrees: 270, next: 18 });
  });

  test('is not the row behind it or across the aisle', () => {
    const { stalls } = stallRow([0, 0], [100, 0], 3, { ...PLAIN_ROW, rows: 'across' });
    const far = named(stallRow([0, 60], [100, 60], 3, PLAIN_ROW).stalls, 7);
    expect(rowWay([...named(stalls), ...far], ids(3))).toEqual({ degrees: 0, next: 9 });
  });

  test('of a stall by itself lies to its right, its width away; of none there is none', () => {
    const one: Stall[] = [{ id: 'S1', at: [5, 5], width: 10, depth: 20, heading: 30 }];
    expect(rowWay(one, ids(1))).toEqual({ degrees: 300, next: 10 });
    expect(rowWay(one, ids(2))).toBeNull();
  });

  test('goes on as the row was drawn, whatever its angle, lean, side and direction', () => {
    const angle = fc.constantFrom(0, 30, 45, 60, 75, 90);
    const turn = fc.integer({ min: 0, max: 359 });
    const lean = fc.constantFrom('forward' as const, 'back' as const);
    const side = fc.constantFrom('left' as const, 'right' as const);
    fc.assert(
      fc.property(angle, turn, lean, side, fc.integer({ min: 2, max: 6 }), (a, degrees, leans, onSide, had) => {
        const radians = (degrees * Math.PI) / 180;
        const to: Point2 = [3 + 500 * Math.cos(radians), 7 + 500 * Math.sin(radians)];
        const drawn = named(
          stallRow([3, 7], to, had + 3, { ...PLAIN_ROW, angle: a, lean: leans, side: onSide }).stalls,
        );
        const way = rowWay(drawn.slice(0, had), ids(had))!;
        const [x, y] = drawn[had - 1]!.at;
        const on = (way.degrees * Math.PI) / 180;
        for (let k = 1; k <= 3; k++) {
          const [ex, ey] = drawn[had - 1 + k]!.at;
          expect(x + k * way.next * Math.cos(on)).toBeCloseTo(ex, 6);
          expect(y + k * way.next * Math.sin(on)).toBeCloseTo(ey, 6);
        }
      }),
    );
  });
});

test('a path runs as its longest stretch in the plan does, risers left out', () => {
  expect(
    stretchWay([
      [0, 0, 4],
      [0, 0, 40],
      [0, 6, 12],
      [-8, 6, 12],
    ]),
  ).toEqual({ degrees: 180, next: 8 });
  expect(
    stretchWay([
      [1, 1, 0],
      [1, 1, 12],
    ]),
  ).toBeNull();
});

test('one column goes on a bay from its neighbor, several as far as they reach and a bay more', () => {
  const all: Point2[] = [
    [0, 0],
    [0, 27],
    [0, 54],
  ];
  expect(lineWay([[0, 54]], all)).toEqual({ degrees: 90, next: 27 });
  expect(lineWay(all, all)).toEqual({ degrees: 90, next: 81 });
  expect(lineWay([[0, 0]], [[0, 0]])).toBeNull();
});
