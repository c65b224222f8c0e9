import type { Frame } from './frame.ts';
import { BUBBLE, type Bubble } from './steel/gridlines.ts';

type Ground = Pick<Frame, 'scale' | 'left' | 'top' | 'width' | 'height'>;
interface Size {
  readonly width: number;
  readonly height: number;
}
/** Where a cord goes and ends, feet. */
interface Cord {
  readonly inletAt: readonly number[];
  readonly path: readonly (readonly number[])[];
}

const GAP = 14;
/** Pixels that the note keeps from the edge of the board. */
const EDGE = 8;
/** Pixels round the drop that its handles take up. */
const HANDLES = 34;
/** What it costs, in pixels of the cord that is hidden, to lie over a thing that is read. */
const OVER_DROP = 120;
const OVER_BUBBLE = 400;

/**
 * Where the note at an inlet stands, pixels: on the board, beside the inlet where it hides least of the cord, of the drop
 * and, above all, no name of a gridline, from which everything is measured.
 */
export function notePlace(
  ground: Ground,
  { inletAt, path }: Cord,
  size: Size,
  bubbles: readonly Pick<Bubble, 'x' | 'y'>[],
): readonly [number, number] {
  const { scale, left, top } = ground;
  const x = left + inletAt[0]! * scale;
  const y = top - inletAt[1]! * scale;
  const { width, height } = size;
  const across = [x + GAP, x - GAP - width, x - width / 2];
  const down = [
    y - GAP - height,
    y + GAP,
    y - height / 2,
    y - GAP * 4 - height,
    y + GAP * 4,
    y - GAP * 8 - height,
    y + GAP * 8,
  ];
  let best: readonly [number, number] = [EDGE, EDGE];
  let least = Number.POSITIVE_INFINITY;
  for (const wishedY of down)
    for (const wishedX of across) {
      const at = [within(wishedX, width, ground.width), within(wishedY, height, ground.height)] as const;
      const off = Math.abs(at[0] - wishedX) + Math.abs(at[1] - wishedY);
      const far = Math.max(0, Math.abs(at[1] + height / 2 - y) - height / 2 - GAP);
      const cost =
        off +
        far +
        hidden(ground, path, at, size) +
        (over(at, size, x, y, 5) ? OVER_DROP : 0) +
        (path[0] && over(at, size, left + path[0][0]! * scale, top - path[0][1]! * scale, HANDLES) ? OVER_DROP : 0) +
        (path[0] && overName(at, size, left + path[0][0]! * scale, top - path[0][1]! * scale) ? OVER_DROP : 0) +
        bubbles.filter((bubble) => over(at, size, bubble.x, bubble.y, BUBBLE + 2)).length * OVER_BUBBLE;
      if (cost < least) {
        best = at;
        least = cost;
      }
    }
  return best;
}

const within = (at: number, size: number, room: number): number =>
  Math.round(Math.min(Math.max(EDGE, at), Math.max(EDGE, room - size - EDGE)));

/** Whether a box lies over what takes up so many pixels round a point. */
const over = (
  [x, y]: readonly [number, number],
  { width, height }: Size,
  px: number,
  py: number,
  round: number,
): boolean => px + round > x && px - round < x + width && py + round > y && py - round < y + height;

/** Whether a box lies over the name of the drop, which stands above it and to the right. Pixels. */
const overName = ([x, y]: readonly [number, number], { width, height }: Size, px: number, py: number): boolean =>
  px + 60 > x && px < x + width && py > y && py - 26 < y + height;

/** Pixels of the cord that a box would lie over, sampled. */
function hidden(
  { scale, left, top }: Ground,
  path: readonly (readonly number[])[],
  at: readonly [number, number],
  size: Size,
): number {
  let sum = 0;
  for (let i = 1; i < path.length; i++) {
    const [ax, ay] = path[i - 1] as [number, number];
    const [bx, by] = path[i] as [number, number];
    const length = Math.hypot(bx - ax, by - ay) * scale;
    const steps = Math.max(1, Math.ceil(length / 6));
    for (let n = 0; n <= steps; n++) {
      const px = left + (ax + ((bx - ax) * n) / steps) * scale;
      const py = top - (ay + ((by - ay) * n) / steps) * scale;
      if (over(at, size, px, py, 0)) sum += length / steps;
    }
  }
  return sum;
}
