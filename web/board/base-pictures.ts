import { boxesMeet } from '../../routing/plane/box.ts';
import { marksInView, type Painting } from './painting.ts';
import { drawConduitWords } from './pictures/conduit-words.ts';
import { drawCoverage } from './pictures/coverage.ts';
import { drawDrops, drawDropWords } from './pictures/drops.ts';
import { drawFeederExits } from './pictures/feeder-exits.ts';
import type { Pen } from './pictures/frame.ts';
import { drawBubbles, drawGridlines } from './pictures/gridlines.ts';
import { drawAisles, drawCanopies, drawKeepouts, drawMembers } from './pictures/ground.ts';
import { drawAllRuns, drawPullpoints, drawRaceways } from './pictures/raceways.ts';
import { drawRisers } from './pictures/risers.ts';
import { drawBands, drawCars, drawStallLabels, drawStalls, STALLS_FROM } from './pictures/stalls.ts';
import { drawColumnEdges, drawColumns, drawEquipment, drawFeeders } from './pictures/structure.ts';
import type { SceneList } from './scene/scene.ts';

/** One kind of picture on the base, drawn in a single go; it returns how many marks it drew. */
export interface BasePicture {
  readonly name: string;
  readonly draw: (pen: Pen, painting: Painting) => number;
}

type Draw<L extends SceneList> = (
  pen: Pen,
  frame: ReturnType<Painting['frame']>,
  marks: ReturnType<typeof marksInView<L>>,
  painting: Painting,
) => void;

/** A picture of the marks of a list that are in view; below `from` pixels to a foot they are not looked for. */
function culled<L extends SceneList>(name: string, list: L, draw: Draw<L>, from = 0): BasePicture {
  return {
    name,
    draw: (pen, painting) => {
      if (!painting.shows(list)) return 0;
      const frame = painting.frame();
      if (frame.scale < from) return 0;
      const marks = marksInView(painting.base(), list, frame.box, painting.hidden());
      if (marks.length > 0) draw(pen, frame, marks, painting);
      return marks.length;
    },
  };
}

function gridlined(name: string, draw: typeof drawGridlines): BasePicture {
  return {
    name,
    draw: (pen, painting) => {
      const { site, extent } = painting.base();
      const lines = site.gridlines.x.length + site.gridlines.y.length;
      if (lines > 0) draw(pen, painting.frame(), site.gridlines, extent);
      return lines;
    },
  };
}

/** The base from the ground up: what stands, then what is installed, then its lettering. */
export const BASE_PICTURES: readonly BasePicture[] = [
  culled('aisles', 'aisles', drawAisles),
  { name: 'underlay', draw: (pen, painting) => painting.underlay()?.(pen, painting.frame()) ?? 0 },
  culled('feeders', 'feeders', drawFeeders, 0.7),
  {
    name: 'stall bands',
    draw: (pen, painting) => {
      const frame = painting.frame();
      if (frame.scale >= STALLS_FROM || !painting.shows('stalls')) return 0;
      const bands = painting.base().bands.filter((band) => boxesMeet(band, frame.box));
      drawBands(pen, frame, bands);
      return bands.length;
    },
  },
  culled('stalls', 'stalls', drawStalls, STALLS_FROM),
  culled('cars', 'stalls', drawCars, 1.3),
  {
    name: 'coverage',
    draw: (pen, painting) => {
      const shading = painting.shading();
      if (!shading) return 0;
      const frame = painting.frame();
      const marks = marksInView(painting.base(), 'stalls', frame.box, painting.hidden());
      drawCoverage(pen, frame, marks, shading);
      return marks.length;
    },
  },
  culled('keepouts', 'keepouts', drawKeepouts),
  culled('members', 'members', drawMembers, 2),
  {
    name: 'canopies',
    draw: (pen, painting) => {
      const { canopies } = painting.base();
      if (!painting.shows('members')) return 0;
      if (canopies.length > 0) drawCanopies(pen, painting.frame(), canopies);
      return canopies.length;
    },
  },
  gridlined('gridlines', drawGridlines),
  // A trunk runs along the columns: over it they are seen, and its conductors over them.
  culled('raceways', 'raceways', drawRaceways),
  culled('columns', 'columns', drawColumns, 0.7),
  culled('runs', 'runs', drawAllRuns, 2),
  culled('risers', 'raceways', drawRisers),
  culled('column edges', 'columns', drawColumnEdges, 0.7),
  culled('equipment', 'equipment', drawEquipment),
  culled('pullpoints', 'pullpoints', drawPullpoints, 1),
  culled('drops', 'drops', drawDrops, 0.7),
  gridlined('bubbles', drawBubbles),
  culled(
    'stall labels',
    'stalls',
    (pen, frame, marks, painting) => {
      // The shading carries the numbers itself.
      if (!painting.shading()) drawStallLabels(pen, frame, marks);
    },
    1.4,
  ),
  culled('drop words', 'drops', drawDropWords, 1.6),
  {
    name: 'conduit words',
    draw: (pen, painting) => {
      const frame = painting.frame();
      if (frame.station !== 'price') return 0;
      const scene = painting.base();
      const marks = marksInView(scene, 'raceways', frame.box, painting.hidden());
      drawConduitWords(pen, frame, marks, scene.plan.conduits);
      return marks.length;
    },
  },
  culled('feeder exits', 'feeders', drawFeederExits, 0.7),
];
