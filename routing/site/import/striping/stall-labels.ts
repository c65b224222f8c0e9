import { addTo } from '../../../lists/grouping.ts';
import { direction } from '../../../plane/direction.ts';
import type { Point2, Stall } from '../../site.ts';
import type { DrawnWords } from '../imported.ts';

/** Words of a drawing, and where their middle lies on the site. */
export interface PlacedWords {
  readonly middle: Point2;
  readonly words: string;
}

/** Letters are this wide on the mean, in heights of capitals. */
const LETTER = 0.75;

/** Where words of a drawing lie; feet, on the site. */
export function placedWords({ at, height, turn, anchor, words }: DrawnWords): PlacedWords {
  const half = anchor === 'middle' ? 0 : ((anchor === 'left' ? 1 : -1) * LETTER * height * words.length) / 2;
  const [cos, sin] = direction(turn);
  return { middle: [at[0] + half * cos - (height / 2) * sin, at[1] + half * sin + (height / 2) * cos], words };
}

/** What stalls are numbered by: `12`, `EV-3`, `A104`, `7B`. */
const NUMBER = /^[A-Z]{0,3}[- .]?\d{1,4}[A-Z]?$/i;

/** Stalls with the number that stands inside them, the nearest to the middle where there are several. */
export function labelledStalls<S extends Omit<Stall, 'id'>>(
  stalls: readonly S[],
  words: readonly PlacedWords[],
): readonly S[] {
  const numbers = words.filter((each) => NUMBER.test(each.words.trim()));
  if (numbers.length === 0) return stalls;
  const cell = 16;
  const cells = new Map<string, PlacedWords[]>();
  for (const one of numbers) {
    const key = `${Math.floor(one.middle[0] / cell)} ${Math.floor(one.middle[1] / cell)}`;
    addTo(cells, key, one);
  }
  return stalls.map((stall) => {
    const [ux, uy] = direction(stall.heading);
    const middle: Point2 = [stall.at[0] + (ux * stall.depth) / 2, stall.at[1] + (uy * stall.depth) / 2];
    let best: { readonly off: number; readonly label: string } | null = null;
    const [column, row] = [Math.floor(middle[0] / cell), Math.floor(middle[1] / cell)];
    for (const dx of [-1, 0, 1])
      for (const dy of [-1, 0, 1])
        for (const one of cells.get(`${column + dx} ${row + dy}`) ?? []) {
          const [x, y] = [one.middle[0] - middle[0], one.middle[1] - middle[1]];
          const inside = Math.abs(x * ux + y * uy) <= stall.depth / 2 && Math.abs(y * ux - x * uy) <= stall.width / 2;
          const off = Math.hypot(x, y);
          if (inside && (!best || off < best.off)) best = { off, label: one.words.trim() };
        }
    return best ? { ...stall, label: best.label } : stall;
  });
}
