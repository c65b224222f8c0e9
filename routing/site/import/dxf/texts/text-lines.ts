import type { Point2 } from '../../../site.ts';

/** Words of a drawing as one entity writes them, in its own coordinates; a paragraph of columns writes several. */
export interface TextLines {
  /** Where the first line's base stands. */
  readonly at: Point2;
  readonly height: number;
  /** Degrees counter-clockwise. */
  readonly turn: number;
  readonly anchor: 'left' | 'middle' | 'right';
  /** No line is wider, in units of the drawing; absent where lines may run on. */
  readonly width?: number;
  /** From line to line, units of the drawing. */
  readonly step: number;
  readonly lines: readonly string[];
}

/** A point moved up by so much in the sense of letters that are turned. */
export const raised = ([x, y]: Point2, turn: number, up: number): Point2 => {
  const radians = (turn * Math.PI) / 180;
  return [x - up * Math.sin(radians), y + up * Math.cos(radians)];
};
