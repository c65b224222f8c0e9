import fc from 'fast-check';
import { expect, test } from 'vitest';
import { boxesMeet } from '../../../routing/plane/box.ts';
import { freeRoom } from '../../../web/board/painting/free-room.ts';

const board = { width: 1000, height: 600 };
const middle = { px: 500, py: 300 };
const how = { margin: 20, most: 40, wish: middle };

const boxAt = ({ px, py, scale }: ReturnType<typeof freeRoom>, size: { width: number; height: number }) => ({
  minX: px - (size.width * scale) / 2,
  minY: py - (size.height * scale) / 2,
  maxX: px + (size.width * scale) / 2,
  maxY: py + (size.height * scale) / 2,
});

test('with nothing over the board a picture fills it from margin to margin, where it is wished', () => {
  expect(freeRoom(board, [], { width: 96, height: 10 }, how)).toMatchObject({ px: 500, py: 300, scale: 10 });
  expect(freeRoom(board, [], { width: 1, height: 1 }, how).scale).toBe(40);
});

test('a cover in a corner costs nothing where the picture passes it by', () => {
  const corner = { minX: 0, minY: 540, maxX: 180, maxY: 600 };
  expect(freeRoom(board, [corner], { width: 96, height: 10 }, how).scale).toBe(10);
});

test('a square picture makes room for a corner on the side that costs it least', () => {
  const corner = { minX: 0, minY: 540, maxX: 180, maxY: 600 };
  const size = { width: 56, height: 56 };
  const found = freeRoom(board, [corner], size, how);
  // To the right of the corner there is room for all of its height.
  expect(found.scale).toBe(10);
  expect(found.px - 280).toBeGreaterThanOrEqual(188);
});

test('what is shown whole lies under nothing, whatever stands in the corners and however it is shaped', () => {
  const at = fc.integer({ min: 0, max: 200 });
  const corners = fc.tuple(at, at, at, at).map(([a, b, c, d]) => [
    { minX: 0, minY: 600 - b, maxX: a, maxY: 600 },
    { minX: 1000 - c, minY: 0, maxX: 1000, maxY: d },
  ]);
  const sides = fc.integer({ min: 1, max: 2000 });
  fc.assert(
    fc.property(corners, sides, sides, (covers, width, height) => {
      const own = boxAt(freeRoom(board, covers, { width, height }, how), { width, height });
      expect(covers.filter((cover) => boxesMeet(own, cover))).toEqual([]);
      expect(own.minX).toBeGreaterThan(20 - 1e-6);
      expect(own.maxY).toBeLessThan(580 + 1e-6);
    }),
  );
});
