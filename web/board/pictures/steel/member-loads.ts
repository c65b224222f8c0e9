import { type LoadStep, loadStep } from '../../../../calc/steel/load-steps.ts';
import { addTo } from '../../../../routing/lists/grouping.ts';
import { pounds as inPounds } from '../../../words/quantities.ts';
import type { MemberMark } from '../../kinds/members.ts';
import type { InkName } from '../../painting/ink.ts';
import type { BoardPen, Frame } from '../frame.ts';
import { traceLine } from '../outline.ts';
import { halo } from '../stalls/drops.ts';

/** Color and pixels of a line by its step: told apart by width as well as by color. */
const LOAD_LINES: Readonly<Record<LoadStep, { readonly ink: InkName; readonly width: number } | null>> = {
  nothing: null,
  'under 100 lb': { ink: 'cover2', width: 4 },
  '100 to 300 lb': { ink: 'cover1', width: 6 },
  '300 lb and over': { ink: 'cover0', width: 9 },
};

/** From so many pixels to a foot on, the pounds stand beside each member. */
const WORDS_FROM = 6;
/** And no nearer to each other than this, pixels. */
const APART = 52;

/** Colors every member by the pounds that hang from it. */
export function drawMemberLoads(
  pen: BoardPen,
  frame: Frame,
  marks: readonly MemberMark[],
  pounds: ReadonlyMap<string, number>,
): void {
  const steps = new Map<LoadStep, MemberMark[]>();
  for (const mark of marks) addTo(steps, loadStep(pounds.get(mark.id)), mark);
  pen.lineCap = 'butt';
  for (const [step, own] of steps) {
    const line = LOAD_LINES[step];
    if (line === null) continue;
    pen.beginPath();
    for (const { member } of own) traceLine(pen, frame, [member.from, member.to]);
    pen.strokeStyle = frame.ink[line.ink];
    pen.lineWidth = Math.max(1.5, line.width * Math.min(1, frame.scale / 6));
    pen.stroke();
  }
  if (frame.scale >= WORDS_FROM) drawWords(pen, frame, marks, pounds);
}

/** Pounds near the first end of each member, each where no other stands. */
function drawWords(
  pen: BoardPen,
  frame: Frame,
  marks: readonly MemberMark[],
  pounds: ReadonlyMap<string, number>,
): void {
  const { scale, left, top, ink } = frame;
  const taken: (readonly [number, number])[] = [];
  pen.textAlign = 'center';
  pen.textBaseline = 'middle';
  for (const { id, member } of marks) {
    const own = pounds.get(id);
    if (own === undefined) continue;
    // Not in the middle, where beams cross purlins and drops hang.
    for (const share of [0.12, 0.88, 0.3, 0.7]) {
      const x = left + (member.from[0] + share * (member.to[0] - member.from[0])) * scale;
      const y = top - (member.from[1] + share * (member.to[1] - member.from[1])) * scale;
      if (taken.some(([u, v]) => Math.abs(u - x) < APART && Math.abs(v - y) < 16)) continue;
      taken.push([x, y]);
      halo(pen, frame, inPounds(Math.round(own)), x, y, 700, ink.ink);
      break;
    }
  }
}
