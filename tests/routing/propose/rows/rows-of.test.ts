import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { RowShape } from '../../../../routing/propose/rows/row-shape.ts';
import { inOrder, rowsOf, type Standing, wholeRows } from '../../../../routing/propose/rows/rows-of.ts';
import { stallRow } from '../../../../routing/propose/rows/stall-row.ts';
import type { Point2 } from '../../../../routing/site/site.ts';
import { PLAIN_ROW } from './plain-row.ts';

const AS_IS = { backwards: false, fromEnd: false, turning: false } as const;

/** A row of stalls drawn from one place towards another, named by a letter and their place along it. */
const drawn = (letter: string, from: Point2, to: Point2, count: number, shape: Partial<RowShape> = {}): Standing[] =>
  stallRow(from, to, count, { ...PLAIN_ROW, ...shape }).stalls.map(({ at, heading }, i) => ({
    id: `${letter}${i + 1}`,
    at,
    heading,
  }));

describe('rows of stalls', () => {
  test('are gone along from left to right and from the top of the sheet down, however they were drawn', () => {
    const low = drawn('L', [0, 0], [27, 0], 3);
    const high = drawn('H', [27, 60], [0, 60], 3);
    expect(rowsOf([...low, ...high])).toEqual([
      ['H3', 'H2', 'H1'],
      ['L1', 'L2', 'L3'],
    ]);
    const west = drawn('W', [0, 0], [0, 27], 3);
    const east = drawn('E', [60, 27], [60, 0], 3);
    expect(rowsOf([...east, ...west])).toEqual([
      ['W1', 'W2', 'W3'],
      ['E3', 'E2', 'E1'],
    ]);
  });

  test('that stand head to head are two rows, also where they are angled', () => {
    for (const angle of [90, 60, 45] as const) {
      const rows = rowsOf(drawn('S', [0, 0], [100, 0], 4, { angle, rows: 'across' }));
      expect(rows.map((row) => row.length)).toEqual([4, 4]);
    }
  });

  test('in any order and at any turn of the lot come out the same, up to where they begin', () => {
    const property = fc.property(
      fc.integer({ min: 0, max: 359 }),
      fc.constantFrom(90, 75, 60, 45),
      fc.shuffledSubarray([0, 1, 2, 3, 4, 5], { minLength: 6 }),
      (degrees, angle, order) => {
        const to: Point2 = [100 * Math.cos((degrees * Math.PI) / 180), 100 * Math.sin((degrees * Math.PI) / 180)];
        const stalls = drawn('S', [5, 5], to, 6, { angle: angle as RowShape['angle'] });
        const [row, ...others] = rowsOf(order.map((i) => stalls[i]!));
        const straight = ['S1', 'S2', 'S3', 'S4', 'S5', 'S6'];
        expect(others).toEqual([]);
        expect([straight, straight.toReversed()]).toContainEqual(row);
      },
    );
    fc.assert(property, { numRuns: 200 });
  });

  test('are numbered back from an end, from the last row, or there and back', () => {
    const rows = [['A1', 'A2'], ['B1', 'B2'], ['C1']];
    expect(inOrder(rows, AS_IS)).toEqual(['A1', 'A2', 'B1', 'B2', 'C1']);
    expect(inOrder(rows, { ...AS_IS, fromEnd: true })).toEqual(['A2', 'A1', 'B2', 'B1', 'C1']);
    expect(inOrder(rows, { ...AS_IS, backwards: true })).toEqual(['C1', 'B1', 'B2', 'A1', 'A2']);
    expect(inOrder(rows, { ...AS_IS, turning: true })).toEqual(['A1', 'A2', 'B2', 'B1', 'C1']);
    expect(inOrder(rows, { backwards: true, fromEnd: true, turning: true })).toEqual(['C1', 'B1', 'B2', 'A2', 'A1']);
  });

  test('whole, from one stall: as far as the next gap and no farther', () => {
    const near = drawn('N', [0, 0], [36, 0], 4);
    const far = drawn('F', [100, 0], [127, 0], 3);
    const behind = drawn('B', [0, 60], [36, 60], 4);
    expect(wholeRows([...near, ...far, ...behind], new Set(['N3']), 27)).toEqual([['N1', 'N2', 'N3', 'N4']]);
    expect(wholeRows([...near, ...far, ...behind], new Set(['N3', 'F1']), 27)).toHaveLength(2);
  });
});
