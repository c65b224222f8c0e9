/** Rows that are remembered at once; beyond, all are forgotten, and what is alike to one of them has a new number. */
const MOST = 200_000;

interface Entry {
  readonly row: readonly number[];
  readonly number: number;
  /** Another with the same hash, as few have. */
  readonly next: Entry | undefined;
}

/** One number seen as its bits. */
const value = new Float64Array(1);
const bits = new Uint32Array(value.buffer);

function hashOf(row: readonly number[]): number {
  let hash = row.length;
  for (let i = 0; i < row.length; i++) {
    value[0] = row[i]!;
    hash = Math.imul(hash ^ bits[0]!, 0x9e3779b1);
    hash = Math.imul(hash ^ (hash >>> 15) ^ bits[1]!, 0x85ebca6b);
  }
  return hash ^ (hash >>> 13);
}

function equal(a: readonly number[], b: readonly number[]): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}

/**
 * A number for a row of numbers: the same for equal rows, never the same for others. What goes by the row alone can then
 * be kept by its number, so that it is worked once for all that are alike.
 */
export function numbering(most = MOST): (row: readonly number[]) => number {
  const known = new Map<number, Entry>();
  let next = 0;
  let held = 0;
  return (row) => {
    const hash = hashOf(row);
    const first = known.get(hash);
    for (let entry = first; entry !== undefined; entry = entry.next) if (equal(entry.row, row)) return entry.number;
    const isFull = held >= most;
    if (isFull) {
      known.clear();
      held = 0;
    }
    held++;
    known.set(hash, { row, number: next, next: isFull ? undefined : first });
    return next++;
  };
}
