import type { Reach } from '../../../routing/reach/reach-result.ts';
import { nearestInch, spareOrShort } from '../../words/lengths.ts';
import { PARKED } from '../../words/margins.ts';
import { lettering, namePx } from '../ink.ts';
import type { Frame, Pen } from './frame.ts';
import { traceLine } from './outline.ts';

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
  const [atX, atY] = besideInlet(frame, reach, width, height);
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

const GAP = 14;

/** Where the note stands: at the corner of the inlet where it hides least of the cord and stays on the board. */
function besideInlet(frame: Frame, { worst }: Reach, width: number, height: number): readonly [number, number] {
  const { scale, left, top } = frame;
  const x = left + worst.inletAt[0] * scale;
  const y = top - worst.inletAt[1] * scale;
  const corners = [
    [x + GAP, y - GAP - height],
    [x - GAP - width, y - GAP - height],
    [x + GAP, y + GAP],
    [x - GAP - width, y + GAP],
  ] as const;
  let best = corners[0];
  let least = Number.POSITIVE_INFINITY;
  for (const corner of corners) {
    const off = outside(corner[0], width, frame.width) + outside(corner[1], height, frame.height);
    const cost =
      3 * off +
      hidden(frame, worst.path, corner, width, height) +
      overDrop(frame, worst.path[0], corner, width, height);
    if (cost < least) {
      best = corner;
      least = cost;
    }
  }
  const within = (at: number, size: number, room: number): number =>
    Math.round(Math.min(Math.max(8, at), Math.max(8, room - size - 8)));
  return [within(best[0], width, frame.width), within(best[1], height, frame.height)];
}

const outside = (at: number, size: number, room: number): number =>
  Math.max(0, 8 - at) + Math.max(0, at + size + 8 - room);

/** Pixels round the drop that its handles take up. */
const HANDLES = 34;

/** Whether a box would lie over the drop and its handles. */
function overDrop(
  { scale, left, top }: Frame,
  drop: readonly [number, number] | undefined,
  [x, y]: readonly [number, number],
  width: number,
  height: number,
): number {
  if (!drop) return 0;
  const px = left + drop[0] * scale;
  const py = top - drop[1] * scale;
  const apart = px + HANDLES < x || px - HANDLES > x + width || py + HANDLES < y || py - HANDLES > y + height;
  return apart ? 0 : 120;
}

/** Pixels of the cord that a box would lie over, sampled. */
function hidden(
  { scale, left, top }: Frame,
  path: readonly (readonly [number, number])[],
  [x, y]: readonly [number, number],
  width: number,
  height: number,
): number {
  let over = 0;
  for (let i = 1; i < path.length; i++) {
    const [ax, ay] = path[i - 1]!;
    const [bx, by] = path[i]!;
    const length = Math.hypot(bx - ax, by - ay) * scale;
    const steps = Math.max(1, Math.ceil(length / 6));
    for (let n = 0; n <= steps; n++) {
      const px = left + (ax + ((bx - ax) * n) / steps) * scale;
      const py = top - (ay + ((by - ay) * n) / steps) * scale;
      if (px > x && px < x + width && py > y && py < y + height) over += length / steps;
    }
  }
  return over;
}
