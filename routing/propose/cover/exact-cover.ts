/** Subproblems looked into before giving up. */
const MOST = 6000;

/**
 * The least cover of a problem, proved; null where that takes more than a fixed number of steps. The least number for a
 * set of elements is worked once: an element with the fewest columns is covered by each in turn, after columns within
 * other columns and elements that come along with others are set aside, and what falls apart is solved part by part.
 */
export function exactCover(elements: number, columns: readonly (readonly number[])[]): number[] | null {
  const masks = columns.map((column) => column.reduce((mask, e) => mask | (1n << BigInt(e)), 0n));
  const known = new Map<bigint, number>();
  let left = MOST;

  /** Fewest columns that cover `open`; null past the limit. */
  const least = (open: bigint, among: readonly bigint[]): number | null => {
    const reduced = reduce(open, among);
    let sum = 0;
    for (const part of apart(reduced)) {
      const count = ofPart(part);
      if (count === null) return null;
      sum += count;
    }
    return sum;
  };

  const ofPart = ({ open, columns: own }: Part): number | null => {
    const before = known.get(open);
    if (before !== undefined) return before;
    if (--left < 0) return null;
    const floor = lowest(open, own);
    let best = Number.POSITIVE_INFINITY;
    for (const column of thinnest(open, own)) {
      const rest = open & ~column;
      if (1 + lowest(rest, own) >= best) continue;
      const count = least(rest, own);
      if (count === null) return null;
      best = Math.min(best, 1 + count);
      if (best === floor) break;
    }
    known.set(open, best);
    return best;
  };

  const all = (1n << BigInt(elements)) - 1n;
  const total = least(all, masks);
  if (total === null) return null;
  const chosen: number[] = [];
  for (let open = all, count = total; open !== 0n; ) {
    const at = masks.findIndex((mask) => (mask & firstOf(open)) !== 0n && least(open & ~mask, masks) === count - 1);
    if (at < 0) return null;
    chosen.push(at);
    open &= ~(masks[at] as bigint);
    count--;
  }
  return chosen;
}

interface Part {
  readonly open: bigint;
  readonly columns: readonly bigint[];
}

const firstOf = (mask: bigint): bigint => mask & -mask;

function* bitsOf(mask: bigint): Generator<bigint> {
  for (let rest = mask; rest !== 0n; rest &= rest - 1n) yield firstOf(rest);
}

function sizeOf(mask: bigint): number {
  let size = 0;
  for (let rest = mask; rest !== 0n; rest &= rest - 1n) size++;
  return size;
}

/** Leaves out columns within others, then elements that every column of another element holds, as long as any goes. */
function reduce(open: bigint, among: readonly bigint[]): Part {
  let rows = open;
  let columns = [...new Set(among.map((column) => column & open))].filter((column) => column !== 0n);
  for (;;) {
    const sized = columns.map((column) => ({ column, size: sizeOf(column) })).sort((a, b) => b.size - a.size);
    const kept: bigint[] = [];
    for (const { column } of sized) if (!kept.some((wide) => (wide & column) === column)) kept.push(column);
    columns = kept;
    const before = rows;
    for (const row of bitsOf(rows)) {
      if ((rows & row) === 0n) continue;
      let common = rows;
      for (const column of columns) if ((column & row) !== 0n) common &= column;
      rows &= ~(common & ~row);
    }
    if (rows === before) return { open: rows, columns };
    columns = [...new Set(columns.map((column) => column & rows))].filter((column) => column !== 0n);
  }
}

function apart({ open, columns }: Part): Part[] {
  const parts: { open: bigint; columns: bigint[] }[] = [];
  for (const column of columns) {
    const touching = parts.filter((part) => (part.open & column) !== 0n);
    const joined = { open: column, columns: [column] };
    for (const part of touching) {
      joined.open |= part.open;
      joined.columns.push(...part.columns);
      parts.splice(parts.indexOf(part), 1);
    }
    parts.push(joined);
  }
  return parts.filter((part) => (part.open & open) !== 0n).sort((a, b) => (a.open < b.open ? -1 : 1));
}

/** The columns of the element that has the fewest, the widest first. */
function thinnest(open: bigint, columns: readonly bigint[]): bigint[] {
  let best: bigint[] = [];
  for (const row of bitsOf(open)) {
    const own = columns.filter((column) => (column & row) !== 0n);
    if (best.length === 0 || own.length < best.length) best = own;
    if (best.length === 1) break;
  }
  return best.sort((a, b) => sizeOf(b) - sizeOf(a));
}

/** At least so many columns: elements no two of which share one, or as many as the widest needs. */
function lowest(open: bigint, columns: readonly bigint[]): number {
  let widest = 1;
  for (const column of columns) widest = Math.max(widest, sizeOf(column & open));
  let alone = 0;
  let rest = open;
  while (rest !== 0n) {
    const row = firstOf(rest);
    alone++;
    for (const column of columns) if ((column & row) !== 0n) rest &= ~column;
  }
  return Math.max(alone, Math.ceil(sizeOf(open) / widest));
}
