import { indexById } from '../../site/ids.ts';
import { stallRectangle } from '../../site/place/stall-rectangle.ts';
import type { Point2, Point3, Stall } from '../../site/site.ts';
import { rowsOf } from '../rows/rows-of.ts';
import { atOneHeight, type DropOrder, PARTS, share } from './in-order.ts';

/** A place over two stalls, by their places in the list that was asked about. */
export interface PairPlace {
  readonly box: Point3;
  readonly stalls: readonly [number, number];
}

/** Two stalls, and the line along which their drop may hang: from their entries to their heads, or one place between heads. */
interface Pair {
  readonly stalls: readonly [number, number];
  readonly from: Point2;
  readonly to: Point2;
}

/** Neighbors in a row, slanted ones too, stand no farther apart than so many times a stall's width; else something is between them. */
const NEXT = 1.75;
/** Heads of stalls that face each other are no farther apart, feet: a walk or columns may be between them. */
const HEADS = 8;
/** Headings of stalls that face each other are opposite to so many degrees. */
const OPPOSITE = 1;

/**
 * Places for drops with two cords in order: over the stripe between two neighbors of each row, one pair after the other, so
 * that those of a row hang on one line at one height, at the first depth at which the most of the row can; or between the heads of
 * two stalls that face each other. Stalls that are in no pair are left to others. Feet.
 * @param isGood whether a box there can hang, and its cords serve both stalls
 */
export function pairsInOrder(
  stalls: readonly Stall[],
  { pairs, over }: Pick<DropOrder, 'pairs' | 'over'>,
  heightOver: (at: Point2) => number,
  isGood: (box: Point3, stalls: readonly [number, number]) => boolean,
): readonly PairPlace[] {
  if (pairs === undefined) return [];
  const groups = pairs === 'beside' ? pairsOfRows(stalls) : [facingPairs(stalls)];
  const parts = pairs === 'beside' ? PARTS[over] : [0];
  return groups.flatMap((group) => {
    let best: readonly PairPlace[] = [];
    for (const part of parts) {
      const boxes = atOneHeight(
        group.map(({ from, to }) => share(from, to, part)),
        heightOver,
      );
      const good = boxes.flatMap((box, k): PairPlace[] => {
        const own = group[k]!.stalls;
        return isGood(box, own) ? [{ box, stalls: own }] : [];
      });
      if (good.length > best.length) best = good;
      if (best.length === group.length) break;
    }
    return best;
  });
}

/** Neighbors two by two, row by row. */
function pairsOfRows(stalls: readonly Stall[]): readonly (readonly Pair[])[] {
  const byId = indexById(stalls);
  return rowsOf(stalls.map(({ id, at, heading }) => ({ id, at, heading }))).map((row) => {
    const own = row.map((id) => byId.get(id)!);
    const pairs: Pair[] = [];
    for (let k = 0; k + 1 < own.length; k++) {
      const [a, b] = [own[k]!, own[k + 1]!];
      if (gap(stalls[a]!.at, stalls[b]!.at) > NEXT * stalls[a]!.width) continue;
      const [from, to] = stripeBetween(stalls[a]!, stalls[b]!);
      pairs.push({ stalls: [a, b], from, to });
      k++;
    }
    return pairs;
  });
}

const gap = ([ax, ay]: Point2, [bx, by]: Point2): number => Math.hypot(ax - bx, ay - by);

/** The middle of the two stripes that are nearest to each other. */
function stripeBetween(a: Stall, b: Stall): readonly [entry: Point2, head: Point2] {
  const [one, other] = [a, b].map((stall) => {
    const [entryRight, headRight, headLeft, entryLeft] = stallRectangle(stall);
    return [
      [entryRight, headRight],
      [entryLeft, headLeft],
    ] as const;
  });
  const middles = one!.flatMap((p) =>
    other!.map((q) => ({
      apart: gap(share(p[0], p[1], 0.5), share(q[0], q[1], 0.5)),
      stripe: [share(p[0], q[0], 0.5), share(p[1], q[1], 0.5)] as const,
    })),
  );
  return middles.reduce((least, each) => (each.apart < least.apart ? each : least)).stripe;
}

/** Stalls head to head, each with the nearest to it of those that are left. */
function facingPairs(stalls: readonly Stall[]): readonly Pair[] {
  const heads = stalls.map((stall) => {
    const [, right, left] = stallRectangle(stall);
    return share(right, left, 0.5);
  });
  const isFacing = (a: Stall, b: Stall): boolean => {
    const off = (((a.heading - b.heading) % 360) + 360) % 360;
    return Math.abs(off - 180) <= OPPOSITE;
  };
  const taken = new Set<number>();
  return stalls.flatMap((stall, i): Pair[] => {
    if (taken.has(i)) return [];
    let other = -1;
    for (let j = i + 1; j < stalls.length; j++) {
      const far = gap(heads[i]!, heads[j]!);
      if (taken.has(j) || far > HEADS || !isFacing(stall, stalls[j]!)) continue;
      if (other < 0 || far < gap(heads[i]!, heads[other]!) - 1e-9) other = j;
    }
    if (other < 0) return [];
    taken.add(i).add(other);
    const at = share(heads[i]!, heads[other]!, 0.5);
    return [{ stalls: [i, other], from: at, to: at }];
  });
}
