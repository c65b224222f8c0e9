import type { SeenBlock } from '../../../calc/space/oblique.ts';
import { heightsOf } from '../../../calc/space/tallest.ts';
import { boardKind } from '../kinds/kinds.ts';
import { marksInView, type PictureBoard } from '../painting/painting.ts';
import type { BoardPen, Frame } from '../pictures/frame.ts';
import { traceOutline } from '../pictures/outline.ts';
import { drawStallLabels } from '../pictures/stalls/stalls.ts';
import { drawMemberLoads } from '../pictures/steel/member-loads.ts';
import type { RaisedView } from '../raised-view.ts';
import type { MarksByList } from '../scene/differ.ts';
import type { Scene, SceneList } from '../scene/scene.ts';
import { drawBlocks, seenColumn, seenEquipment, seenVehicle } from './draw-blocks.ts';
import { drawHanging, type Find } from './draw-hanging.ts';
import { paled } from './paled.ts';
import { raisedMark } from './raised-marks.ts';
import { pickRaised } from './raised-pick.ts';

/** Pixels to a foot from which blocks stand on the board, and cars among them: those of the plan. */
const BLOCKS_FROM = 0.7;
const CARS_FROM = 1.3;
const NUMBERS_FROM = 1.4;
const SPACES_FROM = 2.5;

/** Pictures of the plan in whose place others stand. */
const GONE: ReadonlySet<string> = new Set([
  'cars',
  'stall labels',
  'equipment',
  'drop words',
  'risers',
  'runs',
  'member ends',
  'member loads',
]);
/** What hangs over the plan lies pale on it, so that the hand finds its place. */
const PALE: ReadonlySet<SceneList> = new Set(['members', 'raceways', 'pullpoints', 'drops']);

function blocksOf(scene: Scene, painting: PictureBoard, find: Find, cars: boolean): readonly SeenBlock[] {
  const shown: Find = (list) => (painting.shows(list) ? find(list) : []);
  return [
    ...(cars ? shown('stalls').map(({ stall }) => seenVehicle(stall, scene.site)) : []),
    ...shown('columns').map((mark) => seenColumn(mark, scene)),
    ...shown('equipment').map(({ equipment }) => seenEquipment(equipment)),
  ];
}

function drawCabinetTops(
  pen: BoardPen,
  frame: Frame,
  painting: PictureBoard,
  marks: Scene['equipment']['items'],
): void {
  if (!painting.shows('equipment') || marks.length === 0) return;
  const tops = marks.map((mark) => raisedMark('equipment', mark));
  for (const { draw } of boardKind('equipment').pictures) draw(pen, frame, tops, painting);
}

function drawWorkingSpaces(pen: BoardPen, frame: Frame, marks: Scene['equipment']['items']): void {
  pen.beginPath();
  for (const { space } of marks) if (space) traceOutline(pen, frame, space);
  pen.strokeStyle = frame.ink.ruleStrong;
  pen.lineWidth = 1;
  pen.setLineDash([3, 3]);
  pen.stroke();
  pen.setLineDash([]);
}

/** The base: numbers on the ground, then blocks each over what stands behind it, then what hangs. */
function base(pen: BoardPen, painting: PictureBoard): number {
  const frame = painting.frame();
  const { scale } = frame;
  const scene = painting.base();
  const { low, high } = heightsOf(scene.site);
  const box = { ...frame.box, minY: frame.box.minY - high, maxY: frame.box.maxY - low };
  const find: Find = (list) => marksInView(scene, list, box, painting.hidden());
  const shading = painting.shading() !== null;
  if (scale > SPACES_FROM && painting.shows('equipment')) drawWorkingSpaces(pen, frame, find('equipment'));
  // Shaded stalls are seen without their cars.
  const cars = scale >= CARS_FROM && !shading;
  const blocks = scale >= BLOCKS_FROM ? blocksOf(scene, painting, find, cars) : [];
  drawBlocks(pen, frame, blocks);
  // Numbers are painted where the cars stand.
  if (scale >= NUMBERS_FROM && painting.shows('stalls') && !shading) drawStallLabels(pen, frame, find('stalls'));
  const loads = painting.loads();
  if (loads && painting.shows('members')) {
    const members = find('members').map((mark) => raisedMark('members', mark));
    drawMemberLoads(pen, frame, members, loads);
  }
  const count = blocks.length + drawHanging(pen, frame, painting, find, 'base');
  // What conduits come down on is named over them.
  drawCabinetTops(pen, frame, painting, find('equipment'));
  return count;
}

/** Marks that move or are selected, in the ink of the frame. */
function marks(pen: BoardPen, frame: Frame, painting: PictureBoard, own: MarksByList): number {
  const find = ((list: SceneList) => own[list] ?? []) as Find;
  const blocks = blocksOf(frame.scene, painting, find, frame.scale >= CARS_FROM);
  drawBlocks(pen, frame, blocks);
  drawCabinetTops(pen, frame, painting, find('equipment'));
  return blocks.length + drawHanging(pen, frame, painting, find, 'live');
}

/** The board with its heights drawn straight up. */
export const RAISED_VIEW: RaisedView = {
  under: (list, name, frame) => (GONE.has(name) ? null : PALE.has(list) ? { ...frame, ink: paled(frame.ink) } : frame),
  base,
  marks,
  pick: pickRaised,
  high: (site) => heightsOf(site).high,
};
