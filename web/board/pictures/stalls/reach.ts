import type { Reach } from '../../../../routing/reach/reach-result.ts';
import { nearestInch, spareOrShort } from '../../../words/lengths.ts';
import { PARKED } from '../../../words/margins.ts';
import { lettering, namePx } from '../../painting/ink.ts';
import type { BoardPen, Frame } from '../frame.ts';
import { notePlace } from '../note-place.ts';
import { traceLine } from '../outline.ts';
import { bubblesOf } from '../steel/gridlines.ts';

/** The taut cord of a reach to its worst inlet, round what stands in its way, and where the slack cord hangs low. */
export function drawCord(pen: BoardPen, frame: Frame, reach: Reach): void {
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
export function drawCordNote(pen: BoardPen, frame: Frame, reach: Reach): void {
  const { ink, units } = frame;
  const { direction, inlet, needed, available, margin } = reach.worst;
  const first = `worst inlet: ${inlet}, ${PARKED[direction]}`;
  const can = needed !== null && margin !== null;
  const second = can
    ? `${nearestInch(needed, units)} of ${nearestInch(available, units)}`
    : 'no way round to this inlet';
  const third = can ? spareOrShort(margin, units) : '';
  const px = namePx(frame.scale);
  pen.font = lettering(px, 700);
  const split = pen.measureText(`${second}  `).width;
  const thirdWidth = pen.measureText(third).width;
  pen.font = lettering(px);
  const width = Math.max(pen.measureText(first).width, split + thirdWidth) + 18;
  const height = Math.round(px * 3.3);
  const [atX, atY] = notePlace(frame, reach.worst, { width, height }, gridBubbles(frame));
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
  pen.fillText(first, atX + 9, atY + px * 1.05);
  const color = !can || margin < 0 ? ink.fail : ink.pass;
  pen.font = lettering(px, 700);
  pen.fillStyle = can ? ink.ink : ink.fail;
  pen.fillText(second, atX + 9, atY + px * 2.4);
  pen.fillStyle = color;
  pen.fillText(third, atX + 9 + split, atY + px * 2.4);
}

const gridBubbles = (frame: Frame): ReturnType<typeof bubblesOf> =>
  bubblesOf(frame, frame.scene.site.gridlines, frame.scene.extent);
