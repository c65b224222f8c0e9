import { boardKind } from '../kinds/kinds.ts';
import type { MemberMark } from '../kinds/members.ts';
import type { PictureBoard } from '../painting/painting.ts';
import type { BoardPen, Frame } from '../pictures/frame.ts';
import { traceLine } from '../pictures/outline.ts';
import { drawAllRuns, drawRuns } from '../pictures/ways/raceways.ts';
import type { Scene, SceneList } from '../scene/scene.ts';
import { drawCords } from './draw-cords.ts';
import { raisedMark } from './raised-marks.ts';

/** The marks of a list that are to be drawn. */
export type Find = <L extends SceneList>(list: L) => Scene[L]['items'];

type HangingList = 'members' | 'raceways' | 'pullpoints' | 'drops' | 'runs';

/** One kind of picture of what hangs: mostly one of the plan, of marks that are raised. */
interface Hanging {
  readonly list: HangingList;
  readonly over: number;
  readonly on?: 'base' | 'live';
  readonly from: number;
  /** It takes marks as they lie in the plan and raises them itself. */
  readonly raises?: true;
  readonly draw: (pen: BoardPen, frame: Frame, marks: readonly never[], painting: PictureBoard) => void;
}

const ofPlan = (['members', 'raceways', 'pullpoints', 'drops'] as const).flatMap((list): Hanging[] =>
  // A riser has its length here, and steel its own lines.
  boardKind(list)
    .pictures.filter(({ name }) => name !== 'risers' && name !== 'members')
    .map(({ from = 0, ...picture }) => ({ ...picture, list, from })),
);

const STEEL: Hanging = { list: 'members', over: 90, from: 1.2, draw: drawSteel };

const RUNS: readonly Hanging[] = [
  { list: 'runs', over: 140, on: 'base', from: 2, draw: drawAllRuns },
  { list: 'runs', over: 140, on: 'live', from: 0, draw: drawRuns },
];

// They hang below their boxes, so that these lie over them.
const CORDS: Hanging = { list: 'drops', over: 185, from: 0, raises: true, draw: drawCords };

const HANGING: readonly Hanging[] = [STEEL, ...ofPlan, ...RUNS, CORDS].sort((a, b) => a.over - b.over);

/** Draws what hangs, and what lies in the ground, at its elevation; returns how many marks that took. */
export function drawHanging(
  pen: BoardPen,
  frame: Frame,
  painting: PictureBoard,
  find: Find,
  layer: 'base' | 'live',
): number {
  const raised = new Map<HangingList, readonly never[]>();
  let count = 0;
  for (const { list, on = layer, from, raises, draw } of HANGING) {
    if (on !== layer || (layer === 'base' && frame.scale < from) || !painting.shows(list)) continue;
    const plain = find(list) as readonly unknown[] as readonly never[];
    if (plain.length === 0) continue;
    const up = raises ? plain : (raised.get(list) ?? plain.map((mark) => raisedMark(list, mark) as never));
    if (!raises) raised.set(list, up);
    draw(pen, frame, up, painting);
    count += up.length;
  }
  return count;
}

/** Beams and purlins where they are: in whole lines, for nothing is cut away above them. */
export function drawSteel(pen: BoardPen, frame: Frame, marks: readonly MemberMark[]): void {
  const { ink, scale, chosen } = frame;
  pen.beginPath();
  for (const { member } of marks) traceLine(pen, frame, [member.from, member.to]);
  pen.strokeStyle = chosen ? ink.ink : ink.existing;
  pen.lineWidth = chosen ? 3 : scale < 4 ? 0.8 : 1.4;
  pen.stroke();
}
