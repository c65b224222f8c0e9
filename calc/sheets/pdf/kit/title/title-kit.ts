import { type Area, right } from '../area.ts';
import { PENS } from '../ink.ts';
import { LEADING } from '../lettering/letters.ts';
import type { Pen, TextStyle } from '../pen.ts';

export const PAD = 8;

/** Rule across the block. */
export function rule(pen: Pen, block: Area, y: number): void {
  pen.line(
    [
      [block.x, y],
      [right(block), y],
    ],
    PENS.plain,
  );
}

/** Lines of text under one another from a height; the height under the last. */
export function setParagraph(pen: Pen, x: number, y: number, lines: readonly string[], style: TextStyle): number {
  let base = y;
  for (const line of lines) {
    base -= style.size * LEADING;
    pen.text(line, [x, base], style);
  }
  return base;
}
