import type { Point2 } from '../../site/site.ts';
import { cosine, depthToWall, leanOf, sine, widthAlongAisle } from './angled-stall.ts';
import type { Side } from './row-frame.ts';
import { type Slot, type SlotShape, type SlotUse, slotsOf } from './row-slots.ts';

/** What a row of stalls is like. Lengths in feet. */
export interface RowShape extends SlotShape {
  /** Along the stripes. */
  readonly depth: number;
  /** Degrees between stripes and aisle, up to 90; 0 is parallel parking. */
  readonly angle: number;
  /** Which way angled stalls lean: `forward` where one drives in on the way from the line's start to its end. */
  readonly lean: 'forward' | 'back';
  /** One row; a second across the aisle; or a second behind it, head to head. */
  readonly rows: 'one' | 'across' | 'heads';
  /** Width of the drive aisle; 0 draws none. */
  readonly aisle: number;
  /** The drawn line is where cars drive in, or where they stop: the kerb. */
  readonly line: 'entry' | 'head';
  /** On which side of the line the stalls lie. */
  readonly side: Side;
  /** Use of stalls that are not standard, by their place in order, the first being 1; a second row counts on. */
  readonly uses: ReadonlyMap<number, SlotUse>;
}

export interface RowStall {
  readonly at: Point2;
  readonly width: number;
  readonly depth: number;
  readonly heading: number;
  readonly use: SlotUse;
}

/** A row laid out: stalls in order, and the ground beside them. */
export interface StallRow {
  readonly stalls: readonly RowStall[];
  /** Stalls in each row. */
  readonly count: number;
  /** Access aisles beside accessible stalls. */
  readonly access: readonly (readonly Point2[])[];
  readonly aisles: readonly (readonly Point2[])[];
  /** Along the line, the lean of angled stalls included. */
  readonly length: number;
  /** Square to the line, from the outermost stall to the other, an aisle between them included. */
  readonly across: number;
}

/** Rows longer than this are not what anyone means. */
export const MAX_STALLS = 500;

/** Along the line: n W / sin a, and the lean of the last stripe. Parallel stalls lie end to end. */
function lengthOf(slots: readonly Slot[], { depth, angle }: RowShape): number {
  if (angle === 0) return slots.reduce((sum, { kind }) => sum + (kind === 'stall' ? depth : 0), 0);
  return slots.reduce((sum, { width }) => sum + widthAlongAisle(width, angle), 0) + leanOf(depth, angle);
}

/** Along the line, of one row or two: rows that interlock reach past each other. */
export function wholeLength(rows: readonly Slot[][], shape: RowShape): number {
  const [first, second] = rows;
  const length = Math.max(...rows.map((slots) => lengthOf(slots, shape)));
  if (!second || !meshes(first!, second, shape)) return length;
  return length + reachPast(first!, shape);
}

/** How far a row that interlocks with another reaches past it along the line. */
export function reachPast(slots: readonly Slot[], { depth, angle, lean }: RowShape): number {
  const end = (lean === 'forward' ? slots.at(-1)! : slots[0]!).width;
  return leanOf(depth, angle) + (end * cosine(angle) ** 2) / sine(angle);
}

export const meshes = (first: readonly Slot[], second: readonly Slot[], { rows, angle }: RowShape): boolean =>
  rows === 'heads' && angle > 0 && sameSlots(first, second);

/** Square to the aisle, as against a wall. */
export function depthOf(slots: readonly Slot[], { depth, angle, accessAisle }: RowShape): number {
  if (angle === 0)
    return Math.max(
      ...slots.map(({ width, kind, use }) => (kind === 'stall' ? width + (use === 'standard' ? 0 : accessAisle) : 0)),
    );
  return Math.max(...slots.map(({ width }) => depthToWall(width, depth, angle)));
}

const usesOf = (count: number, first: number, { uses }: RowShape): SlotUse[] =>
  Array.from({ length: count }, (_, i) => uses.get(first + i) ?? 'standard');

/** How many stalls to a row fit on a line of a length, each row with its access aisles and its lean. */
export function stallsThatFit(length: number, shape: RowShape): number {
  let count = 0;
  while (count < MAX_STALLS && wholeLength(slotRows(count + 1, shape), shape) <= length + 1e-6) count++;
  return count;
}

export function slotRows(count: number, shape: RowShape): Slot[][] {
  const first = slotsOf(usesOf(count, 1, shape), shape);
  return shape.rows === 'one' ? [first] : [first, slotsOf(usesOf(count, count + 1, shape), shape)];
}

export const sameSlots = (a: readonly Slot[], b: readonly Slot[]): boolean =>
  a.length === b.length && a.every(({ kind, width }, i) => kind === b[i]!.kind && width === b[i]!.width);
