import { boxOf } from '../../plane/box.ts';
import type { Rectangle } from '../../plane/rectangle.ts';
import { gridWays } from '../../site/place/grid-frame.ts';
import { stallRectangle } from '../../site/place/stall-rectangle.ts';
import type { Point2, Stall } from '../../site/site.ts';
import { stallsIn } from '../../standing/outlines.ts';

/** Columns by rows, feet apart, turned as a whole by degrees. */
interface Spread {
  readonly columns: number;
  readonly columnsEvery: number;
  readonly rows: number;
  readonly rowsEvery: number;
  readonly degrees: number;
}

/** Feet by which stalls may lie over each other and still only touch: what rounding and paint come to. */
const TOUCH = 0.1;

/**
 * The first standing stall, the originals among them, that a copy of the stalls named would lie on were they arrayed
 * so; null where every copy lands on free ground. Stalls that touch do not lie on each other.
 */
export function stallUnderArray(stalls: readonly Stall[], ids: ReadonlySet<string>, spread: Spread): Stall | null {
  const originals = stalls.filter(({ id }) => ids.has(id)).map(stallRectangle);
  const [along, across] = gridWays({ rotation: spread.degrees });
  for (let j = 0; j < spread.rows; j++)
    for (let i = j === 0 ? 1 : 0; i < spread.columns; i++) {
      const [a, b] = [i * spread.columnsEvery, j * spread.rowsEvery];
      const [dx, dy] = [a * along[0] + b * across[0], a * along[1] + b * across[1]];
      for (const original of originals) {
        const copy = original.map(([x, y]): Point2 => [x + dx, y + dy]) as unknown as Rectangle;
        const under = stallsIn(stalls, boxOf(copy)).find((stall) => liesOn(copy, stallRectangle(stall)));
        if (under) return under;
      }
    }
  return null;
}

/** Rectangles share more than an edge: no side of either parts them. */
const liesOn = (a: Rectangle, b: Rectangle): boolean => !parts(a, b) && !parts(b, a);

function parts(a: Rectangle, b: Rectangle): boolean {
  return a.some(([x, y], i) => {
    const [nextX, nextY] = a[(i + 1) % 4]!;
    const length = Math.hypot(nextX - x, nextY - y);
    // Counter-clockwise: what is to the right of a side is outside.
    return b.every(([px, py]) => ((nextX - x) * (py - y) - (nextY - y) * (px - x)) / length < TOUCH);
  });
}
