import { direction } from '../../../../routing/plane/direction.ts';
import type { Point2 } from '../../../../routing/site/site.ts';
import { type Area, overlap } from './area.ts';

/** Which places on a sheet are taken. */
export interface FreeSpace {
  readonly take: (area: Area) => void;
  readonly isFree: (area: Area) => boolean;
}

/** Points to a side of the squares that taken places are sorted into. */
const CELL = 36;

/** A sheet on which nothing is taken yet. */
export function freeSpace(): FreeSpace {
  const cells = new Map<number, Area[]>();
  return {
    take: (area) => {
      const [left, low, right, high] = cellsOf(area);
      for (let i = left; i <= right; i++)
        for (let j = low; j <= high; j++) {
          const cell = cells.get(keyOf(i, j));
          if (cell === undefined) cells.set(keyOf(i, j), [area]);
          else cell.push(area);
        }
    },
    isFree: (area) => {
      const [left, low, right, high] = cellsOf(area);
      for (let i = left; i <= right; i++)
        for (let j = low; j <= high; j++) {
          const cell = cells.get(keyOf(i, j));
          if (cell !== undefined) for (let k = 0; k < cell.length; k++) if (overlap(cell[k]!, area)) return false;
        }
      return true;
    },
  };
}

/** The squares that an area lies over, from the first to the last. */
const cellsOf = ({ x, y, width, height }: Area): readonly [number, number, number, number] => [
  Math.floor(x / CELL),
  Math.floor(y / CELL),
  Math.floor((x + width) / CELL),
  Math.floor((y + height) / CELL),
];
const keyOf = (i: number, j: number): number => i * 65536 + j;

/** A space in which what is taken in another is taken too; what it takes itself, the other does not know. */
export function spaceOver(below: FreeSpace): FreeSpace {
  const own = freeSpace();
  return { take: own.take, isFree: (area) => own.isFree(area) && below.isFree(area) };
}

/**
 * Upright areas that cover a rectangle turned about its lower left corner: one where it is turned by quarters, else a row
 * of small ones along it, which leave the corners between them free.
 */
export function turnedAreas([x, y]: Point2, width: number, height: number, turn: number): readonly Area[] {
  // The same sums as below: what is level is most of what is written.
  if (turn === 0) return [{ x, y, width: x + width - x, height: y + height - y }];
  const [ux, uy] = direction(turn);
  const corners = (from: number, to: number): Point2[] =>
    [
      [from, 0],
      [to, 0],
      [to, height],
      [from, height],
    ].map(([a, b]): Point2 => [x + a! * ux - b! * uy, y + a! * uy + b! * ux]);
  if (turn % 90 === 0) return [around(corners(0, width))];
  const pieces = Math.max(1, Math.ceil(width / Math.max(height, 4)));
  return Array.from({ length: pieces }, (_, i) => around(corners((width * i) / pieces, (width * (i + 1)) / pieces)));
}

/** The upright area round points. */
export function around(points: readonly Point2[]): Area {
  let [left, low, right, top] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of points) {
    left = Math.min(left, x);
    low = Math.min(low, y);
    right = Math.max(right, x);
    top = Math.max(top, y);
  }
  return { x: left, y: low, width: right - left, height: top - low };
}

/** Small areas along a line, for what must keep off it; `off` points to either side. */
export function* alongLine(points: readonly Point2[], off: number): Generator<Area> {
  for (let i = 1; i < points.length; i++) {
    const [ax, ay] = points[i - 1]!;
    const [bx, by] = points[i]!;
    const isUpright = ax === bx || ay === by;
    const pieces = isUpright ? 1 : Math.max(1, Math.ceil(Math.hypot(bx - ax, by - ay) / 6));
    for (let k = 0; k < pieces; k++) {
      const from: Point2 = [ax + ((bx - ax) * k) / pieces, ay + ((by - ay) * k) / pieces];
      const to: Point2 = [ax + ((bx - ax) * (k + 1)) / pieces, ay + ((by - ay) * (k + 1)) / pieces];
      const { x, y, width, height } = around([from, to]);
      yield { x: x - off, y: y - off, width: width + 2 * off, height: height + 2 * off };
    }
  }
}
