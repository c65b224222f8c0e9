import { printLength } from '../../../../routing/site/numbers/feet-inches.ts';
import type { Point3 } from '../../../../routing/site/site.ts';
import type { MemberMark } from '../../kinds/members.ts';
import { lettering } from '../../painting/ink.ts';
import type { BoardPen, Frame } from '../frame.ts';
import { halo } from '../stalls/drops.ts';

const SIZE = 11;
/** Nearer together than this, pixels, elevations would be written over one another. */
const APART = 40;
/** No more than this many are written: of a whole canopy that is selected the first will do. */
const MOST = 60;

/** The elevations at the ends of selected members. */
export function drawMemberEnds(pen: BoardPen, frame: Frame, marks: readonly MemberMark[]): void {
  if (!frame.chosen) return;
  const { scale, left, top, ink } = frame;
  const { units } = frame.scene;
  const taken: (readonly [x: number, y: number])[] = [];
  pen.textAlign = 'left';
  pen.textBaseline = 'middle';
  pen.font = lettering(SIZE);
  for (const { member } of marks) {
    const away = Math.hypot(member.to[0] - member.from[0], member.to[1] - member.from[1]) * scale;
    if (away < APART) continue;
    const ends: readonly (readonly [Point3, Point3])[] = [
      [member.from, member.to],
      [member.to, member.from],
    ];
    for (const [end, other] of ends) {
      const words = printLength(end[2], units);
      const x = left + end[0] * scale;
      const y = top - end[1] * scale;
      if (taken.length >= MOST || taken.some(([tx, ty]) => Math.hypot(tx - x, (ty - y) * 2) < APART)) continue;
      taken.push([x, y]);
      // Just inside the end, beside the member.
      const inX = ((other[0] - end[0]) * scale * 16) / away;
      const inY = (-(other[1] - end[1]) * scale * 16) / away;
      const width = pen.measureText(words).width;
      const toLeft = inX < -8;
      halo(pen, frame, words, x + inX + (toLeft ? -width : 5), y + inY + (Math.abs(inX) > 8 ? -9 : 0), 600, ink.ink);
    }
  }
}
