import type { StallMark } from '../../kinds/stalls.ts';
import { lettering, namePx } from '../../painting/ink.ts';
import type { StallBand } from '../../scene/stall-bands.ts';
import { type BoardPen, type Frame, fillGround } from '../frame.ts';
import { traceOutline } from '../outline.ts';
import { clearOfEnds, fitting } from './clear-of-car.ts';

/** Pixels to a foot from which stalls are drawn one by one. */
export const STALLS_FROM = 0.7;
const CARS_FROM = 12;
const LABELS_FROM = 22;
const ROUNDED_FROM = 4;

/** Far off, stalls side by side as one quiet band each: their stripes would be nearer than the eye can part. */
export function drawBands(pen: BoardPen, frame: Frame, bands: readonly StallBand[]): void {
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
export function drawStalls(pen: BoardPen, frame: Frame, marks: readonly StallMark[]): void {
  const { scale, left, top, ink, chosen } = frame;
  if (chosen) {
    pen.beginPath();
    for (const mark of marks) traceOutline(pen, frame, mark.corners);
    fillGround(pen, frame, ink.chosen);
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
export function drawParkedCars(pen: BoardPen, frame: Frame, marks: readonly StallMark[]): void {
  const { scale, ink } = frame;
  const shown = marks.filter(({ stall }) => stall.width * scale >= CARS_FROM);
  if (shown.length === 0) return;
  pen.beginPath();
  for (const { car } of shown) {
    if (scale >= ROUNDED_FROM) traceRounded(pen, frame, car, 1.6 * scale);
    else traceOutline(pen, frame, car);
  }
  fillGround(pen, frame, ink.car);
  pen.strokeStyle = ink.carEdge;
  pen.lineWidth = 0.8;
  pen.stroke();
}

function traceRounded(pen: BoardPen, { scale, left, top }: Frame, corners: StallMark['car'], radius: number): void {
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
export function drawStallLabels(pen: BoardPen, frame: Frame, marks: readonly StallMark[]): void {
  const { scale, left, top, ink, chosen } = frame;
  const size = Math.min(15, Math.max(11, scale * 1.15));
  pen.font = lettering(size, chosen ? 700 : 400);
  pen.textAlign = 'center';
  pen.textBaseline = 'middle';
  pen.fillStyle = chosen ? ink.ink : ink.soft;
  for (const { stall, label, labelAt, car } of marks) {
    if (stall.width * scale < Math.max(LABELS_FROM, label.length * 7)) continue;
    const [dx, dy] = [labelAt[0] - stall.at[0], labelAt[1] - stall.at[1]];
    const inward = Math.hypot(dx, dy) * scale;
    // From far off it would stand on the edge of the stall.
    const away = inward > 0 ? Math.max(1, (size * 0.6 + 3) / inward) : 1;
    const y = top - (stall.at[1] + dy * away) * scale;
    const ends = endsOf(frame, stall, car);
    pen.fillText(label, left + (stall.at[0] + dx * away) * scale, ends ? clearOfEnds(y, size, ends) : y);
  }
  for (const mark of marks) if (mark.stall.width * scale >= CARS_FROM * 2) drawUse(pen, frame, mark);
}

/** The ends of a car that stands along the sheet, pixels; null where it is not drawn, or lies otherwise. */
function endsOf({ scale, top }: Frame, stall: StallMark['stall'], car: StallMark['car']) {
  if (stall.width * scale < CARS_FROM || Math.abs(stall.heading % 180) !== 90) return null;
  const ys = car.map(([, y]) => top - y * scale);
  return { minY: Math.min(...ys), maxY: Math.max(...ys) };
}

const USES = {
  accessible: ['accessible', 'acc.'],
  'van-accessible': ['van accessible', 'van acc.', 'van'],
  ambulatory: ['ambulatory', 'amb.'],
} as const;

/** Accessible stalls are named in words, the painted sign is the stall's: in as many as stand between the sides of a car. */
function drawUse(pen: BoardPen, frame: Frame, { stall, labelAt, car }: StallMark): void {
  if (stall.use === undefined || stall.use === 'standard') return;
  const { scale, left, top, ink } = frame;
  const inward = Math.sign(labelAt[1] - stall.at[1]) || 1;
  const px = namePx(scale) - 1;
  pen.font = lettering(px);
  pen.fillStyle = ink.soft;
  const ends = endsOf(frame, stall, car);
  const room = ends ? Math.min(...sidesOf(car)) * scale : stall.width * scale - 6;
  const words = fitting(USES[stall.use], (each) => pen.measureText(each).width, room);
  if (words === null) return;
  const y = top - labelAt[1] * scale - inward * (px + 4);
  pen.fillText(words, left + labelAt[0] * scale, ends ? clearOfEnds(y, px, ends) : y);
}

const sidesOf = ([a, b, c]: StallMark['car']): readonly [number, number] => [
  Math.hypot(a[0] - b[0], a[1] - b[1]),
  Math.hypot(b[0] - c[0], b[1] - c[1]),
];
