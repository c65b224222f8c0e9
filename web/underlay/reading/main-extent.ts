import type { Box } from '../../../routing/plane/box.ts';

export interface MainExtent {
  /** What most things lie in; the view and the place of a drawing go by it. */
  readonly main: Box;
  readonly whole: Box;
  /** How many things lie outside, and how far the farthest of them, in units of the drawing. */
  readonly strays: number;
  readonly farthest: number;
}

/** Things in the middle eight tenths, left and right, low and high, are surely of the drawing. */
const SURE = 0.1;
/** What lies farther off than so many times the size of what is of the drawing is none of it. */
const FAR_OFF = 5;

/**
 * Where most things lie: a drawing whose one line was left at the origin of a national grid is otherwise a speck. From
 * the things that are surely of it, it grows by all that lie near in proportion to its size. `boxes` holds least x and
 * y, largest x and y of each.
 */
export function mainExtent(boxes: Float64Array): MainExtent {
  const count = boxes.length / 4;
  const whole = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  for (let i = 0; i < count; i++) grow(whole, boxes, i);
  if (count < 4) return { main: whole, whole, strays: 0, farthest: 0 };
  const bounds = [0, 1].map((axis) => {
    const middles = new Float64Array(count);
    for (let i = 0; i < count; i++) middles[i] = (boxes[4 * i + axis]! + boxes[4 * i + axis + 2]!) / 2;
    middles.sort();
    return [middles[Math.floor(count * SURE)]!, middles[Math.ceil(count * (1 - SURE)) - 1]!] as const;
  });
  const [[left, right], [low, high]] = bounds as [readonly [number, number], readonly [number, number]];
  const main = { minX: left, minY: low, maxX: right, maxY: high };
  const size = (): number => Math.max(main.maxX - main.minX, main.maxY - main.minY);
  const isSure = (i: number): boolean => {
    const [x, y] = [(boxes[4 * i]! + boxes[4 * i + 2]!) / 2, (boxes[4 * i + 1]! + boxes[4 * i + 3]!) / 2];
    return x >= left && x <= right && y >= low && y <= high;
  };
  const inside = new Uint8Array(count);
  for (let i = 0; i < count; i++)
    if (isSure(i)) {
      inside[i] = 1;
      grow(main, boxes, i);
    }
  if (!(size() > 0)) return { main: whole, whole, strays: 0, farthest: 0 };
  for (let grew = true; grew; ) {
    grew = false;
    const room = FAR_OFF * size();
    for (let i = 0; i < count; i++)
      if (inside[i] === 0 && offBox(main, boxes, i) <= room) {
        inside[i] = 1;
        grow(main, boxes, i);
        grew = true;
      }
  }
  let [strays, farthest] = [0, 0];
  for (let i = 0; i < count; i++)
    if (inside[i] === 0) {
      strays += 1;
      farthest = Math.max(farthest, offBox(main, boxes, i));
    }
  return { main: strays === 0 ? whole : main, whole, strays, farthest };
}

interface Open {
  minX: number;
  minY: number;
  maxX: number;
  maxY: number;
}

function grow(box: Open, boxes: Float64Array, i: number): void {
  box.minX = Math.min(box.minX, boxes[4 * i]!);
  box.minY = Math.min(box.minY, boxes[4 * i + 1]!);
  box.maxX = Math.max(box.maxX, boxes[4 * i + 2]!);
  box.maxY = Math.max(box.maxY, boxes[4 * i + 3]!);
}

/** How far a thing reaches outside a box: a line from the site to the origin lies far off, though it begins within. */
function offBox(box: Open, boxes: Float64Array, i: number): number {
  const dx = Math.max(box.minX - boxes[4 * i]!, boxes[4 * i + 2]! - box.maxX, 0);
  const dy = Math.max(box.minY - boxes[4 * i + 1]!, boxes[4 * i + 3]! - box.maxY, 0);
  return Math.hypot(dx, dy);
}
