import { type Box, boxesMeet } from '../../../routing/plane/box.ts';

/** Where a block of words stands, pixels from the left and top of the board, y down. */
export interface WordsPlace {
  readonly left: number;
  readonly top: number;
  /** It stands over something, which is to be painted out behind it. */
  readonly isOver: boolean;
}

/** From the hand to the words, pixels: clear of the line that it draws and of the mark at its end. */
const ASIDE = 18;
const ALONG = 14;

/**
 * Where words beside the hand hide least of what is being drawn: to the right and above if they may, else on the left,
 * else below; moved into the board where they would stand out of it.
 * @param size and `room` in pixels, as the hand's place is; `things` are boxes of what is not to be hidden
 */
export function wordsPlace(
  [x, y]: readonly [x: number, y: number],
  size: { readonly width: number; readonly height: number },
  room: { readonly width: number; readonly height: number },
  things: readonly Box[],
): WordsPlace {
  const right = x + ASIDE;
  const left = x - ASIDE - size.width;
  const above = y - ALONG - size.height;
  const below = y + ALONG;
  let best: WordsPlace | null = null;
  let least = Number.POSITIVE_INFINITY;
  const hand = { minX: x, minY: y, maxX: x, maxY: y };
  for (const [wishedX, wishedY] of [
    [right, above],
    [left, above],
    [left, below],
    [right, below],
  ] as const) {
    const at = within(wishedX, size.width, room.width);
    const top = within(wishedY, size.height, room.height);
    const own = { minX: at, minY: top, maxX: at + size.width, maxY: top + size.height };
    const hidden = things.filter((thing) => boxesMeet(own, thing)).length;
    // The hand itself is worth more than all of them.
    const cost = hidden + (boxesMeet(own, hand) ? things.length + 1 : 0);
    if (cost >= least) continue;
    least = cost;
    best = { left: at, top, isOver: hidden > 0 };
  }
  return best!;
}

const within = (at: number, size: number, room: number): number => Math.max(0, Math.min(at, room - size));
