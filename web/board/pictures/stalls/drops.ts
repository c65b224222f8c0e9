import { type Box, boxesMeet } from '../../../../routing/plane/box.ts';
import { nearestInch } from '../../../words/lengths.ts';
import type { DropMark } from '../../kinds/drops.ts';
import { lettering, namePx } from '../../painting/ink.ts';
import { renewIndex } from '../../scene/severity.ts';
import { signOf } from '../../scene/sign.ts';
import type { BoardPen, Frame } from '../frame.ts';
import { drawMarginBars, MARGINS_FROM } from './margin-bars.ts';

export const SYMBOLS_FROM = 1.6;
const LABELS_FROM = 6.5;
/** Elevations want the width of a stall for their words. */
const ELEVATIONS_FROM = 12;
/** Pixels: no symbol is larger or smaller, so that it stays a symbol. */
const radiusOf = (scale: number): number => Math.min(9, Math.max(3.5, scale * 0.55));

/** Drops: the box as a square, the retractor as a ring with the cord in its middle, and how it fares. */
export function drawDrops(pen: BoardPen, frame: Frame, marks: readonly DropMark[]): void {
  const { scale, left, top, ink, chosen } = frame;
  if (scale < SYMBOLS_FROM) {
    if (scale < 0.7 && !chosen) return;
    // Filled one by one: a single path of thousands costs the raster far more.
    pen.fillStyle = ink.ink;
    for (const { drop } of marks) pen.fillRect(left + drop.box[0] * scale - 1, top - drop.box[1] * scale - 1, 2, 2);
    return;
  }
  const radius = radiusOf(scale);
  pen.strokeStyle = ink.ink;
  pen.lineWidth = chosen ? 2.6 : 1.4;
  for (const { drop } of marks) {
    const boxX = left + drop.box[0] * scale;
    const boxY = top - drop.box[1] * scale;
    const [hangX, hangY] = drop.retractor
      ? [left + drop.retractor[0] * scale, top - drop.retractor[1] * scale]
      : [boxX, boxY];
    pen.beginPath();
    if (Math.hypot(hangX - boxX, hangY - boxY) > radius) {
      pen.moveTo(boxX, boxY);
      pen.lineTo(hangX, hangY);
      pen.rect(boxX - radius * 0.55, boxY - radius * 0.55, radius * 1.1, radius * 1.1);
      pen.stroke();
      pen.beginPath();
    }
    ring(pen, drop.mount ?? 'overhead', hangX, hangY, radius * (chosen ? 1.25 : 1));
    pen.fillStyle = ink.sheet;
    pen.fill();
    pen.stroke();
    pen.beginPath();
    pen.arc(hangX, hangY, Math.max(1.2, radius * 0.28), 0, 2 * Math.PI);
    pen.fillStyle = ink.ink;
    pen.fill();
  }
}

/** Round each drop of a charging day, from the top clockwise: how much of its most it gives at the time looked at. */
function drawCharging(pen: BoardPen, { scale, left, top, ink, charging }: Frame, marks: readonly DropMark[]): void {
  const radius = radiusOf(scale) + 4;
  const from = -Math.PI / 2;
  pen.strokeStyle = ink.ink;
  pen.lineWidth = 3.5;
  for (const { drop } of marks) {
    const own = charging?.get(drop.id);
    if (own === undefined || own.amps <= 0) continue;
    const [x, y] = drop.retractor ?? drop.box;
    pen.beginPath();
    pen.arc(left + x * scale, top - y * scale, radius, from, from + 2 * Math.PI * Math.min(1, own.amps / own.most));
    pen.stroke();
  }
}

/** Each way of mounting has its shape: a cord from above a ring, a pedestal a square, a wall box a half round. */
function ring(pen: BoardPen, mount: 'overhead' | 'pedestal' | 'wall', x: number, y: number, radius: number): void {
  if (mount === 'pedestal') pen.rect(x - radius, y - radius, radius * 2, radius * 2);
  else if (mount === 'wall') {
    pen.arc(x, y, radius, 0, Math.PI);
    pen.closePath();
  } else pen.arc(x, y, radius, 0, 2 * Math.PI);
}

/** Names and margins of the drops, and the signs and words of those that fail or want a look. */
export function drawDropWords(pen: BoardPen, frame: Frame, marks: readonly DropMark[]): void {
  const { scale, left, top, ink, chosen } = frame;
  if (scale < SYMBOLS_FROM) return;
  if (!chosen) renewIndex(frame.scene.plan.findings, frame.scene.site.chargers);
  const radius = radiusOf(scale);
  if (frame.charging !== null) drawCharging(pen, frame, marks);
  if (frame.margins && scale >= MARGINS_FROM) drawMarginBars(pen, frame, marks, radius);
  pen.textBaseline = 'middle';
  pen.textAlign = 'left';
  pen.font = lettering(namePx(scale), chosen ? 700 : 400);
  // From far off those that are selected are named as long as no name lies over another.
  const near = scale >= LABELS_FROM;
  const named: Box[] = [];
  for (const { drop } of marks) {
    const { severity, short } = signOf(frame.scene, drop.id);
    const [x, y] = drop.retractor ?? drop.box;
    let at = left + x * scale + radius + 4;
    const line = top - y * scale - radius - 3;
    if (severity === 'fail' || severity === 'warn') {
      // Far off, what wants a look steps back so that what fails is seen.
      const size = severity === 'fail' ? 1 : Math.min(1, Math.max(0.5, scale / 6));
      sign(pen, frame, severity, at + 4 * size, line, size);
      at += 12 * size;
    }
    if (!near && !(chosen && marks.length <= MOST_NAMED && free(pen, named, wordsFor(frame, drop), at, line))) continue;
    at += halo(pen, frame, wordsFor(frame, drop), at, line, chosen ? 700 : 400, ink.ink) + 6;
    if (short) halo(pen, frame, short, at, line, 700, ink.fail);
  }
}

/** Of more drops than this none is named from far off: they would lie over each other. */
const MOST_NAMED = 200;

/** Whether words have room among those that stand already, pixels; takes the room if so. */
function free(pen: BoardPen, named: Box[], words: string, x: number, y: number): boolean {
  const own = { minX: x, minY: y - 8, maxX: x + pen.measureText(words).width * 1.1 + 4, maxY: y + 8 };
  if (named.some((box) => boxesMeet(box, own))) return false;
  named.push(own);
  return true;
}

/** A drop's name; for a person who hangs it, with the elevation of its box. */
function wordsFor({ station, units, scale, charging }: Frame, { id, box }: DropMark['drop']): string {
  const amps = charging?.get(id)?.amps ?? 0;
  if (amps > 0) return `${id} ${amps.toFixed(amps < 10 ? 1 : 0)} A`;
  return station === 'build' && scale >= ELEVATIONS_FROM ? `${id}, ${nearestInch(box[2], units)} up` : id;
}

/** Fail is a filled diamond, look is a triangle: told apart without their colors. */
export function sign(pen: BoardPen, { ink }: Frame, severity: 'fail' | 'warn', x: number, y: number, size = 1): void {
  pen.beginPath();
  if (severity === 'fail') {
    pen.moveTo(x, y - 6);
    pen.lineTo(x + 6, y);
    pen.lineTo(x, y + 6);
    pen.lineTo(x - 6, y);
    pen.closePath();
    pen.fillStyle = ink.fail;
    pen.fill();
    pen.strokeStyle = ink.paper;
    pen.lineWidth = 1.4;
    pen.beginPath();
    pen.moveTo(x - 2, y - 2);
    pen.lineTo(x + 2, y + 2);
    pen.moveTo(x + 2, y - 2);
    pen.lineTo(x - 2, y + 2);
    pen.stroke();
    return;
  }
  pen.moveTo(x, y - 5 * size);
  pen.lineTo(x + 5.5 * size, y + 4.5 * size);
  pen.lineTo(x - 5.5 * size, y + 4.5 * size);
  pen.closePath();
  pen.fillStyle = ink.paper;
  pen.fill();
  pen.strokeStyle = ink.warn;
  pen.lineWidth = 1.8 * Math.max(0.7, size);
  pen.lineJoin = 'round';
  pen.stroke();
}

/** Lettering that stays readable over lines; returns its width. */
export function halo(
  pen: BoardPen,
  { ink, scale }: Frame,
  words: string,
  x: number,
  y: number,
  weight: 400 | 600 | 700,
  color: string,
): number {
  pen.font = lettering(namePx(scale), weight);
  pen.lineJoin = 'round';
  pen.lineWidth = 3.5;
  pen.strokeStyle = ink.paper;
  pen.strokeText(words, x, y);
  pen.fillStyle = color;
  pen.fillText(words, x, y);
  return pen.measureText(words).width;
}
