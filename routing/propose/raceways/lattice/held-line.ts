import { holderOf } from '../../../network/support/holders.ts';
import { placeOn } from '../../../network/support/share-out.ts';
import type { Steel } from '../../../network/support/steel-near.ts';
import { heldOn } from '../../../network/support/unheld.ts';
import { between, distance, LENGTH_SLACK } from '../../../plane/space.ts';
import type { Point3 } from '../../../site/site.ts';

/** A straight piece of a line of a lattice. */
export interface HeldPiece {
  readonly a: Point3;
  readonly b: Point3;
}

/** A strut from one member to another that would hold what hangs between. */
export interface Stringer {
  readonly from: Point3;
  readonly to: Point3;
}

/** How a piece is held. */
export interface Held {
  /** Something holds it all along, what is put in among it. */
  readonly ok: boolean;
  /** Stringers that it wants, and how many feet of them to a foot of it. */
  readonly stringers: readonly Stringer[];
  readonly share: number;
  /** Feet from its ends, a and b, along it and on to the nearest place that is held. */
  readonly fromA: number;
  readonly fromB: number;
}

/** What holds, and how far. Feet. */
export interface Holding {
  readonly steel: Steel;
  readonly reach: number;
  /** Supports may be so far apart. */
  readonly apart: number;
  /** Something stands there against which a leg rises: it is held, though not by steel. */
  readonly isAnchor: (at: Point3) => boolean;
  /** Whether a stringer may be put over a place. */
  readonly mayHang: (at: Point3) => boolean;
}

/** Longer than this, feet, a strut of channel between members is no usual thing. Common practice, no source. */
export const LONGEST_STRINGER = 30;

interface Gap {
  readonly from: { readonly piece: number; readonly at: Point3; readonly isSteel: boolean } | null;
  /** Feet of each piece that lie in it. */
  readonly feet: Map<number, number>;
  length: number;
}

/**
 * How the pieces of one line are held, in order along it; null where the line is broken. A stretch between two held places
 * may be as long as supports may be apart; a longer one wants a stringer from steel to steel, where one may be. Past the
 * last steel what is no longer than that may hang, but nothing goes on from there.
 */
export function heldAlong(pieces: readonly (HeldPiece | null)[], holding: Holding): readonly (Held | null)[] {
  const { steel, reach, apart, isAnchor, mayHang } = holding;
  const bad = new Set<number>();
  const put = pieces.map((): Stringer[] => []);
  const share = pieces.map(() => 0);
  /** Places along the line at which it is held, as feet from its start. */
  const heldAt: (readonly [from: number, to: number])[] = [];
  const begins: number[] = [];
  let gone = 0;
  let gap: Gap = { from: null, feet: new Map(), length: 0 };

  const close = (end: { readonly at: Point3; readonly isSteel: boolean } | null, piece: number): void => {
    const { from, feet, length } = gap;
    gap = { from: end && { piece, ...end }, feet: new Map(), length: 0 };
    if (length <= apart + LENGTH_SLACK && (from !== null || end !== null)) return;
    const own = [...feet.keys()];
    if (from === null || end === null) {
      let reached = 0;
      // From the held end outward; what is farther is not held.
      for (const i of from === null ? own.reverse() : own) {
        reached += feet.get(i)!;
        if ((from === null && end === null) || reached > apart + LENGTH_SLACK) bad.add(i);
      }
      return;
    }
    const stringer = from.isSteel && end.isSteel ? stringerOf(from.at, end.at, holding) : null;
    if (stringer === null || !own.every((i) => mayHang(between(pieces[i]!.a, pieces[i]!.b, 0.5)))) {
      for (const i of own) bad.add(i);
      return;
    }
    const long = distance(stringer.from, stringer.to);
    for (const i of own) {
      put[i]!.push(stringer);
      share[i]! += (long * feet.get(i)!) / length / distance(pieces[i]!.a, pieces[i]!.b);
    }
  };

  pieces.forEach((piece, i) => {
    begins.push(gone);
    if (piece === null) {
      close(null, i);
      gone += BROKEN;
      return;
    }
    const { a, b } = piece;
    const last = pieces[i - 1];
    if (last) gap.length += Math.abs(a[2] - last.b[2]);
    if (isAnchor(a)) {
      close({ at: a, isSteel: false }, i);
      heldAt.push([gone, gone]);
    }
    const whole = distance(a, b);
    const add = (from: number, to: number): void => {
      const feet = (to - from) * whole;
      if (feet <= LENGTH_SLACK) return;
      gap.feet.set(i, (gap.feet.get(i) ?? 0) + feet);
      gap.length += feet;
    };
    let reached = 0;
    for (const [from, to] of heldOn(a, b, steel, reach)) {
      if (from > reached) add(reached, from);
      if (from >= reached) close({ at: between(a, b, from), isSteel: true }, i);
      if (to > reached) {
        reached = to;
        gap = { from: { piece: i, at: between(a, b, to), isSteel: true }, feet: new Map(), length: 0 };
      }
      heldAt.push([gone + from * whole, gone + to * whole]);
    }
    if (reached < 1) add(reached, 1);
    gone += whole;
    if (isAnchor(b)) {
      close({ at: b, isSteel: false }, i);
      heldAt.push([gone, gone]);
    }
  });
  close(null, pieces.length);

  const off = (at: number, way: 1 | -1): number => {
    let least = Number.POSITIVE_INFINITY;
    for (const [from, to] of heldAt) {
      if (at >= from - LENGTH_SLACK && at <= to + LENGTH_SLACK) return 0;
      const feet = way === 1 ? from - at : at - to;
      if (feet > 0) least = Math.min(least, feet);
    }
    return least;
  };
  return pieces.map((piece, i): Held | null => {
    if (piece === null) return null;
    const isPut = put[i]!.length > 0;
    return {
      ok: !bad.has(i),
      stringers: put[i]!,
      share: share[i]!,
      fromA: isPut ? 0 : off(begins[i]!, 1),
      fromB: isPut ? 0 : off(begins[i]! + distance(piece.a, piece.b), -1),
    };
  });
}

/** Farther than anything reaches along a line: nothing holds over a break. */
const BROKEN = 1e6;

/** The strut between the members that hold the two ends of a gap; null where it would be too long, or stand steep. */
function stringerOf(from: Point3, to: Point3, { steel, reach }: Holding): Stringer | null {
  const [a, b] = [from, to].map((at) => {
    const holder = holderOf(at, steel, reach) ?? holderOf(at, steel, reach + EDGE);
    return holder && placeOn(holder, at);
  });
  if (!a || !b) return null;
  const long = distance(a, b);
  return long <= LONGEST_STRINGER && long > 0 && Math.abs(a[2] - b[2]) <= STEEP * long ? { from: a, to: b } : null;
}

/** On the edge of what a member holds, rounding may leave none: a hair more reach finds it. */
const EDGE = 1e-6;
/** Rise over run of a stringer at most. */
const STEEP = 0.2;
