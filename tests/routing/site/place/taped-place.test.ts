import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fromGridline } from '../../../../routing/site/place/from-gridlines.ts';
import { setOutPlace } from '../../../../routing/site/place/grid-frame.ts';
import { placeTaped, settingOutLine, type TapeAxis, tapedFrom } from '../../../../routing/site/place/taped-place.ts';
import type { Gridlines, Point3 } from '../../../../routing/site/site.ts';

const LINES: Gridlines = {
  x: [
    { label: '1', at: 0 },
    { label: '2', at: 27 },
    { label: '3', at: 53 },
  ],
  y: [{ label: 'A', at: 0 }],
};

test('a drop is taped from the two lines that setting-out names', () => {
  const at: Point3 = [52, 9, 11];
  expect(settingOutLine(LINES, at, 'x')?.label).toBe('3');
  expect(tapedFrom(LINES, at, 'x', LINES.x[2]!)).toBe(-1);
  expect(tapedFrom(LINES, at, 'y', LINES.y[0]!)).toBe(9);
  // 1' 6" past line 3 in place of 1' 0" before it: nothing else of it changes.
  expect(placeTaped(LINES, at, 'x', LINES.x[2]!, 1.5)).toEqual([54.5, 9, 11]);
  // The same column of the tape from another line.
  expect(placeTaped(LINES, at, 'x', LINES.x[1]!, 27.5)).toEqual([54.5, 9, 11]);
});

test('by hand: gridlines turned by 90 degrees about 10, 5 run their x up the site and their y to its left', () => {
  const turned: Gridlines = { ...LINES, rotation: 90, origin: [10, 5] };
  const [x, y, z] = placeTaped(turned, [10, 5, 11], 'x', turned.x[1]!, 3);
  expect([x, y, z]).toEqual([expect.closeTo(10, 12), expect.closeTo(35, 12), 11]);
  const [x2, y2] = placeTaped(turned, [x, y, z], 'y', turned.y[0]!, 2);
  expect([x2, y2]).toEqual([expect.closeTo(8, 12), expect.closeTo(35, 12)]);
});

test('without gridlines it is the coordinate itself', () => {
  const none: Gridlines = { x: [], y: [] };
  expect(settingOutLine(none, [3, 4, 5], 'x')).toBeNull();
  expect(tapedFrom(none, [3, 4, 5], 'y', null)).toBe(4);
  expect(placeTaped(none, [3, 4, 5], 'y', null, 6)).toEqual([3, 6, 5]);
});

const feet = fc.double({ min: -400, max: 400, noNaN: true });
const lines = fc
  .uniqueArray(fc.integer({ min: -200, max: 200 }), { maxLength: 5 })
  .map((all) => all.map((at, i) => ({ label: String(i + 1), at: at / 4 })));
const gridlines = fc.record({
  x: lines,
  y: lines,
  rotation: fc.double({ min: -360, max: 360, noNaN: true }),
  origin: fc.tuple(feet, feet),
});

test('what is taped is what setting-out reads, both ways, on turned gridlines too', () => {
  fc.assert(
    fc.property(
      gridlines,
      fc.tuple(feet, feet, feet),
      fc.constantFrom('x', 'y'),
      feet,
      fc.nat(9),
      (grid, at, along, offset, pick) => {
        const axis = along as TapeAxis;
        const line = grid[axis][pick % Math.max(1, grid[axis].length)] ?? null;
        const placed = placeTaped(grid, at, axis, line, offset);
        expect(tapedFrom(grid, placed, axis, line)).toBeCloseTo(offset, 8);
        // The other way across and the height stay.
        const other: TapeAxis = axis === 'x' ? 'y' : 'x';
        expect(tapedFrom(grid, placed, other, null)).toBeCloseTo(tapedFrom(grid, at, other, null), 8);
        expect(placed[2]).toBe(at[2]);
        // Taped back from the line that setting-out names, it is the place that it was.
        const named = settingOutLine(grid, at, axis);
        const value = setOutPlace(grid, [at[0], at[1]])[axis === 'x' ? 0 : 1];
        expect(tapedFrom(grid, at, axis, named)).toBe(fromGridline(grid[axis], value)?.offset ?? value);
        const back = placeTaped(grid, placed, axis, named, tapedFrom(grid, at, axis, named));
        expect(back[0]).toBeCloseTo(at[0], 8);
        expect(back[1]).toBeCloseTo(at[1], 8);
      },
    ),
    { numRuns: 400 },
  );
});
