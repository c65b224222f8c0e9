/** A conduit where it hangs along a raceway: from and to which place, feet along it, and what its supports must keep to. */
export interface Lay {
  /** Id of the conduit. */
  readonly of: string;
  readonly from: number;
  readonly to: number;
  /** A support lies no farther than this from each end, feet. */
  readonly first: number;
  readonly last: number;
  /** And no farther than this from the next. */
  readonly spacing: number;
  /** The whole conduit is so short between boxes that it needs none. */
  readonly isNipple: boolean;
}

/** A support of all that hangs at one place of a raceway. */
export interface Support {
  /** Feet along the raceway. */
  readonly at: number;
  /** Places of its conduits in the list of lays. */
  readonly lays: readonly number[];
  /** A member is there to hang it from. */
  readonly held: boolean;
}

/** Two places nearer than this are one, feet: a lot that is turned is rounded to a millionth, and lengths along it add up. */
const SLIP = 1e-4;

/**
 * Supports along a raceway, as few as will do: each where the first of the conduits there comes to the end of what it may
 * span, and all conduits that pass it hang from it. `zones` are the parts of the raceway that a member holds, in order; a
 * support stands in the last of them before that place, and where there is none it stands there all the same, to be hung
 * from a stringer that is put in. Null: no member is drawn, and supports stand where the code asks for them.
 */
export function placeSupports(
  lays: readonly Lay[],
  zones: readonly (readonly [from: number, to: number])[] | null,
): readonly Support[] {
  const order = lays.map((_, i) => i).sort((p, q) => lays[p]!.from - lays[q]!.from);
  const open: { readonly lay: number; last: number | null }[] = [];
  const supports: Support[] = [];
  let next = 0;
  let last = Number.NEGATIVE_INFINITY;
  for (;;) {
    // The earliest place at which one of the conduits asks for a support, those that begin later among them.
    let due = Math.min(...open.map((one) => dueOf(lays[one.lay]!, one.last)), Number.POSITIVE_INFINITY);
    while (next < order.length && lays[order[next]!]!.from <= due + SLIP) {
      const lay = lays[order[next]!]!;
      if (!lay.isNipple) open.push({ lay: order[next]!, last: null });
      due = Math.min(due, dueOf(lay, null));
      next++;
    }
    if (due === Number.POSITIVE_INFINITY) {
      if (next >= order.length) return supports;
      continue;
    }
    const { at, held } = steelBefore(due, last, zones);
    const there = open.filter(({ lay }) => lays[lay]!.from <= at + SLIP && lays[lay]!.to >= at - SLIP);
    for (const one of there) one.last = at;
    supports.push({ at, held, lays: there.map(({ lay }) => lay).sort((p, q) => p - q) });
    last = at;
    for (let i = open.length - 1; i >= 0; i--)
      if (dueOf(lays[open[i]!.lay]!, open[i]!.last) === Number.POSITIVE_INFINITY) open.splice(i, 1);
  }
}

/** How far a lay goes before it asks for its next support; Infinity where it asks for none. */
function dueOf(lay: Lay, last: number | null): number {
  if (lay.isNipple) return Number.POSITIVE_INFINITY;
  if (last === null) return Math.min(lay.to, lay.from + lay.first);
  if (last >= lay.to - lay.last - SLIP) return Number.POSITIVE_INFINITY;
  return Math.min(lay.to, last + lay.spacing);
}

/** The last place no farther than `due` that a member holds, past the last support. */
function steelBefore(
  due: number,
  last: number,
  zones: readonly (readonly [number, number])[] | null,
): { readonly at: number; readonly held: boolean } {
  if (zones === null) return { at: due, held: true };
  for (let i = zones.length - 1; i >= 0; i--) {
    const [from, to] = zones[i]!;
    if (from > due + SLIP) continue;
    const at = Math.min(due, to);
    return at > last + SLIP ? { at, held: true } : { at: due, held: false };
  }
  return { at: due, held: false };
}
