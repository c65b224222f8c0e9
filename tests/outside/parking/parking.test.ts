import { describe, expect, test } from 'vitest';
import { depthToInterlock, depthToWall, widthAlongAisle } from '../../../routing/propose/rows/angled-stall.ts';
import type { RowShape, StallRow } from '../../../routing/propose/rows/row-shape.ts';
import { stallRow } from '../../../routing/propose/rows/stall-row.ts';
import { stallRectangle } from '../../../routing/site/place/stall-rectangle.ts';
import type { Point2, Stall } from '../../../routing/site/site.ts';
import { PLAIN_ROW } from '../../routing/propose/rows/plain-row.ts';
import published from './published.json' with { type: 'json' };
import shapely from './shapely-rows.json' with { type: 'json' };

const shape = (given: Partial<RowShape>): RowShape => ({ ...PLAIN_ROW, aisle: 0, ...given });

const START: Point2 = [0, 0];
const EAST: Point2 = [500, 0];

const cornersOf = (row: StallRow): Point2[][] =>
  row.stalls.map((stall) => [...stallRectangle({ id: 'S', ...stall } as Stall)] as Point2[]);

/** The same corners, whichever stands first. */
const alike = (a: readonly (readonly number[])[], b: readonly (readonly number[])[]): boolean =>
  a.every((p) => b.some((q) => Math.hypot(p[0]! - q[0]!, p[1]! - q[1]!) < 1e-6));

describe('published parking tables', () => {
  // A table that prints to 0.1 ft is met where the figure rounds to what it prints.
  test.each(published.alongAisle)('$width ft at $angle° take $printed ft along the aisle ($source)', (row) => {
    expect(Math.abs(widthAlongAisle(row.width, row.angle) - row.printed)).toBeLessThan(0.06);
    const laid = stallRow(START, EAST, 2, shape({ width: row.width, angle: row.angle }));
    expect(Math.abs(laid.stalls[1]!.at[0] - laid.stalls[0]!.at[0] - row.printed)).toBeLessThan(0.06);
  });

  test.each(published.misprinted)('$source: $printed ft is not what $width ft at $angle° takes', (row) => {
    expect(widthAlongAisle(row.width, row.angle)).toBeCloseTo(8.8, 2);
  });

  test.each(published.depthToInterlock)('$width x $depth ft at $angle° interlock at $printed ft ($source)', (row) => {
    expect(Math.abs(depthToInterlock(row.width, row.depth, row.angle) - row.printed)).toBeLessThan(row.within);
    const laid = stallRow(START, EAST, 6, shape({ ...row, rows: 'heads' }));
    expect(Math.abs(laid.across / 2 - row.printed)).toBeLessThan(row.within);
  });

  test.each(published.depthToWall)('$width x $depth ft at $angle° reach $printed ft to a wall ($source)', (row) => {
    expect(Math.abs(depthToWall(row.width, row.depth, row.angle) - row.printed)).toBeLessThan(row.within);
    const laid = stallRow(START, EAST, 6, shape(row));
    const deepest = Math.max(
      ...cornersOf(laid)
        .flat()
        .map(([, y]) => y),
    );
    expect(Math.abs(deepest - row.printed)).toBeLessThan(row.within);
  });

  test.each(published.modules)('two rows at $angle° and their aisle take $printed ft ($source)', (row) => {
    // The module of the table is between interlock lines: half a head edge less than between walls, on each side.
    const laid = stallRow(START, EAST, 5, shape({ ...row, rows: 'across' }));
    const toWall = depthToWall(row.width, row.depth, row.angle) - depthToInterlock(row.width, row.depth, row.angle);
    expect(Math.abs(laid.across - 2 * toWall - row.printed)).toBeLessThan(row.within);
  });

  test.each(published.rows)('$count stalls at $angle° take $worked ft of frontage ($source)', (row) => {
    const laid = stallRow(START, EAST, row.count, shape(row));
    expect(Math.abs(laid.length - row.worked)).toBeLessThan(row.within);
  });
});

describe('rows against shapely', () => {
  test.each(shapely.cases)('$count stalls of $width x $depth ft at $angle° stand where shapely puts them', (stored) => {
    const { count, width, depth, angle } = stored;
    const corners = cornersOf(stallRow(START, EAST, count, shape({ width, depth, angle })));
    expect(corners).toHaveLength(count);
    corners.forEach((own, i) => {
      expect(alike(own, stored.corners[i]!)).toBe(true);
    });
    expect(stored.single.overlap).toBe(0);
    const row = stallRow(START, EAST, count, shape({ width, depth, angle }));
    expect(row.across).toBeCloseTo(stored.single.across, 6);
    expect(row.length).toBeCloseTo(Math.max(stored.single.maxX, count * widthAlongAisle(width, angle)), 6);
  });

  test.each(shapely.cases)('two rows at $angle° interlock without a gap or an overlap', (stored) => {
    const { count, width, depth, angle } = stored;
    expect(stored.interlocked.overlap).toBe(0);
    expect(stored.interlocked.area).toBeCloseTo(2 * count * width * depth, 6);
    const row = stallRow(START, EAST, count, shape({ width, depth, angle, rows: 'heads' }));
    expect(row.across).toBeCloseTo(stored.interlocked.across, 6);
    const highest = Math.max(
      ...cornersOf(row)
        .flat()
        .map(([, y]) => y),
    );
    expect(highest).toBeCloseTo(stored.interlocked.across, 6);
  });
});
