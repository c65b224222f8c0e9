import { coverBound } from './cover-bound.ts';
import { exactCover } from './exact-cover.ts';
import { searchCover } from './search-cover.ts';

export interface Cover {
  /** Columns taken, in their order. */
  readonly chosen: readonly number[];
  /** Proved: no cover takes fewer. */
  readonly bound: number;
}

/**
 * The fewest of some columns that together hold every element from 0 to `elements` - 1. Exact, by branching with
 * reductions, wherever that is settled within a fixed number of steps; where it is not, a good cover by local search and
 * the bound of a linear relaxation. The same input always gives the same answer.
 * @throws RangeError for an element that no column holds
 */
export function fewestColumns(elements: number, columns: readonly (readonly number[])[]): Cover {
  const held = new Uint8Array(elements);
  for (const column of columns) for (const e of column) held[e] = 1;
  const bare = held.indexOf(0);
  if (bare >= 0) throw new RangeError(`no column holds element ${bare}`);
  const chosen: number[] = [];
  let bound = 0;
  for (const part of partsOf(elements, columns)) {
    const place = new Map(part.elements.map((e, i) => [e, i]));
    const own = part.columns.map((c) => (columns[c] as readonly number[]).map((e) => place.get(e) as number));
    const exact = exactCover(part.elements.length, own);
    const found = exact ?? searchCover(part.elements.length, own);
    bound += exact ? exact.length : Math.min(found.length, coverBound(part.elements.length, own));
    for (const c of found) chosen.push(part.columns[c] as number);
  }
  return { chosen: chosen.sort((a, b) => a - b), bound };
}

interface Part {
  readonly elements: number[];
  readonly columns: number[];
}

/** Parts of a problem that have no column in common: each is solved by itself. */
function partsOf(elements: number, columns: readonly (readonly number[])[]): Part[] {
  const up = Int32Array.from({ length: elements }, (_, e) => e);
  const top = (e: number): number => {
    let at = e;
    while (up[at] !== at) {
      up[at] = up[up[at] as number] as number;
      at = up[at] as number;
    }
    return at;
  };
  for (const [first, ...others] of columns) if (first !== undefined) for (const e of others) up[top(e)] = top(first);
  const parts = new Map<number, Part>();
  for (let e = 0; e < elements; e++) {
    const part = parts.get(top(e)) ?? { elements: [], columns: [] };
    parts.set(top(e), part);
    part.elements.push(e);
  }
  columns.forEach(([first], c) => {
    if (first !== undefined) parts.get(top(first))?.columns.push(c);
  });
  return [...parts.values()];
}
