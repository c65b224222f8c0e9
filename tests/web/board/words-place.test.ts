import fc from 'fast-check';
import { expect, test } from 'vitest';
import { boxesMeet } from '../../../routing/plane/box.ts';
import { wordsPlace } from '../../../web/board/painting/words-place.ts';

const ROOM = { width: 900, height: 640 };
const SIZE = { width: 160, height: 60 };

const boxAt = ({ left, top }: { left: number; top: number }) => ({
  minX: left,
  minY: top,
  maxX: left + SIZE.width,
  maxY: top + SIZE.height,
});

test('words stand to the right of the hand and above it where nothing is there', () => {
  const { left, top, isOver } = wordsPlace([400, 300], SIZE, ROOM, []);
  expect(left).toBeGreaterThan(400);
  expect(top + SIZE.height).toBeLessThan(300);
  expect(isOver).toBe(false);
});

test('a row drawn to the edge of the board is not hidden: its stalls lie above, the words below them', () => {
  const stalls = Array.from({ length: 12 }, (_, i) => ({
    minX: 500 + 30 * i,
    minY: 240,
    maxX: 530 + 30 * i,
    maxY: 300,
  }));
  const place = wordsPlace([860, 300], SIZE, ROOM, stalls);
  expect(place.isOver).toBe(false);
  expect(place.top).toBeGreaterThan(300);
});

test('words are in the board wherever the hand is, and hide something only where every place would', () => {
  const number = (most: number) => fc.integer({ min: 0, max: most });
  const thing = fc
    .tuple(number(900), number(640), number(200), number(200))
    .map(([x, y, w, h]) => ({ minX: x, minY: y, maxX: x + w, maxY: y + h }));
  fc.assert(
    fc.property(number(900), number(640), fc.array(thing, { maxLength: 8 }), (x, y, things) => {
      const place = wordsPlace([x, y], SIZE, ROOM, things);
      const own = boxAt(place);
      expect(own.minX >= 0 && own.minY >= 0 && own.maxX <= 900 && own.maxY <= 640).toBe(true);
      const hides = (box: typeof own): boolean => things.some((one) => boxesMeet(box, one));
      expect(boxesMeet(own, { minX: x, minY: y, maxX: x, maxY: y })).toBe(false);
      if (!place.isOver) return;
      // The four corners round the hand that lie in the board.
      for (const left of [x + 18, x - 18 - SIZE.width])
        for (const top of [y - 14 - SIZE.height, y + 14]) {
          const other = boxAt({ left, top });
          const inside = other.minX >= 0 && other.minY >= 0 && other.maxX <= 900 && other.maxY <= 640;
          if (inside) expect(hides(other)).toBe(true);
        }
    }),
  );
});
