import type { Site } from '../../../../../routing/site/site.ts';
import { type Area, right, top } from '../area.ts';
import { PENS } from '../ink.ts';
import type { Lettering } from '../lettering/lettering.ts';
import { LEADING } from '../lettering/letters.ts';
import { wrapped } from '../lettering/lines-of-text.ts';
import { centred, type Pen } from '../pen.ts';
import { drawNorthArrow } from './north-arrow.ts';
import { drawScaleBar } from './scale-bar.ts';
import type { View } from './view.ts';

/** Height of the band at the foot of a sheet that holds the title of its view, points. */
export const FOOT = 76;

const RADIUS = 14;

/**
 * The title of a view with its mark and scale, as long as `most` lets it; the place right of it is returned. `mark` is its
 * number on the sheet.
 */
export function drawViewTitle(
  pen: Pen,
  foot: Area,
  mark: string,
  title: string,
  scale: string,
  most: number = Math.min(360, foot.width * 0.3),
): number {
  const [x, y] = [foot.x + RADIUS, foot.y + 34];
  const { size, lines } = titleLines(title.toUpperCase(), most, pen.lettering);
  const width = Math.max(120, ...lines.map((line) => pen.lettering.width(line, size, 'bold')));
  pen.circle([x, y], RADIUS, PENS.heavy);
  pen.text(mark, [x, centred(y, pen.lettering.sizes.head)], {
    size: pen.lettering.sizes.head,
    weight: 'bold',
    anchor: 'middle',
  });
  lines.forEach((words, i) => {
    const up = (lines.length - 1 - i) * size * LEADING;
    pen.text(words, [x + RADIUS + 8, y + 4 + up], { size, weight: 'bold' });
  });
  pen.line(
    [
      [x + RADIUS, y],
      [x + RADIUS + 10 + width, y],
    ],
    PENS.heavy,
  );
  pen.text(scale, [x + RADIUS + 8, y - 4 - pen.lettering.sizes.note * 0.8], { size: pen.lettering.sizes.note });
  return x + RADIUS + 10 + width;
}

/** A title on one line, or smaller on two; only what two lines do not hold is cut short. */
function titleLines(
  title: string,
  most: number,
  lettering: Lettering,
): { readonly size: number; readonly lines: readonly string[] } {
  const { head, note, small } = lettering.sizes;
  if (lettering.width(title, head, 'bold') <= most) return { size: head, lines: [title] };
  for (const size of [note, small]) {
    const lines = wrapped(title, most, size, lettering, { weight: 'bold' });
    if (lines.length <= 2) return { size, lines };
  }
  return { size: small, lines: wrapped(title, most, small, lettering, { most: 2, weight: 'bold' }) };
}

/** The foot of a plan: title, scale bar, north, then notes as far as there is room; `end` is where the notes stop. */
export function drawPlanFoot(
  pen: Pen,
  foot: Area,
  view: View,
  site: Site,
  title: string,
  notes: readonly string[],
  end: number = right(foot),
): void {
  const after = drawViewTitle(pen, foot, '1', title, view.scale.says);
  drawScaleBar(pen, [after + 30, foot.y + 28], view.perFoot, site.units);
  drawNorthArrow(pen, [after + 295, foot.y + 32], site);
  drawNotes(pen, { x: after + 340, y: foot.y, width: end - after - 350, height: foot.height }, notes);
}

/** Numbered notes from the top of an area; what has no room is left out. */
function drawNotes(pen: Pen, area: Area, notes: readonly string[]): void {
  const size = pen.lettering.sizes.small;
  const step = size * LEADING;
  let y = top(area) - step;
  if (area.width < 140) return;
  notes.forEach((note, i) => {
    const lines = wrapped(note, area.width - 14, size, pen.lettering);
    if (y - (lines.length - 1) * step < area.y) return;
    pen.text(`${i + 1}.`, [area.x, y], { size });
    for (const line of lines) {
      pen.text(line, [area.x + 14, y], { size });
      y -= step;
    }
  });
}
