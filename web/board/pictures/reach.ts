import type { Reach } from '../../../routing/reach/reach-result.ts';
import { printLength } from '../../../routing/site/feet-inches.ts';
import { lettering } from '../ink.ts';
import type { Frame, Pen } from './frame.ts';
import { traceLine } from './outline.ts';

/** Words for the way a car stands. */
const WAY = { 'nose-in': 'nose in', 'back-in': 'backed in' } as const;

/** The taut cord of a reach to its worst inlet, round what stands in its way, and where the slack cord hangs low. */
export function drawCord(pen: Pen, frame: Frame, reach: Reach): void {
  const { ink, scale, left, top } = frame;
  const { path, inletAt, hang } = reach.worst;
  if (hang?.strip) {
    pen.beginPath();
    traceLine(pen, frame, [hang.strip.from, hang.strip.to]);
    pen.strokeStyle = ink.warn;
    pen.globalAlpha = 0.35;
    pen.lineWidth = Math.max(6, scale * 0.6);
    pen.stroke();
    pen.globalAlpha = 1;
  }
  pen.beginPath();
  traceLine(pen, frame, path);
  pen.lineJoin = 'round';
  pen.lineCap = 'round';
  pen.strokeStyle = ink.paper;
  pen.lineWidth = 5;
  pen.stroke();
  pen.strokeStyle = ink.ink;
  pen.lineWidth = 2.2;
  pen.stroke();
  pen.lineCap = 'butt';
  const x = left + inletAt[0] * scale;
  const y = top - inletAt[1] * scale;
  pen.beginPath();
  pen.arc(x, y, 4.5, 0, 2 * Math.PI);
  pen.fillStyle = ink.ink;
  pen.fill();
  pen.strokeStyle = ink.paper;
  pen.lineWidth = 1.5;
  pen.stroke();
}

/** The note at the inlet: which it is, needed of available, and what is spare or short. */
export function drawCordNote(pen: Pen, frame: Frame, reach: Reach): void {
  const { ink, scale, left, top, units } = frame;
  const { direction, inlet, needed, available, margin, inletAt } = reach.worst;
  const first = `worst inlet: ${inlet}, ${WAY[direction]}`;
  const can = needed !== null && margin !== null;
  const second = can
    ? `${printLength(needed, units)} of ${printLength(available, units)}`
    : 'no way round to this inlet';
  const third = can ? `${printLength(Math.abs(margin), units)} ${margin < 0 ? 'short' : 'spare'}` : '';
  pen.font = lettering(12, 700);
  const split = pen.measureText(`${second}  `).width;
  const thirdWidth = pen.measureText(third).width;
  pen.font = lettering(12);
  const width = Math.max(pen.measureText(first).width, split + thirdWidth) + 18;
  const height = 40;
  const x = left + inletAt[0] * scale;
  const y = top - inletAt[1] * scale;
  const atX = Math.round(Math.min(Math.max(8, x + 14), Math.max(8, frame.width - width - 8)));
  const below = y - height - 12 < 60;
  const atY = Math.round(below ? y + 12 : y - height - 12);
  pen.beginPath();
  pen.rect(atX, atY, width, height);
  pen.fillStyle = ink.sheet;
  pen.fill();
  pen.strokeStyle = ink.ruleStrong;
  pen.lineWidth = 1;
  pen.stroke();
  pen.textAlign = 'left';
  pen.textBaseline = 'middle';
  pen.fillStyle = ink.soft;
  pen.fillText(first, atX + 9, atY + 13);
  const color = !can || margin < 0 ? ink.fail : ink.pass;
  pen.font = lettering(12, 700);
  pen.fillStyle = can ? ink.ink : ink.fail;
  pen.fillText(second, atX + 9, atY + 29);
  pen.fillStyle = color;
  pen.fillText(third, atX + 9 + split, atY + 29);
}
