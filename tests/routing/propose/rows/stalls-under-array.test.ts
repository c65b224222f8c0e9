import { expect, test } from 'vitest';
import { stallUnderArray } from '../../../../routing/propose/rows/stalls-under-array.ts';
import type { Stall } from '../../../../routing/site/site.ts';

/** Five stalls of 9 by 18 ft side by side along x, numbered from the left. */
const ROW = [0, 9, 18, 27, 36].map((x, i) => ({
  id: `S${i + 1}`,
  at: [x, 0],
  width: 9,
  depth: 18,
  heading: 90,
})) as unknown as readonly Stall[];

const along = (id: string, columns: number, columnsEvery: number, degrees = 0) =>
  stallUnderArray(ROW, new Set([id]), { columns, columnsEvery, rows: 1, rowsEvery: 18, degrees })?.id ?? null;

test('a copy of a stall from the middle of a row lies on its neighbor', () => {
  expect(along('S2', 2, 9)).toBe('S3');
  expect(along('S4', 2, 9, 180)).toBe('S3');
});

test('copies that go on from the end of a row, or on over its end, lie on nothing', () => {
  expect(along('S5', 20, 9)).toBeNull();
  expect(along('S2', 2, 36)).toBeNull();
});

test('a copy nearer than the width lies on its own original', () => {
  expect(along('S5', 2, 8.8)).toBe('S5');
  expect(along('S5', 2, 8.95)).toBeNull();
});

test('the copies of the rows count too, and slanted ones are looked at as they lie', () => {
  const spread = { columns: 1, columnsEvery: 9, rows: 2, rowsEvery: 17, degrees: 0 };
  expect(stallUnderArray(ROW, new Set(['S3']), spread)?.id).toBe('S3');
  expect(stallUnderArray(ROW, new Set(['S3']), { ...spread, rowsEvery: 18 })).toBeNull();
  const slanted = [
    { ...ROW[0]!, heading: 45 },
    { ...ROW[1]!, at: [9 * Math.SQRT2, 0], heading: 45 },
  ] as readonly Stall[];
  const next = { columns: 2, columnsEvery: 9 * Math.SQRT2, rows: 1, rowsEvery: 18, degrees: 0 };
  expect(stallUnderArray(slanted, new Set(['S2']), next)).toBeNull();
  expect(stallUnderArray(slanted, new Set(['S1']), next)?.id).toBe('S2');
});
