import type { Point2 } from '../../../../../routing/site/site.ts';
import { PENS, WHITE } from '../ink.ts';
import { centred, type Pen } from '../pen.ts';

/** A note of the plans by its number: what it says, and where on the site what it speaks of stands. */
export interface Keynote {
  readonly number: number;
  readonly says: string;
  readonly places: readonly Point2[];
}

/** The keynotes of a sheet while it is drawn: those that a list of the set has, and those marked. */
export interface SheetKeynotes {
  readonly listed: readonly Keynote[];
  /** Numbers that stand on the plan. */
  readonly marked: Set<number>;
}

/** Half the height of a mark in sizes of its lettering. */
const HALF = 0.9;

/** Width and height of a mark, points. */
export const keynoteSize = (size: number): number => 2 * HALF * size;

/** A number in a hexagon about a point. */
export function drawKeynote(pen: Pen, [x, y]: Point2, number: number, size: number): void {
  const r = HALF * size;
  const corners = [0, 1, 2, 3, 4, 5].map((i): Point2 => {
    const [ux, uy] = HEXAGON[i]!;
    return [x + r * ux, y + r * uy];
  });
  pen.fill(corners, WHITE);
  pen.line(corners, PENS.thin, true);
  pen.text(String(number), [x, centred(y, size)], { size, weight: 'bold', anchor: 'middle' });
}

const SIDE = Math.sqrt(3) / 2;
/** Corners of a hexagon that lies on a side. */
const HEXAGON: readonly Point2[] = [
  [1, 0],
  [0.5, SIDE],
  [-0.5, SIDE],
  [-1, 0],
  [-0.5, -SIDE],
  [0.5, -SIDE],
];
