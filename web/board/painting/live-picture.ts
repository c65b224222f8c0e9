import { cordsOf } from '../../../calc/plan/margins.ts';
import type { Box } from '../../../routing/plane/box.ts';
import { positionsIn } from '../../../routing/plane/box-index.ts';
import type { Reach } from '../../../routing/reach/reach-result.ts';
import { placedKind } from '../../../routing/site/kinds/kinds.ts';
import { positionsOf, type Ref } from '../../document/change/element-lists.ts';
import { keepsDrawing } from '../../document/field-work.ts';
import { spotsOf } from '../draw/draft.ts';
import { drawsOutlines } from '../draw/tool-names.ts';
import type { DropMark } from '../kinds/drops.ts';
import type { ElementMark, Picture } from '../kinds/kind.ts';
import { boardKind, isMarked, MARKED_LISTS } from '../kinds/kinds.ts';
import type { PullpointMark } from '../kinds/pullpoints.ts';
import { drawDraft } from '../pictures/draft.ts';
import type { BoardPen, Frame } from '../pictures/frame.ts';
import { drawBand, drawGuides, drawLasso, drawMeasure, drawPin } from '../pictures/guides.ts';
import { drawHandles } from '../pictures/handles.ts';
import { traceLine, traceOutline } from '../pictures/outline.ts';
import { drawDrops, drawDropWords, halo } from '../pictures/stalls/drops.ts';
import { drawCord, drawCordNote } from '../pictures/stalls/reach.ts';
import { drawReachRegion } from '../pictures/stalls/reach-region.ts';
import { drawPullpoints, drawRuns } from '../pictures/ways/raceways.ts';
import { chosenMarks } from '../scene/chosen.ts';
import type { MarksByList } from '../scene/differ.ts';
import type { SceneMark } from '../scene/mark.ts';
import { marksOf, type Scene, type SceneList } from '../scene/scene.ts';
import type { ViewState } from '../view-store.ts';
import type { DrawLive } from './live-drawing.ts';
import type { Painting } from './painting.ts';

/** The pictures of the live layer, in the order of those of the base. */
const DRAWN: readonly (readonly [SceneList, Pick<Picture<never>, 'name' | 'over' | 'draw'>])[] = [
  ...MARKED_LISTS.flatMap((list) =>
    boardKind(list)
      .pictures.filter(({ on }) => on !== 'base')
      .map((picture) => [list, picture] as const),
  ),
  ['runs', { name: 'runs', over: 140, draw: drawRuns }] as const,
].sort(([, a], [, b]) => a.over - b.over);

/** What moves, what is selected, and what the hand does. */
export const drawLive: DrawLive = (pen, painting, view, selection) => {
  const scene = painting.scene();
  const plain = painting.frame();
  const heavy = painting.frame(true);
  const chosen = chosenMarks(scene, selection);
  const { on, height } = view.reachPicture;
  if (on && plain.station === 'layout') drawReachRegion(pen, plain, scene.site, selection, height);
  const moving = painting.moving();
  const raised = painting.raised();
  let count = raised ? raised.marks(pen, plain, painting, moving) : 0;
  count += drawMarks(pen, plain, painting, moving);
  // Runs that follow a new raceway would hide the boxes and drops that the base has drawn.
  if (moving.runs && !raised) drawOver(pen, plain, plain, scene, { runs: moving.runs });
  count += drawMarks(pen, heavy, painting, chosen.marks);
  if (chosen.marks.runs && !raised) count += drawOver(pen, plain, heavy, scene, chosen.marks);
  if (raised) count += raised.marks(pen, heavy, painting, chosen.marks);
  const cords = [...chosen.chargers].flatMap((charger) => cordsOf(scene.plan, scene.site, charger));
  // Raised, they are drawn as they hang.
  if (!raised) for (const reach of cords) drawCord(pen, plain, reach);
  const worst = worstOf(cords);
  if (worst && chosen.chargers.size <= 2) drawCordNote(pen, plain, worst);
  if (view.hovered) drawHover(pen, plain, scene, view.hovered, selection);
  // Before the guides: a handle that follows the hand would cross the name of what it is held to.
  if (!keepsDrawing(plain)) drawHandles(pen, plain, scene.site, view, selection);
  const named = drawGuides(pen, plain, view.guides);
  if (view.draftMarks) count += drawMarks(pen, plain, painting, view.draftMarks);
  if (view.draft)
    drawDraft(
      pen,
      plain,
      view.draft,
      { words: view.draftWords, leg: !boxed(view), named },
      thingsIn(scene, view.draftMarks),
    );
  if (view.measured) drawMeasure(pen, plain, view.measured);
  if (view.pin) drawPin(pen, plain, view.pin);
  if (view.band) drawBand(pen, plain, view.band);
  if (view.lasso.length > 1) drawLasso(pen, plain, view.lasso);
  return count;
};

/** Two corners of an area are told by the sides of the rectangle that they make. */
const boxed = ({ tool, draft }: ViewState): boolean =>
  drawsOutlines(tool) && draft !== null && spotsOf(draft).length === 2;

const WORTH_SEEING = MARKED_LISTS.filter((list) => boardKind(list).keptClear);

/** What words beside the hand are not to hide in a part of the plan: of what stands, and of what is drawn by itself. */
const thingsIn =
  (scene: Scene, drawn: MarksByList | null) =>
  (box: Box): readonly Box[] =>
    WORTH_SEEING.flatMap((list): readonly Box[] => {
      const index = marksOf(scene, list);
      return [...positionsIn(index, box).map((i) => index.items[i]!), ...(drawn?.[list] ?? [])];
    });

function drawMarks(pen: BoardPen, frame: Frame, painting: Painting, marks: MarksByList): number {
  let count = 0;
  const raised = painting.raised();
  for (const [list, { name, draw }] of DRAWN) {
    const own = marks[list];
    if (!own || !painting.shows(list)) continue;
    const seen = raised ? raised.under(list, name, frame) : frame;
    if (seen) draw(pen, seen, own as never, painting);
    count += own.length;
  }
  return count;
}

/** A selected run lies over the boxes and drops on its way, which the base has drawn: they are put back on top. */
function drawOver(pen: BoardPen, plain: Frame, heavy: Frame, scene: Scene, chosen: MarksByList): number {
  const pullpoints = new Set<PullpointMark>();
  const drops = new Set<DropMark>();
  for (const run of chosen.runs ?? []) {
    for (const i of positionsIn(scene.pullpoints, run)) pullpoints.add(scene.pullpoints.items[i]!);
    for (const i of positionsIn(scene.drops, run)) drops.add(scene.drops.items[i]!);
  }
  const own = new Set<SceneMark>(chosen.drops);
  drawPullpoints(pen, plain, [...pullpoints]);
  drawDrops(
    pen,
    plain,
    [...drops].filter((mark) => !own.has(mark)),
  );
  drawDrops(pen, heavy, (chosen.drops ?? []) as readonly DropMark[]);
  drawDropWords(pen, heavy, (chosen.drops ?? []) as readonly DropMark[]);
  return pullpoints.size + drops.size;
}

function worstOf(cords: readonly Reach[]): Reach | undefined {
  let worst: Reach | undefined;
  for (const reach of cords)
    if (!worst || (reach.worst.margin ?? Number.NEGATIVE_INFINITY) < (worst.worst.margin ?? Number.NEGATIVE_INFINITY))
      worst = reach;
  return worst;
}

/** A thin line round what a click would take, and its name. */
function drawHover(pen: BoardPen, frame: Frame, scene: Scene, hovered: Ref, selection: readonly Ref[]): void {
  if (selection.some(({ list, id }) => list === hovered.list && id === hovered.id)) return;
  const { list } = hovered;
  const place = positionsOf(scene.site[list]).get(hovered.id);
  const kind = placedKind(list);
  if (place === undefined || !kind || !isMarked(list)) return;
  const mark = marksOf(scene, list).items[place]!;
  const points = kind.points(scene.site[list][place] as never);
  const { ink, left, top, scale } = frame;
  pen.beginPath();
  const { hold } = boardKind(list);
  if (hold?.outline) traceOutline(pen, frame, hold.outline(mark as ElementMark));
  else if (kind.shape === 'ring') traceOutline(pen, frame, points);
  else if (kind.shape === 'line') traceLine(pen, frame, points);
  else {
    const [x, y] = points.at(-1)!;
    pen.arc(left + x * scale, top - y * scale, 13, 0, 2 * Math.PI);
  }
  pen.strokeStyle = ink.ink;
  pen.lineWidth = 1.4;
  pen.stroke();
  if (hold?.named) return;
  halo(pen, frame, hovered.id, left + mark.maxX * scale + 6, top - mark.maxY * scale - 8, 600, ink.ink);
}
