import { boxesMeet } from '../../../routing/plane/box.ts';
import type { Picture } from '../kinds/kind.ts';
import { boardKind, MARKED_LISTS } from '../kinds/kinds.ts';
import type { BoardPen } from '../pictures/frame.ts';
import { drawCanopies } from '../pictures/ground.ts';
import { drawCoverage } from '../pictures/stalls/coverage.ts';
import { drawBands, STALLS_FROM } from '../pictures/stalls/stalls.ts';
import { drawBoardGridlines, drawBubbles } from '../pictures/steel/gridlines.ts';
import { drawMemberLoads } from '../pictures/steel/member-loads.ts';
import { drawConduitWords } from '../pictures/ways/conduit-words.ts';
import { drawAllRuns } from '../pictures/ways/raceways.ts';
import type { Scene, SceneList } from '../scene/scene.ts';
import { marksInView, type PictureBoard } from './painting.ts';

/** One kind of picture on the base, drawn in a single go; it returns how many marks it drew. */
export interface BasePicture {
  readonly name: string;
  readonly over: number;
  readonly draw: (pen: BoardPen, painting: PictureBoard) => number;
}

/** A picture of the marks of a list that are in view; below `from` pixels to a foot they are not looked for. */
function culled<L extends SceneList>(
  list: L,
  { name, over, from = 0, draw }: Picture<Scene[L]['items'][number]>,
): BasePicture {
  return {
    name,
    over,
    draw: (pen, painting) => {
      if (!painting.shows(list)) return 0;
      const plain = painting.frame();
      const raised = painting.raised();
      const frame = raised ? raised.under(list, name, plain) : plain;
      if (frame === null || frame.scale < from) return 0;
      const marks = marksInView(painting.base(), list, frame.box, painting.hidden());
      if (marks.length > 0) draw(pen, frame, marks, painting);
      return marks.length;
    },
  };
}

function gridlined(name: string, over: number, draw: typeof drawBoardGridlines): BasePicture {
  return {
    name,
    over,
    draw: (pen, painting) => {
      const { site, extent } = painting.base();
      const lines = site.gridlines.x.length + site.gridlines.y.length;
      if (lines > 0) draw(pen, painting.frame(), site.gridlines, extent);
      return lines;
    },
  };
}

/** What the base shows beside the elements of each kind. */
const OTHERS: readonly BasePicture[] = [
  { name: 'underlay', over: 20, draw: (pen, painting) => painting.underlay()?.(pen, painting.frame()) ?? 0 },
  {
    name: 'stall bands',
    over: 40,
    draw: (pen, painting) => {
      const frame = painting.frame();
      if (frame.scale >= STALLS_FROM || !painting.shows('stalls')) return 0;
      const bands = painting.base().bands.filter((band) => boxesMeet(band, frame.box));
      drawBands(pen, frame, bands);
      return bands.length;
    },
  },
  {
    name: 'coverage',
    over: 70,
    draw: (pen, painting) => {
      const shading = painting.shading();
      if (!shading) return 0;
      const frame = painting.frame();
      const marks = marksInView(painting.base(), 'stalls', frame.box, painting.hidden());
      drawCoverage(pen, frame, marks, shading);
      return marks.length;
    },
  },
  {
    name: 'member loads',
    over: 95,
    draw: (pen, painting) => {
      const loads = painting.loads();
      if (!loads || painting.raised() || !painting.shows('members')) return 0;
      const frame = painting.frame();
      const marks = marksInView(painting.base(), 'members', frame.box, painting.hidden());
      drawMemberLoads(pen, frame, marks, loads);
      return marks.length;
    },
  },
  {
    name: 'canopies',
    over: 100,
    draw: (pen, painting) => {
      const { canopies } = painting.base();
      if (!painting.shows('members')) return 0;
      if (canopies.length > 0) drawCanopies(pen, painting.frame(), canopies);
      return canopies.length;
    },
  },
  gridlined('gridlines', 110, drawBoardGridlines),
  // A trunk runs along the columns: over it they are seen, and its conductors over them.
  culled('runs', { name: 'runs', over: 140, from: 2, draw: drawAllRuns }),
  { name: 'raised', over: 195, draw: (pen, painting) => painting.raised()?.base(pen, painting) ?? 0 },
  gridlined('bubbles', 200, drawBubbles),
  {
    name: 'conduit words',
    over: 240,
    draw: (pen, painting) => {
      const frame = painting.frame();
      if (frame.station !== 'price') return 0;
      const scene = painting.base();
      const marks = marksInView(scene, 'raceways', frame.box, painting.hidden());
      drawConduitWords(pen, frame, marks, scene.plan.conduits);
      return marks.length;
    },
  },
];

/** The base from the ground up: what stands, then what is installed, then its lettering. */
export const BASE_PICTURES: readonly BasePicture[] = [
  ...OTHERS,
  ...MARKED_LISTS.flatMap((list) =>
    boardKind(list)
      .pictures.filter(({ on }) => on !== 'live')
      .map((picture) => culled<SceneList>(list, picture as never)),
  ),
].sort((a, b) => a.over - b.over);
