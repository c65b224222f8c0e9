import type { Box } from '../../routing/plane/box.ts';
import { BASE_PICTURES } from '../board/base-pictures.ts';
import { boxInView, fitted } from '../board/camera.ts';
import { type Ink, readInk } from '../board/ink.ts';
import type { Painting } from '../board/painting.ts';
import { frameOf } from '../board/pictures/frame.ts';
import type { Mark } from '../board/scene/mark.ts';

/** The picture's size on paper is 9.6 by 5.9 in, of 120 to the inch; drawn this much finer. */
const VIEW = { width: 1152, height: 708 };
const FINER = 2.5;
/** Room round the plan for names and bubbles at its edge. */
const ROOM = 34;

const NOTHING: ReadonlySet<Mark> = new Set();

/** The colors of the light theme, whichever is on the page: paper is light. */
function paperInk(): Ink {
  const page = document.documentElement;
  const { theme } = page.dataset;
  page.dataset.theme = 'light';
  const ink = readInk(page);
  if (theme === undefined) delete page.dataset.theme;
  else page.dataset.theme = theme;
  return ink;
}

/** Draws the whole plan, as the station shows it, on a canvas for paper; returns the part of the site that is on it, feet. */
export function drawPlan(canvas: HTMLCanvasElement, painting: Painting): Box | null {
  canvas.width = VIEW.width * FINER;
  canvas.height = VIEW.height * FINER;
  const pen = canvas.getContext('2d');
  if (!pen) return null;
  const scene = painting.base();
  const { whole, extent } = scene;
  const camera = fitted(whole.minX <= whole.maxX ? whole : extent, VIEW, ROOM);
  const { station, margins, overPicture } = painting.frame();
  const frame = frameOf(camera, VIEW, paperInk(), { scene, station, margins, overPicture });
  // What a hand holds stands on paper where it was before.
  const onPaper: Painting = { ...painting, hidden: () => NOTHING, raised: () => null, frame: () => frame };
  pen.fillStyle = '#fff';
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.scale(FINER, FINER);
  for (const { draw } of BASE_PICTURES) {
    pen.save();
    draw(pen, onPaper);
    pen.restore();
  }
  return boxInView(camera, VIEW);
}
