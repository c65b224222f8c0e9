import type { Point2 } from '../../site.ts';
import { middleOfPiece, near, offPiece, pieceOf, pointingAs, type StripePiece } from './pieces.ts';
import { Rows } from './rows.ts';
import { isWithin, STALL_DEPTH, STALL_WIDTH, type StallShape } from './shapes.ts';

/** A stall between two stripes. */
export interface StripedStall extends StallShape {
  /** Whether its head lies at the end that the stripes point to; null where the drawing does not tell. */
  readonly ahead: boolean | null;
  /** Lines that it is drawn with. */
  readonly of: readonly number[];
}

/** Stripes may run a little past the head and out of the row. */
const STRIPE = [STALL_DEPTH[0], STALL_DEPTH[1] + 2] as const;
/** A stripe through two rows that stand head to head. */
const THROUGH = [2 * STALL_DEPTH[0], 2 * STALL_DEPTH[1]] as const;
/** Two stripes nearer than this, feet, bound one stall: doubled paint. */
const DOUBLE = 2.5;
/** Stripes of a row are as long as each other within this share, and as parallel as this sine. */
const ALIKE = 0.12;
const PARALLEL = 0.05;
/** Farthest that the next stripe of a row is shifted along itself, in widths: a row at 40 degrees. */
const MOST_SHIFT = 1.2;
/** An end is closed by a line that passes it so near, feet. */
const CLOSES = 0.75;

/**
 * The stalls between stripes: parallel pieces of a stall's length, the next ones to each other a stall's width apart.
 * Stripes through two rows are cut where a line crosses them, else in the middle. The head is where a line joins the
 * ends of two stripes; in a row most of them tell.
 */
export function stallsBetween(pieces: readonly StripePiece[], rounding: number): readonly StripedStall[] {
  const slack = 2 * rounding;
  const stripes = single(pieces.flatMap((piece) => cut(piece, pieces, slack)));
  const find = near(stripes);
  const closing = near(pieces);
  const isClosed = (p: Point2, q: Point2): boolean => {
    const middle: Point2 = [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2];
    return closing(middle, 1).some((i) => [p, middle, q].every((at) => offPiece(pieces[i]!, at) <= CLOSES + slack));
  };
  const rows = new Rows(stripes.length);
  const found: { readonly stall: Omit<StripedStall, 'ahead'>; readonly row: number; readonly says: number }[] = [];
  for (const [i, stripe] of stripes.entries()) {
    const next = nextTo(stripe, i, stripes, find);
    if (next === null || !isWithin(next.width, STALL_WIDTH, slack)) continue;
    const other = pointingAs(stripes[next.index]!, stripe);
    const [far, nearEnd] = [isClosed(stripe.b, other.b), isClosed(stripe.a, other.a)];
    rows.join(i, next.index);
    found.push({
      stall: {
        middle: meanOf([stripe.a, stripe.b, other.a, other.b]),
        width: next.width,
        depth: (stripe.length + other.length) / 2,
        degrees: (Math.atan2(stripe.along[1] + other.along[1], stripe.along[0] + other.along[0]) * 180) / Math.PI,
        of: [stripe.of, other.of],
      },
      row: i,
      says: (far ? 1 : 0) - (nearEnd ? 1 : 0),
    });
  }
  const votes = new Map<number, { for: number; against: number }>();
  // Stripes of a row point the same way, or the very other.
  const turned = (i: number): number => Math.sign(dot(stripes[i]!.along, stripes[rows.of(i)]!.along));
  for (const { row, says } of found) {
    const vote = votes.get(rows.of(row)) ?? { for: 0, against: 0 };
    if (says * turned(row) > 0) vote.for += 1;
    if (says * turned(row) < 0) vote.against += 1;
    votes.set(rows.of(row), vote);
  }
  return found.map(({ stall, row }) => {
    const vote = votes.get(rows.of(row))!;
    const sure = Math.max(vote.for, vote.against) >= 4 * Math.min(vote.for, vote.against);
    return { ...stall, ahead: sure && vote.for !== vote.against ? vote.for > vote.against === turned(row) > 0 : null };
  });
}

/** A stripe as it is; one through two rows in two; nothing of what is no stripe. */
function cut(piece: StripePiece, pieces: readonly StripePiece[], slack: number): readonly StripePiece[] {
  if (isWithin(piece.length, STRIPE, slack)) return [piece];
  if (!isWithin(piece.length, THROUGH)) return [];
  const { a, b, along, length } = piece;
  const crossing = pieces
    .filter(({ along: other }) => Math.abs(along[0] * other[1] - along[1] * other[0]) > 0.4)
    .flatMap((other) => {
      const sine = along[0] * other.along[1] - along[1] * other.along[0];
      const [dx, dy] = [other.a[0] - a[0], other.a[1] - a[1]];
      const t = (dx * other.along[1] - dy * other.along[0]) / sine;
      const s = (dx * along[1] - dy * along[0]) / sine;
      return t > 0.3 * length && t < 0.7 * length && s > -0.5 && s < other.length + 0.5 ? [t] : [];
    });
  const t = crossing[0] ?? length / 2;
  const at: Point2 = [a[0] + t * along[0], a[1] + t * along[1]];
  return [pieceOf(a, at, piece.of), pieceOf(at, b, piece.of)].filter((part) => part !== null);
}

/** Stripes once: those that are doubled become the one between them. */
function single(stripes: readonly StripePiece[]): readonly StripePiece[] {
  const find = near(stripes);
  const gone = new Set<number>();
  return stripes.flatMap((stripe, i) => {
    if (gone.has(i)) return [];
    const twins = find(middleOfPiece(stripe), DOUBLE).filter((j) => {
      if (j === i || gone.has(j)) return false;
      const beside = relation(stripe, stripes[j]!);
      return (
        beside !== null &&
        Math.abs(beside.width) <= DOUBLE &&
        Math.abs(beside.shift) <= 1 + MOST_SHIFT * Math.abs(beside.width)
      );
    });
    for (const j of [i, ...twins]) gone.add(j);
    const all = [stripe, ...twins.map((j) => pointingAs(stripes[j]!, stripe))];
    const one = pieceOf(meanOf(all.map(({ a }) => a)), meanOf(all.map(({ b }) => b)), stripe.of);
    return one ? [one] : [];
  });
}

/** How far another stripe lies to the left, and how far it is shifted ahead; null where the two are not alike. */
function relation(one: StripePiece, also: StripePiece): { readonly width: number; readonly shift: number } | null {
  const other = pointingAs(also, one);
  const sine = one.along[0] * other.along[1] - one.along[1] * other.along[0];
  if (Math.abs(sine) > PARALLEL || Math.abs(one.length - other.length) > ALIKE * Math.max(one.length, other.length))
    return null;
  const [from, to] = [middleOfPiece(one), middleOfPiece(other)];
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  return { width: dy * one.along[0] - dx * one.along[1], shift: dx * one.along[0] + dy * one.along[1] };
}

/** The stripe next to one on its left, and how far it is; null where there is none. */
function nextTo(
  stripe: StripePiece,
  i: number,
  stripes: readonly StripePiece[],
  find: (at: Point2, within: number) => readonly number[],
): { readonly index: number; readonly width: number } | null {
  let best: { readonly index: number; readonly width: number } | null = null;
  for (const index of find(middleOfPiece(stripe), STALL_WIDTH[1] + 2)) {
    const beside = index === i ? null : relation(stripe, stripes[index]!);
    if (!beside || beside.width <= DOUBLE / 2 || Math.abs(beside.shift) > 1 + MOST_SHIFT * beside.width) continue;
    if (Math.abs(beside.shift) > 0.8 * stripe.length) continue;
    if (!best || beside.width < best.width) best = { index, width: beside.width };
  }
  return best;
}

const dot = (a: Point2, b: Point2): number => a[0] * b[0] + a[1] * b[1];

const meanOf = (points: readonly Point2[]): Point2 => [
  points.reduce((sum, [x]) => sum + x, 0) / points.length,
  points.reduce((sum, [, y]) => sum + y, 0) / points.length,
];
