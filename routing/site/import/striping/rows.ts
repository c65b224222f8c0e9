import { addTo } from '../../../lists/grouping.ts';
import { direction } from '../../../plane/direction.ts';
import type { Point2, Stall } from '../../site.ts';

/** Which row each of a number of things is of: sets that are joined. */
export class Rows {
  readonly #parent: Int32Array;
  constructor(count: number) {
    this.#parent = Int32Array.from({ length: count }, (_, i) => i);
  }
  of(i: number): number {
    let at = i;
    while (this.#parent[at] !== at) {
      this.#parent[at] = this.#parent[this.#parent[at]!]!;
      at = this.#parent[at]!;
    }
    return at;
  }
  join(a: number, b: number): void {
    this.#parent[this.of(a)] = this.of(b);
  }
}

/** Stalls of a row stand as each other does, within this cosine: three degrees. */
const AS_ONE = Math.cos((3 * Math.PI) / 180);
const CELL = 20;

/** The rows of stalls: those that stand side by side and the same way, or the very other. */
export function stripedRows(stalls: readonly Omit<Stall, 'id'>[], middles: readonly Point2[]): Rows {
  const rows = new Rows(stalls.length);
  const cells = new Map<string, number[]>();
  const cellOf = ([x, y]: Point2, dx = 0, dy = 0): string =>
    `${Math.floor(x / CELL) + dx} ${Math.floor(y / CELL) + dy}`;
  for (const [i, stall] of stalls.entries()) {
    const [ux, uy] = direction(stall.heading);
    for (const dx of [-1, 0, 1])
      for (const dy of [-1, 0, 1])
        for (const j of cells.get(cellOf(middles[i]!, dx, dy)) ?? []) {
          const root = direction(stalls[rows.of(j)]!.heading);
          if (Math.abs(ux * root[0] + uy * root[1]) < AS_ONE) continue;
          const [x, y] = [middles[j]![0] - middles[i]![0], middles[j]![1] - middles[i]![1]];
          const beside = Math.abs(y * ux - x * uy);
          if (beside > 0.5 * stall.width && beside < 1.5 * stall.width && Math.abs(x * ux + y * uy) < 0.6 * stall.depth)
            rows.join(i, j);
        }
    addTo(cells, cellOf(middles[i]!), i);
  }
  return rows;
}
