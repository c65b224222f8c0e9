import type { Point2 } from '../../../../../routing/site/site.ts';
import { right, top } from '../area.ts';
import { PALE, PENS } from '../ink.ts';
import { CAP, LEADING } from '../lettering/letters.ts';
import { shortened } from '../lettering/lines-of-text.ts';
import type { Pen } from '../pen.ts';
import { DELTA_HEIGHT, drawDelta } from '../revision/delta.ts';
import { runsFromRight } from '../scripts/base-direction.ts';
import {
  aboveHead,
  CELL_PAD,
  type LaidLine,
  type LaidRow,
  SWATCH,
  SWATCH_STEP,
  swatchRoom,
  type TablePart,
} from './table.ts';

/** Draws a part of a table: title, head, rows with thin rules between them, and the lines under its end. */
export function drawTable(pen: Pen, part: TablePart): void {
  const { area, title, lead, head, rows, foot } = part;
  const { sizes } = pen.lettering;
  const step = sizes.small * LEADING;
  let y = top(area) - sizes.head;
  const whole = title.toUpperCase();
  // A title that is wider than its table is set smaller before it is cut short.
  const size =
    [sizes.head, sizes.note, sizes.small].find((one) => pen.lettering.width(whole, one, 'bold') <= area.width) ??
    sizes.small;
  const words = shortened(whole, area.width, size, pen.lettering, 'bold');
  pen.text(words, [area.x, y], { size, weight: 'bold' });
  y -= sizes.head * 0.35;
  const delta = (foot: number, room: number): void => {
    const number = part.table.deltas?.number ?? '';
    // What it takes is free right of every table: the gap to the next, or the one before the title block.
    const side = Math.min(1.25 * sizes.small, (room - 1) / DELTA_HEIGHT);
    pen.onLayer('revisions', () => drawDelta(pen, [right(area) + 1.5 + side / 2, foot], number, side));
  };
  const paragraph = (lines: readonly LaidLine[]): void => {
    for (const { text, hasDelta } of lines) {
      y -= step;
      pen.text(text, [area.x, y], { size: sizes.small });
      if (hasDelta) delta(y - 0.15 * step, step);
    }
  };
  paragraph(lead);
  const start = top(area) - aboveHead(part, pen.lettering);
  const { isPlain = false } = part.table;
  if (!isPlain) {
    pen.fillArea({ x: area.x, y: start - head.height, width: area.width, height: head.height }, PALE);
    drawRow(pen, part, head, start, 'bold');
  }
  y = start - head.height;
  const rules: Point2[][] = [];
  for (const row of rows) {
    drawRow(pen, part, row, y, 'regular');
    y -= row.height;
    const line = Math.min(row.height, step + 3.5);
    if (row.hasDelta) delta(y + row.height - line + 0.5, line);
    rules.push([
      [area.x, y],
      [right(area), y],
    ]);
  }
  if (!isPlain) drawRules(pen, part, rules, start, y);
  y -= 2;
  paragraph(foot);
}

/** Hair lines between rows and columns, the head underlined, a border round it all. */
function drawRules(
  pen: Pen,
  { area, widths, head }: TablePart,
  rules: readonly Point2[][],
  start: number,
  y: number,
): void {
  pen.lines(rules.slice(0, -1), PENS.existingHair);
  const uprights: Point2[][] = [];
  let x = area.x;
  for (const width of widths.slice(0, -1)) {
    x += width;
    uprights.push([
      [x, start],
      [x, y],
    ]);
  }
  pen.lines(uprights, PENS.existingHair);
  pen.line(
    [
      [area.x, start - head.height],
      [right(area), start - head.height],
    ],
    PENS.plain,
  );
  pen.rectangle({ x: area.x, y, width: area.width, height: start - y }, PENS.plain);
}

function drawRow(
  pen: Pen,
  { area, widths, table }: TablePart,
  row: LaidRow,
  y: number,
  weight: 'regular' | 'bold',
): void {
  const { small } = pen.lettering.sizes;
  let x = area.x;
  row.cells.forEach(({ lines, swatches }, i) => {
    const width = widths[i]!;
    // Words that run from the right begin at the right edge of a column that others begin at the left of.
    const { align = runsFromRight(lines.join(' ')) ? 'right' : 'left' } = table.columns[i]!;
    lines.forEach((line, k) => {
      const base = y - 2 - small * CAP - k * small * LEADING - (small * LEADING - small * CAP) / 2 + 0.5;
      const before = k === 0 ? swatchRoom(swatches.length) : 0;
      const wide = align === 'left' ? 0 : pen.lettering.width(line, small, weight) + before;
      const start =
        align === 'right' ? x + width - CELL_PAD - wide : align === 'middle' ? x + (width - wide) / 2 : x + CELL_PAD;
      if (k === 0)
        swatches.forEach((colour, n) => {
          pen.fillArea(
            { x: start + n * SWATCH_STEP, y: base + (small * CAP - SWATCH) / 2, width: SWATCH, height: SWATCH },
            colour,
          );
        });
      pen.text(line, [start + before, base], { size: small, weight });
    });
    x += width;
  });
}
