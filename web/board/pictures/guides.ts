import { type Box, boxesMeet } from '../../../routing/plane/box.ts';
import { printLength } from '../../../routing/site/numbers/feet-inches.ts';
import type { Point2 } from '../../../routing/site/site.ts';
import { lettering, namePx } from '../painting/ink.ts';
import type { Guide } from '../snap/guide.ts';
import type { BoardPen, Frame } from './frame.ts';
import { traceOutline } from './outline.ts';
import { halo } from './stalls/drops.ts';

/** What the hand is held to, with its name; no name over another. Gives where the names stand, pixels. */
export function drawGuides(pen: BoardPen, frame: Frame, guides: readonly Guide[]): readonly Box[] {
  const { left, top, scale, width, height, ink } = frame;
  const named: Box[] = [];
  for (const guide of guides) {
    pen.beginPath();
    let words: readonly [string, number, number];
    if (guide.kind === 'point') {
      const x = left + guide.at[0] * scale;
      const y = top - guide.at[1] * scale;
      pen.rect(x - 6, y - 6, 12, 12);
      words = [guide.label, x + 12, y + 18];
    } else if (guide.kind === 'segment') {
      pen.moveTo(left + guide.from[0] * scale, top - guide.from[1] * scale);
      pen.lineTo(left + guide.to[0] * scale, top - guide.to[1] * scale);
      words = [guide.label, left + guide.to[0] * scale + 12, top - guide.to[1] * scale + 18];
    } else if (guide.kind === 'line') {
      const [x, y] = [left + guide.through[0] * scale, top - guide.through[1] * scale];
      const reach = width + height + Math.hypot(x, y);
      pen.moveTo(x - guide.way[0] * reach, y + guide.way[1] * reach);
      pen.lineTo(x + guide.way[0] * reach, y - guide.way[1] * reach);
      words = [guide.label, x + 12, y + 18];
    } else if (guide.kind === 'x') {
      const x = left + guide.at * scale;
      pen.moveTo(x, 0);
      pen.lineTo(x, height);
      words = [guide.label, x + 6, height - 14];
    } else {
      const y = top - guide.at * scale;
      pen.moveTo(0, y);
      pen.lineTo(width, y);
      words = [guide.label, 10, y - 10];
    }
    pen.strokeStyle = ink.ink;
    pen.lineWidth = guide.kind === 'segment' || guide.kind === 'point' ? 1.6 : 1;
    if (guide.kind !== 'point') pen.setLineDash([2, 4]);
    pen.stroke();
    pen.setLineDash([]);
    pen.textAlign = 'left';
    pen.textBaseline = 'middle';
    const [label, x, at] = words;
    pen.font = lettering(namePx(scale), 600);
    const y = freeLine(named, x, at, pen.measureText(label).width);
    named.push(lineBox(x, y, pen.measureText(label).width));
    halo(pen, frame, label, x, y, 600, ink.ink);
  }
  return named;
}

/** Pixels from one line of names to the next. */
const LINE = 17;

const lineBox = (x: number, y: number, width: number): Box => ({
  minX: x,
  minY: y - LINE / 2,
  maxX: x + width + 8,
  maxY: y + LINE / 2 - 1,
});

/** The first line from `y` down on which a name of a width stands over no other. */
export function freeLine(named: readonly Box[], x: number, y: number, width: number): number {
  let at = y;
  while (named.some((box) => boxesMeet(box, lineBox(x, at, width)))) at += LINE;
  return at;
}

export function drawBand(pen: BoardPen, { left, top, scale, ink }: Frame, band: Box): void {
  pen.beginPath();
  pen.rect(
    left + band.minX * scale,
    top - band.maxY * scale,
    (band.maxX - band.minX) * scale,
    (band.maxY - band.minY) * scale,
  );
  pen.globalAlpha = 0.08;
  pen.fillStyle = ink.ink;
  pen.fill();
  pen.globalAlpha = 1;
  pen.strokeStyle = ink.ink;
  pen.lineWidth = 1;
  pen.setLineDash([4, 3]);
  pen.stroke();
  pen.setLineDash([]);
}

/** The path that the hand draws round what it takes. */
export function drawLasso(pen: BoardPen, frame: Frame, lasso: readonly Point2[]): void {
  pen.beginPath();
  traceOutline(pen, frame, lasso);
  pen.globalAlpha = 0.08;
  pen.fillStyle = frame.ink.ink;
  pen.fill('evenodd');
  pen.globalAlpha = 1;
  pen.strokeStyle = frame.ink.ink;
  pen.lineWidth = 1;
  pen.setLineDash([4, 3]);
  pen.stroke();
  pen.setLineDash([]);
}

/** A measured distance, with how far along and across it is. */
export function drawMeasure(pen: BoardPen, frame: Frame, [from, to]: readonly [Point2, Point2]): void {
  const { left, top, scale, ink, units } = frame;
  const ax = left + from[0] * scale;
  const ay = top - from[1] * scale;
  const bx = left + to[0] * scale;
  const by = top - to[1] * scale;
  const length = Math.hypot(bx - ax, by - ay);
  pen.beginPath();
  pen.moveTo(ax, ay);
  pen.lineTo(bx, by);
  if (length > 1) {
    const nx = ((by - ay) / length) * 6;
    const ny = (-(bx - ax) / length) * 6;
    for (const [x, y] of [
      [ax, ay],
      [bx, by],
    ] as const) {
      pen.moveTo(x - nx, y - ny);
      pen.lineTo(x + nx, y + ny);
    }
  }
  pen.strokeStyle = ink.ink;
  pen.lineWidth = 1.6;
  pen.stroke();
  const dx = Math.abs(to[0] - from[0]);
  const dy = Math.abs(to[1] - from[1]);
  pen.textAlign = 'left';
  pen.textBaseline = 'middle';
  const words = printLength(Math.hypot(dx, dy), units);
  halo(pen, frame, words, bx + 12, by - 9, 700, ink.ink);
  if (dx > 0 && dy > 0)
    halo(
      pen,
      frame,
      `${printLength(dx, units)} along x, ${printLength(dy, units)} along y`,
      bx + 12,
      by + 8,
      400,
      ink.soft,
    );
}

/** A place that a panel points at: a cross in a ring. */
export function drawPin(pen: BoardPen, { left, top, scale, ink }: Frame, [x, y]: Point2): void {
  const px = left + x * scale;
  const py = top - y * scale;
  pen.beginPath();
  pen.arc(px, py, 11, 0, 2 * Math.PI);
  pen.moveTo(px - 16, py);
  pen.lineTo(px + 16, py);
  pen.moveTo(px, py - 16);
  pen.lineTo(px, py + 16);
  pen.strokeStyle = ink.paper;
  pen.lineWidth = 4;
  pen.stroke();
  pen.strokeStyle = ink.ink;
  pen.lineWidth = 1.4;
  pen.stroke();
}
