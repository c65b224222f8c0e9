import { AISLE_WORDS } from '../../../routing/site/schema/vocabulary.ts';
import type { Point2 } from '../../../routing/site/site.ts';
import type { AisleMark } from '../kinds/aisles.ts';
import type { KeepoutMark } from '../kinds/keepouts.ts';
import type { MemberMark } from '../kinds/members.ts';
import { lettering, namePx } from '../painting/ink.ts';
import { type BoardPen, type Frame, fillGround } from './frame.ts';
import { hatch, traceLine, traceOutline } from './outline.ts';

const BIG_ENOUGH = 8;
const DASHES_FROM = 2.5;

/** Drive aisles and walkways: a quiet ground. */
export function drawAisles(pen: BoardPen, frame: Frame, marks: readonly AisleMark[]): void {
  pen.beginPath();
  for (const mark of marks) traceOutline(pen, frame, mark.area.outline);
  fillGround(pen, frame, frame.ink.aisle);
  for (const mark of marks) drawKind(pen, frame, mark);
  if (!frame.chosen) return;
  pen.beginPath();
  for (const mark of marks) traceOutline(pen, frame, mark.area.outline);
  pen.strokeStyle = frame.ink.ink;
  pen.lineWidth = 2;
  pen.stroke();
}

/** An access aisle is striped as it is painted; what else is no plain drive aisle has its name where there is room. */
function drawKind(pen: BoardPen, frame: Frame, { area, minX, minY, maxX, maxY }: AisleMark): void {
  const kind = area.kind ?? 'drive';
  if (kind === 'drive') return;
  const { scale, left, top, ink } = frame;
  if (kind === 'access') {
    if ((maxX - minX) * scale < BIG_ENOUGH) return;
    pen.beginPath();
    traceOutline(pen, frame, area.outline);
    hatch(pen, frame, ink.stripe, Math.max(6, 3 * Math.SQRT2 * scale));
    return;
  }
  const words = AISLE_WORDS[kind];
  const px = namePx(scale);
  if (Math.max(maxX - minX, maxY - minY) * scale < words.length * px || px * 1.2 > (maxY - minY) * scale) return;
  pen.font = lettering(px);
  pen.textAlign = 'center';
  pen.textBaseline = 'middle';
  pen.fillStyle = ink.soft;
  pen.fillText(words, left + ((minX + maxX) / 2) * scale, top - ((minY + maxY) / 2) * scale);
}

/** Keep-outs: hatched, with a broken edge. */
export function drawKeepouts(pen: BoardPen, frame: Frame, marks: readonly KeepoutMark[]): void {
  const shown = marks.filter(({ minX, maxX }) => (maxX - minX) * frame.scale >= BIG_ENOUGH);
  if (shown.length === 0) return;
  pen.beginPath();
  for (const mark of shown) traceOutline(pen, frame, mark.area.outline);
  hatch(pen, frame, frame.ink.hatch, 9);
  pen.strokeStyle = frame.chosen ? frame.ink.ink : frame.ink.ruleStrong;
  pen.lineWidth = frame.chosen ? 2 : 1;
  if (frame.scale >= DASHES_FROM) pen.setLineDash([5, 3]);
  pen.beginPath();
  for (const mark of shown) traceOutline(pen, frame, mark.area.outline);
  pen.stroke();
  pen.setLineDash([]);
}

/** Beams and purlins, which stand already and lie above: thin, grey and broken. */
export function drawMembers(pen: BoardPen, frame: Frame, marks: readonly MemberMark[]): void {
  pen.beginPath();
  for (const { member } of marks) traceLine(pen, frame, [member.from, member.to]);
  pen.strokeStyle = frame.chosen ? frame.ink.ink : frame.ink.existing;
  pen.lineWidth = frame.chosen ? 2 : 0.7;
  // Broken lines cost the raster many times what whole ones do: far off they are whole, and fainter.
  if (frame.scale >= DASHES_FROM) pen.setLineDash([3, 4]);
  else pen.globalAlpha = 0.5;
  pen.stroke();
  pen.setLineDash([]);
  pen.globalAlpha = 1;
}

/** The edge of each canopy, broken because it lies above the cut. */
export function drawCanopies(pen: BoardPen, frame: Frame, outlines: readonly (readonly Point2[])[]): void {
  pen.beginPath();
  for (const outline of outlines) traceOutline(pen, frame, outline);
  pen.strokeStyle = frame.ink.existing;
  pen.lineWidth = 1;
  if (frame.scale >= DASHES_FROM) pen.setLineDash([9, 4]);
  pen.stroke();
  pen.setLineDash([]);
}
