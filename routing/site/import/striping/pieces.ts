import Flatbush from 'flatbush';
import { apart } from '../../../plane/distance.ts';
import type { Point2 } from '../../site.ts';
import type { ImportedLine } from '../imported.ts';

/** A straight piece of a line. */
export interface StripePiece {
  readonly a: Point2;
  readonly b: Point2;
  readonly length: number;
  /** Direction from a to b, of length one. */
  readonly along: Point2;
  /** Which line it is of. */
  readonly of: number;
}

/** Shorter than this, feet, is a chord of a curve or a tick. */
const SHORT = 2;

/** The straight pieces of lines, each once: sides that two outlines share are drawn twice. */
export function stripePieces(lines: readonly ImportedLine[]): readonly StripePiece[] {
  const found = new Map<string, StripePiece>();
  const place = ([x, y]: Point2): string => `${Math.round(x * 20)} ${Math.round(y * 20)}`;
  for (const [of, { points, closed }] of lines.entries())
    points.forEach((from, i) => {
      const to = points[i + 1] ?? (closed ? points[0] : undefined);
      if (!to) return;
      const piece = pieceOf(from, to, of);
      if (piece && piece.length >= SHORT) found.set(`${place(piece.a)} ${place(piece.b)}`, piece);
    });
  return [...found.values()];
}

const [COS, SIN] = [Math.cos(Math.PI / 6), Math.sin(Math.PI / 6)];

export function pieceOf(from: Point2, to: Point2, of: number): StripePiece | null {
  const length = apart(from, to);
  if (!(length > 0)) return null;
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  // From 30 degrees below the x axis on: lots lie along the axes, and there two that are alike point the same way.
  const forward = dy * COS + dx * SIN >= 0;
  const [a, b] = forward ? [from, to] : [to, from];
  const along: Point2 = forward ? [dx / length, dy / length] : [-dx / length, -dy / length];
  return { a, b, length, along, of };
}

/** The same piece, pointing the way that another does. */
export const pointingAs = (piece: StripePiece, { along: [x, y] }: StripePiece): StripePiece =>
  piece.along[0] * x + piece.along[1] * y >= 0
    ? piece
    : { ...piece, a: piece.b, b: piece.a, along: [-piece.along[0], -piece.along[1]] };

export const middleOfPiece = ({ a, b }: StripePiece): Point2 => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];

/** Finds the pieces near a place. */
export function near(pieces: readonly StripePiece[]): (at: Point2, within: number) => readonly number[] {
  if (pieces.length === 0) return () => [];
  const tree = new Flatbush(pieces.length);
  for (const { a, b } of pieces)
    tree.add(Math.min(a[0], b[0]), Math.min(a[1], b[1]), Math.max(a[0], b[0]), Math.max(a[1], b[1]));
  tree.finish();
  return ([x, y], within) => tree.search(x - within, y - within, x + within, y + within);
}

/** How far a point lies from a piece, feet. */
export function offPiece({ a, along, length }: StripePiece, [x, y]: Point2): number {
  const [dx, dy] = [x - a[0], y - a[1]];
  const t = Math.max(0, Math.min(length, dx * along[0] + dy * along[1]));
  return Math.hypot(dx - t * along[0], dy - t * along[1]);
}
