import { type Box, widened } from '../../../routing/plane/box.ts';
import { printLength } from '../../../routing/site/numbers/feet-inches.ts';
import { type BoardDraft, spotsOf } from '../draw/draft.ts';
import { lettering, namePx } from '../painting/ink.ts';
import { wordsPlace } from '../painting/words-place.ts';
import type { BoardPen, Frame } from './frame.ts';
import { halo } from './stalls/drops.ts';

export interface DraftWords {
  /** What the drawn thing comes to. */
  readonly words: readonly string[];
  /** Whether the last part of the line is measured. */
  readonly leg: boolean;
  /** Where names of what the hand is held to stand already, pixels. */
  readonly named: readonly Box[];
}

/**
 * The line under the hand: from place to place, its last part measured, and what the drawn thing comes to, in words that
 * stand clear of things where they can.
 */
export function drawDraft(
  pen: BoardPen,
  frame: Frame,
  draft: BoardDraft,
  { words, leg, named }: DraftWords,
  thingsIn: (box: Box) => readonly Box[],
): void {
  const { left, top, scale, ink, units } = frame;
  const spots = spotsOf(draft);
  if (spots.length === 0) return;
  const px = (x: number): number => left + x * scale;
  const py = (y: number): number => top - y * scale;
  pen.beginPath();
  for (const [i, { at }] of spots.entries()) {
    if (i === 0) pen.moveTo(px(at[0]), py(at[1]));
    else pen.lineTo(px(at[0]), py(at[1]));
  }
  pen.strokeStyle = ink.ink;
  pen.lineWidth = 1.4;
  pen.setLineDash([6, 4]);
  pen.stroke();
  pen.setLineDash([]);
  pen.beginPath();
  for (const { at } of spots) {
    pen.moveTo(px(at[0]) + 4, py(at[1]));
    pen.arc(px(at[0]), py(at[1]), 4, 0, 2 * Math.PI);
  }
  pen.fillStyle = ink.sheet;
  pen.fill();
  pen.stroke();
  const last = spots.at(-1)!.at;
  const before = spots.at(-2)?.at;
  const lines = [...words];
  if (before && leg) {
    const dx = last[0] - before[0];
    const dy = last[1] - before[1];
    const degrees = (((Math.atan2(dy, dx) * 180) / Math.PI + 360) % 360).toFixed(1).replace('.0', '');
    if (Math.hypot(dx, dy) > 0.02) lines.unshift(`${printLength(Math.hypot(dx, dy), units)} at ${degrees}°`);
  }
  pen.textAlign = 'left';
  pen.textBaseline = 'middle';
  pen.font = lettering(namePx(scale), 700);
  const step = namePx(scale) + 4;
  const size = {
    width: Math.max(0, ...lines.map((line) => pen.measureText(line).width)) + 2 * PAD,
    height: lines.length * step + 2 * PAD,
  };
  const near = widened({ minX: last[0], minY: last[1], maxX: last[0], maxY: last[1] }, (size.width + 40) / scale);
  const boxes = thingsIn(near).map(({ minX, minY, maxX, maxY }) => ({
    minX: px(minX),
    minY: py(maxY),
    maxX: px(maxX),
    maxY: py(minY),
  }));
  const place = wordsPlace([px(last[0]), py(last[1])], size, frame, [...boxes, ...named]);
  if (place.isOver) {
    pen.fillStyle = ink.paper;
    pen.fillRect(place.left, place.top, size.width, size.height);
  }
  for (const [i, line] of lines.entries())
    halo(pen, frame, line, place.left + PAD, place.top + PAD + (i + 0.5) * step, i === 0 ? 700 : 400, ink.ink);
}

const PAD = 4;
