/** Equal stocks to be cut into pieces: the distinct sizes, largest first, and how many of each are wanted. */
export interface StockProblem {
  readonly capacity: number;
  readonly sizes: readonly number[];
  readonly wanted: readonly number[];
}

/** How many pieces of each size one stock is cut into. */
export type Pattern = readonly number[];

/** Sizes that differ by less than this share of the stock are one size, and a sum may pass the stock by as little. */
export const SAME = 1e-9;

/** Groups pieces into distinct sizes, largest first. */
export function problemOf(capacity: number, pieces: readonly number[]): StockProblem {
  const sizes: number[] = [];
  const wanted: number[] = [];
  for (const piece of [...pieces].sort((a, b) => b - a)) {
    const last = sizes.length - 1;
    if (last >= 0 && (sizes[last] as number) - piece <= SAME * capacity) wanted[last] = (wanted[last] as number) + 1;
    else {
      sizes.push(piece);
      wanted.push(1);
    }
  }
  return { capacity: capacity * (1 + SAME), sizes, wanted };
}
