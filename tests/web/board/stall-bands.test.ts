import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Stall } from '../../../routing/site/site.ts';
import { stallBands } from '../../../web/board/scene/stall-bands.ts';

/** A row of stalls side by side from a place, so many, in a direction. */
function row(x: number, y: number, heading: number, widths: readonly number[], toLeft: boolean): Stall[] {
  const radians = (heading * Math.PI) / 180;
  const [ax, ay] = toLeft ? [-Math.sin(radians), Math.cos(radians)] : [Math.sin(radians), -Math.cos(radians)];
  let along = 0;
  return widths.map((width, i) => {
    const middle = along + width / 2;
    along += width;
    return { id: `S${i}`, at: [x + ax * middle, y + ay * middle], width, depth: 18, heading };
  });
}

function area(corners: readonly (readonly [number, number])[]): number {
  let twice = 0;
  corners.forEach(([x, y], i) => {
    const [nextX, nextY] = corners[(i + 1) % corners.length]!;
    twice += x * nextY - nextX * y;
  });
  return Math.abs(twice) / 2;
}

test('a row is one band that covers its stalls, whichever way it faces and whichever way it is numbered', () => {
  const widths = fc.array(fc.double({ min: 7, max: 14, noNaN: true }), { minLength: 1, maxLength: 12 });
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 359 }), widths, fc.boolean(), (heading, own, toLeft) => {
      const bands = stallBands(row(30, -20, heading, own, toLeft));
      expect(bands).toHaveLength(1);
      expect(bands[0]!.stalls).toBe(own.length);
      expect(area(bands[0]!.corners)).toBeCloseTo(18 * own.reduce((sum, width) => sum + width, 0), 4);
    }),
  );
});

test('a gap, another depth, and the row across the way begin a band of their own', () => {
  const first = row(0, 0, 90, [9, 9, 9], false);
  const gap = row(32, 0, 90, [9, 9], false);
  const deeper = row(50, 0, 90, [9], false).map((stall) => ({ ...stall, depth: 20 }));
  const across = row(0, 36, 270, [9, 9, 9], true);
  expect(stallBands([...first, ...gap, ...deeper, ...across]).map(({ stalls }) => stalls)).toEqual([3, 2, 1, 3]);
});

test('a row that turns back over itself is not one band', () => {
  const [a, b] = row(0, 0, 90, [9, 9], false);
  expect(stallBands([a!, b!, a!])).toHaveLength(2);
});
