import type { MemberMark } from '../kinds/members.ts';
import type { BoardPen, Frame } from '../pictures/frame.ts';
import { traceLine } from '../pictures/outline.ts';

/** Beams and purlins where they are: in whole lines, for nothing is cut away above them. */
export function drawSteel(pen: BoardPen, frame: Frame, marks: readonly MemberMark[]): void {
  const { ink, scale, chosen } = frame;
  pen.beginPath();
  for (const { member } of marks) traceLine(pen, frame, [member.from, member.to]);
  pen.strokeStyle = chosen ? ink.ink : ink.existing;
  pen.lineWidth = chosen ? 3 : scale < 4 ? 0.8 : 1.4;
  pen.stroke();
}
