import type { PageText } from './read-pdf.ts';

type Corner = readonly [x: number, y: number];

/** Capitals of the sheets' typeface stand 0.7 of its size. */
const CAPITALS = 0.7;
/** Letters may come this close without being over one another, points. */
const TOUCH = 0.4;

/** The corners of the box of capitals of a text, a little inside of it. */
export function cornersOf({ x, y, width, size, turn }: PageText): readonly Corner[] {
  const [ux, uy] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  const high = size * CAPITALS - TOUCH;
  return [
    [TOUCH, TOUCH],
    [width - TOUCH, TOUCH],
    [width - TOUCH, high],
    [TOUCH, high],
  ].map(([a, b]): Corner => [x + a! * ux - b! * uy, y + a! * uy + b! * ux]);
}

/** Two boxes share a point: no line along a side of either parts them. */
function meet(a: readonly Corner[], b: readonly Corner[]): boolean {
  for (const box of [a, b])
    for (let i = 0; i < 4; i++) {
      const [[x1, y1], [x2, y2]] = [box[i]!, box[(i + 1) % 4]!];
      const along = ([x, y]: Corner): number => x * (y2 - y1) - y * (x2 - x1);
      const [pa, pb] = [a.map(along), b.map(along)];
      if (Math.max(...pa) <= Math.min(...pb) || Math.max(...pb) <= Math.min(...pa)) return false;
    }
  return true;
}

/** Pairs of texts of a page that lie over one another. */
export function overlapping(texts: readonly PageText[]): readonly (readonly [string, string])[] {
  const boxes = texts
    .filter(({ width }) => width > 2 * TOUCH)
    .map((text) => {
      const corners = cornersOf(text);
      const xs = corners.map(([x]) => x);
      return { text, corners, from: Math.min(...xs), to: Math.max(...xs) };
    })
    .sort((a, b) => a.from - b.from);
  const pairs: (readonly [string, string])[] = [];
  boxes.forEach((box, i) => {
    for (let k = i + 1; k < boxes.length && boxes[k]!.from < box.to; k++)
      if (meet(box.corners, boxes[k]!.corners)) pairs.push([box.text.text, boxes[k]!.text.text]);
  });
  return pairs;
}
