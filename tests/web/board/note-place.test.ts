import fc from 'fast-check';
import { expect, test } from 'vitest';
import { notePlace } from '../../../web/board/pictures/note-place.ts';

const SIZE = { width: 180, height: 40 };
const BUBBLES = [0, 27, 53, 79].map((x) => ({ x: 40 + x * 4, y: 17 }));

/** Pixels between the note and the middle of a bubble. */
const apart = ([x, y]: readonly [number, number], bubble: { readonly x: number; readonly y: number }): number =>
  Math.hypot(
    Math.max(x - bubble.x, 0, bubble.x - x - SIZE.width),
    Math.max(y - bubble.y, 0, bubble.y - y - SIZE.height),
  );

test('the note of a cord stands on the board of a phone and on no name of a gridline', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 80, noNaN: true }),
      fc.double({ min: -20, max: 20, noNaN: true }),
      fc.double({ min: -8, max: 8, noNaN: true }),
      (x, y, dx) => {
        const ground = { scale: 4, left: 40, top: 150, width: 390, height: 281 };
        const at = notePlace(
          ground,
          {
            inletAt: [x, y],
            path: [
              [x + dx, 0],
              [x, y],
            ],
          },
          SIZE,
          BUBBLES,
        );
        for (const bubble of BUBBLES) expect(apart(at, bubble)).toBeGreaterThanOrEqual(13);
        expect(at[0]).toBeGreaterThanOrEqual(8);
        expect(at[1]).toBeGreaterThanOrEqual(8);
        expect(at[0] + SIZE.width).toBeLessThanOrEqual(382);
        expect(at[1] + SIZE.height).toBeLessThanOrEqual(273);
      },
    ),
  );
});
