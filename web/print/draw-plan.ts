import { boxInView } from '../board/camera.ts';
import { BASE_PICTURES } from '../board/painting/base-pictures.ts';
import { type BoardInk, readInk } from '../board/painting/ink.ts';
import type { Painting } from '../board/painting/painting.ts';
import { boardFrame } from '../board/pictures/frame.ts';
import type { SceneMark } from '../board/scene/mark.ts';
import type { ViewState } from '../board/view-store.ts';
import { PAPER_VIEWS, type PaperView, type PictureSize, paperView } from './paper-view.ts';

/**
 * Pixels of the picture to one of the board: 384 to the inch, which is four to a pixel of the browser. A browser that
 * prints the strokes themselves takes the ratio of the two in 64ths, and the picture would not be to scale.
 */
const FINER = 3.2;

const NOTHING: ReadonlySet<SceneMark> = new Set();

/** The colors of the light theme, whichever is on the page: paper is light. */
function paperInk(): BoardInk {
  const page = document.documentElement;
  const { theme } = page.dataset;
  page.dataset.theme = 'light';
  const ink = readInk(page);
  if (theme === undefined) delete page.dataset.theme;
  else page.dataset.theme = theme;
  return ink;
}

/** A picture that is ready for paper. */
export interface OnPaper extends PaperView {
  readonly ink: BoardInk;
  /** What the board would show at that scale and place. */
  readonly painting: Painting;
}

/** The board as it is looked at, made ready for paper: the same part, kinds, shading and station, at a standard scale. */
export function onPaper(painting: Painting, { camera, viewport, raised }: ViewState, size: PictureSize): OnPaper {
  const scene = painting.base();
  const { whole, extent, units } = scene;
  const drawn = whole.minX <= whole.maxX ? whole : extent;
  const seen = viewport.width > 0 ? boxInView(camera, viewport) : drawn;
  // What is raised stands past the plan's own edge.
  const paper = paperView(size, seen, raised || drawn.minX > drawn.maxX ? seen : drawn, units);
  const { station, margins, charging, overPicture } = painting.frame();
  const ink = paperInk();
  const frame = boardFrame(paper.camera, PAPER_VIEWS[size], ink, { scene, station, margins, charging, overPicture });
  // What a hand holds stands on paper where it was before.
  return { ...paper, ink, painting: { ...painting, hidden: () => NOTHING, frame: () => frame } };
}

/** Draws a picture for paper on a canvas. */
export function drawPlan(canvas: HTMLCanvasElement, { painting, camera, size }: OnPaper): void {
  const { width, height } = PAPER_VIEWS[size];
  canvas.width = width * FINER;
  canvas.height = height * FINER;
  const pen = canvas.getContext('2d');
  if (!pen) return;
  pen.fillStyle = '#fff';
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.scale(FINER, FINER);
  for (const { draw } of BASE_PICTURES) {
    pen.save();
    draw(pen, painting);
    pen.restore();
  }
  const { minX, minY, maxX, maxY } = boxInView(camera, PAPER_VIEWS[size]);
  canvas.dataset.shown = `${minX} ${minY} ${maxX} ${maxY}`;
}
