import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Extent } from '../../../../../calc/sheets/drawing/drawing.ts';
import { tilesOf } from '../../../../../calc/sheets/pdf/plans/enlarged/tiles.ts';

const thing = fc
  .record({
    x: fc.double({ min: 0, max: 500, noNaN: true }),
    y: fc.double({ min: 0, max: 300, noNaN: true }),
    w: fc.double({ min: 0.5, max: 20, noNaN: true }),
    h: fc.double({ min: 0.5, max: 20, noNaN: true }),
  })
  .map(({ x, y, w, h }): Extent => ({ minX: x, minY: y, maxX: x + w, maxY: y + h }));

const around: Extent = { minX: -5, minY: -5, maxX: 530, maxY: 330 };

describe('windows of an enlarged plan', () => {
  test('none is larger than a sheet, and the middle of every thing lies in one', () => {
    const most = { width: 120, height: 90 };
    fc.assert(
      fc.property(fc.array(thing, { minLength: 1, maxLength: 40 }), (things) => {
        const tiles = tilesOf(things, around, most);
        for (const { window } of tiles) {
          expect(window.maxX - window.minX).toBeLessThanOrEqual(most.width + 1e-6);
          expect(window.maxY - window.minY).toBeLessThanOrEqual(most.height + 1e-6);
        }
        for (const { minX, minY, maxX, maxY } of things) {
          const [x, y] = [(minX + maxX) / 2, (minY + maxY) / 2];
          const holding = tiles.filter(
            ({ window }) => x >= window.minX && x <= window.maxX && y >= window.minY && y <= window.maxY,
          );
          expect(holding.length).toBeGreaterThanOrEqual(1);
        }
      }),
      { numRuns: 60 },
    );
  });
  test('there are no more columns than an even division needs', () => {
    const tiles = tilesOf([around], around, { width: 120, height: 1000 });
    expect(tiles.length).toBeLessThanOrEqual(Math.ceil(535 / 120));
  });
  test('a cut is made in the gap between two rows, not through one', () => {
    const row = (minX: number): Extent => ({ minX, maxX: minX + 60, minY: 0, maxY: 20 });
    const [left, right] = tilesOf(
      [row(0), row(74)],
      { minX: 0, maxX: 134, minY: 0, maxY: 20 },
      { width: 80, height: 50 },
    );
    expect(left!.window.maxX).toBeGreaterThan(60);
    expect(left!.window.maxX).toBeLessThan(74);
    expect(right!.window.minX).toBe(left!.window.maxX);
  });
  test('what fits on one sheet is one window', () => {
    expect(tilesOf([around], around, { width: 600, height: 400 })).toEqual([{ window: around, column: 0, row: 0 }]);
  });
  test('what is to be whole is cut by no window, where a division that spares it is to be had', () => {
    const most = { width: 120, height: 90 };
    fc.assert(
      fc.property(
        fc.array(thing, { minLength: 1, maxLength: 40 }),
        fc.array(thing, { minLength: 1, maxLength: 3 }),
        (things, whole) => {
          const tiles = tilesOf([...things, ...whole], around, most, { whole, lines: [] });
          // Three pieces of at most 20 ft leave room for cuts in every 120 by 90.
          for (const one of whole) {
            const cut = tiles.filter(
              ({ window }) =>
                (window.minX > one.minX && window.minX < one.maxX) ||
                (window.maxX > one.minX && window.maxX < one.maxX) ||
                (window.minY > one.minY && window.minY < one.maxY) ||
                (window.maxY > one.minY && window.maxY < one.maxY),
            );
            expect(cut).toEqual([]);
          }
        },
      ),
      { numRuns: 60 },
    );
  });
  test('no cut runs along a raceway between two rows where the aisle beside them is as far', () => {
    const row = (minY: number): Extent => ({ minX: 0, maxX: 100, minY, maxY: minY + 18 });
    // Two double rows, interlocks at 18 and 78, an aisle of 24 ft from 36 to 60.
    const rows = [row(0), row(18), row(60), row(78)];
    const raceways = [18, 78].map((y): Extent => ({ minX: -2, maxX: 102, minY: y - 2, maxY: y + 2 }));
    const box = { minX: -5, maxX: 105, minY: -5, maxY: 101 };
    const cuts = tilesOf(rows, box, { width: 200, height: 80 }, { whole: [], lines: raceways }).map(
      ({ window }) => window.minY,
    );
    expect(cuts.some((y) => y > 36 && y < 60)).toBe(true);
    for (const y of cuts) for (const { minY, maxY } of raceways) expect(y > minY && y < maxY).toBe(false);
  });
});
