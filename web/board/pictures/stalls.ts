import { lettering, namePx } from '../ink.ts';
import type { StallMark } from '../scene/mark.ts';
import type { StallBand } from '../scene/stall-bands.ts';
import type { Frame, Pen } from './frame.ts';
import { traceOutline } from './outline.ts';

/** Pixels to a foot from which stalls are drawn one by one. */
export const STALLS_FROM = 0.7;
const CARS_FROM = 12;
const LABELS_FROM = 22;
const ROUNDED_FROM = 4;

/** Far off, stalls side by side as one quiet band each: their stripes would be nearer than the eye can part. */
export function drawBands(pen: Pen, frame: Frame, bands: readonly StallBand[]): void {
  const { scale, left, top, ink } = frame;
  pen.fillStyle = ink.rule;
  for (const { corners, minX, minY, maxX, maxY } of bands) {
    const square = corners[0]![0] === corners[1]![0] || corners[0]![1] === corners[1]![1];
    if (square) {
      pen.fillRect(left + minX * scale, top - maxY * scale, (maxX - minX) * scale, (maxY - minY) * scale);
      continue;
    }
    pen.beginPath();
    traceOutline(pen, frame, corners);
    pen.fill();
  }
}

/** Stalls: striped on three sides, open where one drives in. */
export function drawStalls(pen: Pen, frame: Frame, marks: readonly StallMark[]): void {
  const { scale, left, top, ink, chosen } = frame;
  if (chosen) {
    pen.beginPath();
    for (const mark of marks) traceOutline(pen, frame, mark.corners);
    pen.fillStyle = ink.chosen;
    pen.fill();
  }
  pen.beginPath();
  for (const { corners } of marks) {
    const [entryRight, headRight, headLeft, entryLeft] = corners;
    pen.moveTo(left + entryRight[0] * scale, top - entryRight[1] * scale);
    pen.lineTo(left + headRight[0] * scale, top - headRight[1] * scale);
    pen.lineTo(left + headLeft[0] * scale, top - headLeft[1] * scale);
    pen.lineTo(left + entryLeft[0] * scale, top - entryLeft[1] * scale);
  }
  pen.strokeStyle = chosen ? ink.ink : ink.stripe;
  pen.lineWidth = chosen ? 2.2 : 1;
  pen.stroke();
}

/** The car that is taken to stand in each stall: what the cords must go around. */
export function drawCars(pen: Pen, frame: Frame, marks: readonly StallMark[]): void {
  const { scale, ink } = frame;
  const shown = marks.filter(({ stall }) => stall.width * scale >= CARS_FROM);
  if (shown.length === 0) return;
  pen.beginPath();
  for (const { car } of shown) {
    if (scale >= ROUNDED_FROM) traceRounded(pen, frame, car, 1.6 * scale);
    else traceOutline(pen, frame, car);
  }
  pen.fillStyle = ink.car;
  pen.fill();
  pen.strokeStyle = ink.carEdge;
  pen.lineWidth = 0.8;
  pen.stroke();
}

function traceRounded(pen: Pen, { scale, left, top }: Frame, corners: StallMark['car'], radius: number): void {
  const [a, b, c, d] = corners;
  const startX = left + ((a[0] + d[0]) / 2) * scale;
  const startY = top - ((a[1] + d[1]) / 2) * scale;
  pen.moveTo(startX, startY);
  for (const [from, to] of [
    [a, b],
    [b, c],
    [c, d],
    [d, a],
  ] as const)
    pen.arcTo(left + from[0] * scale, top - from[1] * scale, left + to[0] * scale, top - to[1] * scale, radius);
  pen.closePath();
}

/** Stall numbers, where there is room for them. */
export function drawStallLabels(pen: Pen, frame: Frame, marks: readonly StallMark[]): void {
  const { scale, left, top, ink, chosen } = frame;
  const size = Math.min(15, Math.max(11, scale * 1.15));
  pen.font = lettering(size, chosen ? 700 : 400);
  pen.textAlign = 'center';
  pen.textBaseline = 'middle';
  pen.fillStyle = chosen ? ink.ink : ink.soft;
  for (const { stall, label, labelAt } of marks) {
    if (stall.width * scale < Math.max(LABELS_FROM, label.length * 7)) continue;
    const [dx, dy] = [labelAt[0] - stall.at[0], labelAt[1] - stall.at[1]];
    const inward = Math.hypot(dx, dy) * scale;
    // From far off it would stand on the edge of the stall.
    const away = inward > 0 ? Math.max(1, (size * 0.6 + 3) / inward) : 1;
    pen.fillText(label, left + (stall.at[0] + dx * away) * scale, top - (stall.at[1] + dy * away) * scale);
  }
  for (const mark of marks) if (mark.stall.width * scale >= 40) drawUse(pen, frame, mark);
}

/** Accessible stalls are named in words: the painted sign is the stall's, not the drawing's. */
function drawUse(pen: Pen, { scale, left, top, ink }: Frame, { stall, labelAt }: StallMark): void {
  if (stall.use !== 'accessible' && stall.use !== 'van-accessible') return;
  const inward = Math.sign(labelAt[1] - stall.at[1]) || 1;
  const px = namePx(scale) - 1;
  pen.font = lettering(px);
  pen.fillStyle = ink.soft;
  const words = stall.use === 'van-accessible' ? 'van accessible' : 'accessible';
  if (pen.measureText(words).width > stall.width * scale - 6) return;
  pen.fillText(words, left + labelAt[0] * scale, top - labelAt[1] * scale - inward * (px + 4));
}
