import type { Gridlines, Point2 } from '../../site.ts';
import type { ImportedLine } from '../imported.ts';
import { pieceOf, type StripePiece } from './pieces.ts';
import type { PlacedWords } from './stall-labels.ts';

/** Bubbles at the ends of gridlines, radius in feet. */
const BUBBLE = [0.3, 8] as const;
/** A gridline is no shorter than this, feet. */
const LEAST_LENGTH = 8;
/** Lines nearer than this, feet, are one. */
const SAME = 0.1;
const LABEL = /^[A-Z]{0,2}\d{0,3}(\.\d{1,2})?$/i;

interface Bubble {
  readonly middle: Point2;
  readonly radius: number;
  readonly label: string;
  readonly of: number;
}

/** Gridlines and which lines they were made of; null where none is found. */
export interface FoundGridlines {
  readonly gridlines: Gridlines;
  readonly of: ReadonlySet<number>;
}

/**
 * Gridlines: long lines that end at, or in, a round bubble with a letter or number in it, in two directions square to
 * each other. They are turned as those are of which there are most, and measured from the site's origin.
 */
export function gridlinesOf(lines: readonly ImportedLine[], words: readonly PlacedWords[]): FoundGridlines | null {
  const bubbles = lines.flatMap((line, of) => bubbleOf(line, of, words));
  const found = lines.flatMap((line, of) => {
    if (line.closed || line.points.length < 2) return [];
    const piece = pieceOf(line.points[0]!, line.points.at(-1)!, of);
    if (!piece || piece.length < LEAST_LENGTH || !isStraight(line, piece)) return [];
    const bubble = bubbles.find((each) => ends(piece, each));
    return bubble ? [{ piece, bubble }] : [];
  });
  if (found.length === 0) return null;
  const rotation = mainTurn(found.map(({ piece }) => piece));
  const [cos, sin] = [Math.cos((rotation * Math.PI) / 180), Math.sin((rotation * Math.PI) / 180)];
  const x: { label: string; at: number }[] = [];
  const y: { label: string; at: number }[] = [];
  const of = new Set<number>();
  for (const { piece, bubble } of found) {
    const [ux, uy] = [piece.along[0] * cos + piece.along[1] * sin, piece.along[1] * cos - piece.along[0] * sin];
    const middle: Point2 = [(piece.a[0] + piece.b[0]) / 2, (piece.a[1] + piece.b[1]) / 2];
    const at = [middle[0] * cos + middle[1] * sin, middle[1] * cos - middle[0] * sin] as const;
    const list = Math.abs(uy) > 0.999 ? x : Math.abs(ux) > 0.999 ? y : null;
    if (!list) continue;
    of.add(piece.of).add(bubble.of);
    const place = Math.round(at[list === x ? 0 : 1] * 1e6) / 1e6;
    if (!list.some((each) => Math.abs(each.at - place) < SAME)) list.push({ label: bubble.label, at: place });
  }
  const inOrder = (list: { label: string; at: number }[]): { label: string; at: number }[] =>
    list.sort((a, b) => a.at - b.at);
  return { gridlines: { x: inOrder(x), y: inOrder(y), ...(rotation !== 0 && { rotation }) }, of };
}

function bubbleOf({ points, closed }: ImportedLine, of: number, words: readonly PlacedWords[]): readonly Bubble[] {
  if (!closed || points.length < 6) return [];
  const middle: Point2 = [mean(points.map(([x]) => x)), mean(points.map(([, y]) => y))];
  const radii = points.map(([x, y]) => Math.hypot(x - middle[0], y - middle[1]));
  const [least, radius] = [Math.min(...radii), Math.max(...radii)];
  if (radius - least > 0.16 * radius || radius < BUBBLE[0] || radius > BUBBLE[1]) return [];
  const inside = words.find(
    ({ middle: at, words: text }) =>
      Math.hypot(at[0] - middle[0], at[1] - middle[1]) < radius && text.trim() !== '' && LABEL.test(text.trim()),
  );
  return inside ? [{ middle, radius, label: inside.words.trim(), of }] : [];
}

/** A line ends at a bubble where it would go through its middle, and stops at its edge or inside. */
function ends({ a, b, along }: StripePiece, { middle, radius }: Bubble): boolean {
  const off = Math.abs((middle[0] - a[0]) * along[1] - (middle[1] - a[1]) * along[0]);
  const gap = Math.min(...[a, b].map(([x, y]) => Math.hypot(x - middle[0], y - middle[1])));
  return off < 0.25 * radius && gap < 1.5 * radius;
}

const isStraight = ({ points }: ImportedLine, { a, along }: StripePiece): boolean =>
  points.every(([x, y]) => Math.abs((x - a[0]) * along[1] - (y - a[1]) * along[0]) < SAME);

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** The turn of most lines, degrees from -45 to 45, whole where it is as good as whole. */
function mainTurn(pieces: readonly StripePiece[]): number {
  const turns = pieces.map(({ along: [x, y] }) => {
    const degrees = (Math.atan2(y, x) * 180) / Math.PI;
    return degrees - 90 * Math.round(degrees / 90);
  });
  const near = (turn: number): readonly number[] => turns.filter((other) => Math.abs(other - turn) < 0.5);
  const most = turns.map(near).sort((a, b) => b.length - a.length)[0]!;
  const turn = mean(most);
  return Math.abs(turn - Math.round(turn)) < 1e-4 ? Math.round(turn) + 0 : turn;
}
