import { indexById } from '../../site/ids.ts';
import { stallRectangle } from '../../site/place/stall-rectangle.ts';
import type { Member, Point2, Point3, Stall } from '../../site/site.ts';
import type { LotFrame } from '../raceways/lattice/lot-frame.ts';
import { rowsOf } from '../rows/rows-of.ts';

/** How drops that stand in order are set out along their rows. */
export interface DropOrder {
  /** What branches come from: drops hang over the stripes of their stalls that are nearer to it; null where it is not known. */
  readonly toward: Point2 | null;
  /** Over the other stripes. */
  readonly isFlipped: boolean;
  /** Over the stripes of slanted stalls that lie nearer to the row before their heads, wherever the feed is. */
  readonly isInner?: boolean;
  /** Over the middle of stripes, or as near to the heads of the stalls as their cords reach. */
  readonly over: 'middle' | 'heads';
  /** So many feet lower under steel than is usual, as far as it still holds what hangs there. */
  readonly lower?: number;
  /** Of drops with two cords: over the stripe between two neighbors, or between the heads of two stalls that face each other. */
  readonly pairs?: 'beside' | 'facing';
  /** Right under the steel, where that takes a lift as well. */
  readonly isAtSteel?: boolean;
}

/** Shares of a stall's depth from its entry, in the order in which they are tried. */
export const PARTS = {
  middle: [0.5, 0.55, 0.45, 0.6, 0.4, 0.65, 0.35, 0.7, 0.3, 0.75, 0.25, 0.8, 0.85, 0.9, 0.95, 1],
  heads: [1, 0.95, 0.9, 0.85, 0.8, 0.75, 0.7, 0.65, 0.6, 0.55, 0.5],
} as const;

/** Where heights along a row differ by more, feet, each is its own: the steel slopes along it. */
const ONE_HEIGHT = 2;
/** Nearer than this, feet, what feeds a row is neither at its one end nor at its other. */
const BESIDE = 1;

/**
 * A place for each of some stalls, so that those of a row hang on one line at one height over the same stripe of each, and
 * rows that face each other alike: at the first depth at which the most of the row can hang so. Null for a stall whose
 * place there is none. Feet.
 * @param heightOver of a box over a place
 * @param isGood whether a box there can hang, and its cord serves the stall
 */
export function placesInOrder(
  stalls: readonly Stall[],
  frame: LotFrame,
  order: DropOrder,
  heightOver: (at: Point2) => number,
  isGood: (box: Point3, stall: number) => boolean,
): readonly (Point3 | null)[] {
  const places: (Point3 | null)[] = stalls.map(() => null);
  const byId = indexById(stalls);
  for (const row of rowsOf(stalls.map(({ id, at, heading }) => ({ id, at, heading })))) {
    const own = row.map((id) => byId.get(id)!);
    const stripes = stripesOf(
      own.map((i) => stalls[i]!),
      frame,
      order,
    );
    let best: readonly (Point3 | null)[] = [];
    let most = 0;
    for (const part of PARTS[order.over]) {
      const boxes = atOneHeight(
        stripes.map(([entry, head]) => share(entry, head, part)),
        heightOver,
      );
      const good = boxes.map((box, k) => (isGood(box, own[k]!) ? box : null));
      const count = good.filter((box) => box !== null).length;
      if (count > most) [best, most] = [good, count];
      if (count === own.length) break;
    }
    for (const [k, box] of best.entries()) places[own[k]!] = box;
  }
  return places;
}

type Stripe = readonly [entry: Point2, head: Point2];

/** Of each stall of a row the stripe on one side of it, the same for all. */
function stripesOf(
  row: readonly Stall[],
  frame: LotFrame,
  { toward, isFlipped, isInner = false }: DropOrder,
): readonly Stripe[] {
  const both = row.map((stall): readonly [Stripe, Stripe] => {
    const [entryRight, headRight, headLeft, entryLeft] = stallRectangle(stall);
    return [
      [entryRight, headRight],
      [entryLeft, headLeft],
    ];
  });
  const [right, left] = both[0]!.map(([entry, head]) => frame.into(share(entry, head, 0.5))) as [Point2, Point2];
  // The way of the lot that the row goes along.
  const axis = Math.abs(right[0] - left[0]) >= Math.abs(right[1] - left[1]) ? 0 : 1;
  const middle = row.reduce((sum, { at }) => sum + frame.into(at)[axis], 0) / row.length;
  const off = toward === null ? 0 : frame.into(toward)[axis] - middle;
  const isUp = (Math.abs(off) < BESIDE || off > 0) !== isFlipped;
  const ahead = isInner ? aheadOf(both[0]!, frame, axis) : 0;
  if (Math.abs(ahead) > LEANS) return both.map(([one, other]) => (ahead > 0 ? one : other));
  return both.map(([one, other]) => {
    const [a, b] = [frame.into(one[0])[axis], frame.into(other[0])[axis]];
    return a > b === isUp ? one : other;
  });
}

/** Over a slanted stall one of its stripes lies by more than this before the other, feet. */
const LEANS = 0.5;

/** How far the first of a stall's two stripes lies before the other, the way its head does, square to its row. */
function aheadOf([one, other]: readonly [Stripe, Stripe], frame: LotFrame, axis: 0 | 1): number {
  const [[entry, head], [beside]] = [one, other].map((stripe) => stripe.map((at) => frame.into(at)[1 - axis]!)) as [
    [number, number],
    [number, number],
  ];
  return (entry - beside) * Math.sign(head - entry);
}

export const share = ([ax, ay]: Point2, [bx, by]: Point2, part: number): Point2 => [
  ax + part * (bx - ax),
  ay + part * (by - ay),
];

/** Boxes at the height that most of their places have. */
export function atOneHeight(places: readonly Point2[], heightOver: (at: Point2) => number): readonly Point3[] {
  const heights = places.map(heightOver);
  const isLevel = Math.max(...heights) - Math.min(...heights) <= ONE_HEIGHT;
  const count = new Map<number, number>();
  for (const z of heights) count.set(z, (count.get(z) ?? 0) + 1);
  const usual = [...count].sort((a, b) => b[1] - a[1] || a[0] - b[0])[0]?.[0];
  return places.map(([x, y], i): Point3 => [x, y, isLevel ? usual! : heights[i]!]);
}

/** Between steel no farther apart than twice this, feet, a raceway with stringers is held. Common practice, no source. */
const BAY = 32;

/** Whether steel lies on both sides of a place, so that what goes along there from one to the other is held. */
export function isUnderRoof(members: readonly Member[], frame: LotFrame, [x, y]: Point3): boolean {
  const at = frame.into([x, y]);
  return [0, 1].some((axis) => {
    const other = 1 - axis;
    const over = members.flatMap(({ from, to }): number[] => {
      const [a, b] = [frame.into([from[0], from[1]]), frame.into([to[0], to[1]])];
      const isAcross =
        Math.min(a[other]!, b[other]!) <= at[other]! + 1e-6 && Math.max(a[other]!, b[other]!) >= at[other]! - 1e-6;
      return isAcross ? [(a[axis]! + b[axis]!) / 2 - at[axis]!] : [];
    });
    return over.some((off) => off <= 0 && off >= -BAY) && over.some((off) => off >= 0 && off <= BAY);
  });
}
