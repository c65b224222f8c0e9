import { direction } from '../../../../../routing/plane/direction.ts';
import type { Point2 } from '../../../../../routing/site/site.ts';
import type { Area } from '../area.ts';

/** Which places on a sheet are taken. */
export interface FreeSpace {
  readonly take: (area: Area) => void;
  readonly isFree: (area: Area) => boolean;
}

/** Points to a side of the squares that taken places are sorted into. */
const CELL = 36;

/** A sheet on which nothing is taken yet. */
export function freeSpace(): FreeSpace {
  // Of each square the sides of what lies over it, four numbers after four: places are tried by the million.
  const cells = new Map<number, number[]>();
  return {
    take: ({ x, y, width, height }) => {
      const [last, high] = [Math.floor((x + width) / CELL), Math.floor((y + height) / CELL)];
      for (let i = Math.floor(x / CELL); i <= last; i++)
        for (let j = Math.floor(y / CELL); j <= high; j++) {
          const cell = cells.get(keyOf(i, j));
          if (cell === undefined) cells.set(keyOf(i, j), [x, y, x + width, y + height]);
          else cell.push(x, y, x + width, y + height);
        }
    },
    isFree: ({ x, y, width, height }) => {
      const [right, top] = [x + width, y + height];
      const [first, last] = [Math.floor(x / CELL), Math.floor(right / CELL)];
      const [low, high] = [Math.floor(y / CELL), Math.floor(top / CELL)];
      for (let i = first; i <= last; i++)
        for (let j = low; j <= high; j++) {
          const cell = cells.get(keyOf(i, j));
          if (cell === undefined) continue;
          // What shares no more than an edge leaves it free.
          for (let k = 0; k < cell.length; k += 4)
            if (cell[k]! < right && x < cell[k + 2]! && cell[k + 1]! < top && y < cell[k + 3]!) return false;
        }
      return true;
    },
  };
}

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
  const piece = (from: number, to: number): Area => {
    // The corners as `around` would take them, without a list of them.
    const [ax, ay] = [x + from * ux - 0 * uy, y + from * uy + 0 * ux];
    const [bx, by] = [x + to * ux - 0 * uy, y + to * uy + 0 * ux];
    const [cx, cy] = [x + to * ux - height * uy, y + to * uy + height * ux];
    const [dx, dy] = [x + from * ux - height * uy, y + from * uy + height * ux];
    const [left, low] = [Math.min(ax, bx, cx, dx), Math.min(ay, by, cy, dy)];
    return { x: left, y: low, width: Math.max(ax, bx, cx, dx) - left, height: Math.max(ay, by, cy, dy) - low };
  };
  if (turn % 90 === 0) return [piece(0, width)];
  const pieces = Math.max(1, Math.ceil(width / Math.max(height, 4)));
  return Array.from({ length: pieces }, (_, i) => piece((width * i) / pieces, (width * (i + 1)) / pieces));
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

/** Takes small areas along a line, for what must keep off it; `off` points to either side. */
export const takeAlong = (space: FreeSpace, points: readonly Point2[], off: number): void => {
  areEachAlong(points, off, (area) => {
    space.take(area);
    return true;
  });
};

/** Whether all of these are free. */
export const isFreeAlong = ({ isFree }: FreeSpace, points: readonly Point2[], off: number): boolean =>
  areEachAlong(points, off, isFree);

/** One area after another along a line, each the same object: whether `is` says so of all. */
function areEachAlong(points: readonly Point2[], off: number, is: (area: Area) => boolean): boolean {
  const area = { x: 0, y: 0, width: 0, height: 0 };
  for (let i = 1; i < points.length; i++) {
    const [ax, ay] = points[i - 1]!;
    const [bx, by] = points[i]!;
    const isUpright = ax === bx || ay === by;
    const pieces = isUpright ? 1 : Math.max(1, Math.ceil(Math.hypot(bx - ax, by - ay) / 6));
    let [fx, fy] = [ax, ay];
    for (let k = 0; k < pieces; k++) {
      const tx = ax + ((bx - ax) * (k + 1)) / pieces;
      const ty = ay + ((by - ay) * (k + 1)) / pieces;
      const [x, y] = [Math.min(fx, tx), Math.min(fy, ty)];
      area.x = x - off;
      area.y = y - off;
      area.width = Math.max(fx, tx) - x + 2 * off;
      area.height = Math.max(fy, ty) - y + 2 * off;
      if (!is(area)) return false;
      fx = tx;
      fy = ty;
    }
  }
  return true;
}
