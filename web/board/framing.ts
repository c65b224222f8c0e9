import { type Box, boxesMeet, boxHolds, joinedBox, NO_BOX } from '../../routing/plane/box.ts';
import type { Point2, Site } from '../../routing/site/site.ts';
import type { Ref } from '../document/change/element-lists.ts';
import { boxInView, type Camera, clampScale, fitted, toScreen, type Viewport, zoomed } from './camera.ts';
import { coversOf } from './painting/covers.ts';
import { freeRoom } from './painting/free-room.ts';
import { chosenMarks } from './scene/chosen.ts';
import type { Scene } from './scene/scene.ts';
import type { ViewStore } from './view-store.ts';

const GLIDE_MS = 180;
/** Room round what is framed, pixels: less where the board is small. */
const roomOf = ({ width, height }: Viewport): number => Math.min(70, Math.min(width, height) * 0.13);

let gliding = 0;

/** Brings the camera to a place in a short glide, at once where the person asked for less motion. */
function glideTo(view: ViewStore, to: Camera): void {
  cancelAnimationFrame(gliding);
  const { camera: from, viewport } = view.getState();
  if (viewport.width === 0 || matchMedia('(prefers-reduced-motion: reduce)').matches) {
    view.setState({ camera: to });
    return;
  }
  const start = performance.now();
  const step = (now: number): void => {
    // A frame may carry a time from before the glide began.
    const t = Math.min(1, Math.max(0, (now - start) / GLIDE_MS));
    const eased = 1 - (1 - t) ** 3;
    if (t === 1) {
      view.setState({ camera: to });
      return;
    }
    const mix = (a: number, b: number): number => a + (b - a) * eased;
    view.setState({ camera: { x: mix(from.x, to.x), y: mix(from.y, to.y), scale: mix(from.scale, to.scale) } });
    gliding = requestAnimationFrame(step);
  };
  gliding = requestAnimationFrame(step);
}

/** Cameras that show the whole drawing because that was asked for, and not by chance. */
const wholes = new WeakSet<Camera>();

/** Pixels to a foot: a picture may be small before it is scaled. */
const UNDER_MOST = 1e6;
/** Pixels round what is installed: room for the names at its edge; and round the ground. */
const WHOLE_ROOM = 28;
const EDGE = 5;
/** Pixels to a foot, at most, for what is drawn. */
const MOST = 40;

/** Pixels by which the whole drawing stands above the middle where there is room: the run strip takes some below. */
const RAISED = 60;
/** Pixels: a board narrower than this is a phone's, where the strip stands below the board and takes nothing from it. */
const STRIP_FROM = 500;

/** Everything that is drawn, or what lies under the drawing while that is nothing; gridlines alone are something. */
function extentOf(view: ViewStore, { whole, extent, site }: Scene): Box {
  if (whole.minX <= whole.maxX) return raisedOver(view, site, whole);
  return extent.minX > extent.maxX ? (view.getState().underBox ?? extent) : extent;
}

/** A box of the plan with what is drawn over it where the board is raised. */
function raisedOver(view: ViewStore, site: Site, box: Box): Box {
  const high = view.getState().raisedView?.high(site) ?? 0;
  return high === 0 ? box : { ...box, maxY: box.maxY + high };
}

function wholeIn(view: ViewStore, scene: Scene, viewport: Viewport): Camera {
  const box = extentOf(view, scene);
  const camera = box.minX > box.maxX ? fitted(box, viewport, 0) : clearOfAll(view, scene, viewport, box);
  wholes.add(camera);
  return camera;
}

const wideOf = ({ minX, maxX }: Box): number => maxX - minX;
const highOf = ({ minY, maxY }: Box): number => maxY - minY;

/**
 * All of a box on the board, what is installed in it clear of the legends and buttons that lie over the board (the ground
 * of aisles may go on under them), and above where the strip opens if there is room.
 */
function clearOfAll(view: ViewStore, scene: Scene, viewport: Viewport, box: Box): Camera {
  const { installed } = scene;
  const own = installed.minX <= installed.maxX ? raisedOver(view, scene.site, installed) : box;
  const some = scene.site.chargers.length > 0;
  const raised = viewport.width < STRIP_FROM ? 0 : RAISED;
  const covers = coversOf(viewport, view.getState().marginBars && some);
  const wish = { px: viewport.width / 2, py: viewport.height / 2 - raised };
  const size = { width: wideOf(own), height: highOf(own) };
  const largest = Math.min(
    box === view.getState().underBox ? UNDER_MOST : MOST,
    (viewport.width - 2 * EDGE) / (wideOf(box) || 1),
    (viewport.height - 2 * EDGE) / (highOf(box) || 1),
  );
  const placed = (most: number): Camera => {
    const found = freeRoom(viewport, covers, size, { margin: WHOLE_ROOM, most, wish });
    const scale = clampScale(found.scale);
    const x = (own.minX + own.maxX) / 2 + (viewport.width / 2 - found.px) / scale;
    const y = (own.minY + own.maxY) / 2 - (viewport.height / 2 - found.py) / scale;
    return { ...held(x, y, scale, viewport, box), scale };
  };
  const isClear = (camera: Camera): boolean => {
    const shown = onBoard(camera, viewport, own);
    return (
      !covers.some((cover) => boxesMeet(cover, shown)) &&
      boxHolds(roomIn(viewport, WHOLE_ROOM), shown) &&
      boxHolds(roomIn(viewport, EDGE), onBoard(camera, viewport, box))
    );
  };
  // A little smaller, where only so all of it is in sight and clear.
  const first = placed(largest);
  for (let step = 0, { scale } = first; step < STEPS; step++, scale *= SMALLER) {
    const camera = placed(scale);
    if (isClear(camera)) return camera;
  }
  return first;
}

/** Where a box of the plan lies on the board, pixels. */
function onBoard(camera: Camera, viewport: Viewport, { minX, minY, maxX, maxY }: Box): Box {
  const { px: left, py: top } = toScreen(camera, viewport, [minX, maxY]);
  const { px: right, py: bottom } = toScreen(camera, viewport, [maxX, minY]);
  return { minX: left, minY: top, maxX: right, maxY: bottom };
}

/** The board without a margin, and half a pixel for rounding. */
const roomIn = ({ width, height }: Viewport, margin: number): Box => ({
  minX: margin - 0.5,
  minY: margin - 0.5,
  maxX: width - margin + 0.5,
  maxY: height - margin + 0.5,
});

const STEPS = 16;
const SMALLER = 0.97;

/** The ground about what is installed is brought into the board as far as it has room. */
function held(x: number, y: number, scale: number, viewport: Viewport, box: Box) {
  const halfWide = viewport.width / 2 / scale - EDGE / scale;
  const halfHigh = viewport.height / 2 / scale - EDGE / scale;
  const near = (to: number, from: number, until: number): number => (from > until ? to : clampTo(to, from, until));
  return { x: near(x, box.maxX - halfWide, box.minX + halfWide), y: near(y, box.maxY - halfHigh, box.minY + halfHigh) };
}

const clampTo = (to: number, from: number, until: number): number => Math.max(from, Math.min(to, until));

/** Shows the whole drawing. */
export const fitAll = (view: ViewStore, scene: Scene): void =>
  glideTo(view, wholeIn(view, scene, view.getState().viewport));

/**
 * Takes a new size of the board. The drawing stays where it is on the screen, from the upper left corner, which itself
 * has come `lower` by so many pixels; where it was shown whole and the person changed the room (`refits`), it is shown
 * whole again.
 */
export function resized(view: ViewStore, scene: Scene, viewport: Viewport, refits: boolean, lower = 0): void {
  const { camera, viewport: was } = view.getState();
  if (was.width === 0) {
    view.setState({ viewport });
    return;
  }
  const stays: Camera = {
    x: camera.x + (viewport.width - was.width) / 2 / camera.scale,
    y: camera.y - ((viewport.height - was.height) / 2 + lower) / camera.scale,
    scale: camera.scale,
  };
  const whole = wholes.has(camera);
  if (whole) wholes.add(stays);
  view.setState({ viewport, camera: whole && refits ? wholeIn(view, scene, viewport) : stays });
}

/** Shows the whole drawing again where it is shown whole: what lies over the board has changed. */
export const fitAgain = (view: ViewStore, scene: Scene): void => {
  if (wholes.has(view.getState().camera)) fitAll(view, scene);
};

/** Shows the whole drawing at once, as when a document was opened. */
export const fitNow = (view: ViewStore, scene: Scene): void => {
  cancelAnimationFrame(gliding);
  view.setState({ camera: wholeIn(view, scene, view.getState().viewport) });
};

/** The box round what a selection puts in heavier ink; one of nothing where that is nowhere. */
export function boxOfRefs(scene: Scene, refs: readonly Ref[]): Box {
  let box = NO_BOX;
  for (const marks of Object.values(chosenMarks(scene, refs).marks))
    for (const mark of marks) if (mark.list !== 'runs' || refs.length === 1) box = joinedBox(box, mark);
  return box;
}

/** Brings elements into view: nothing moves where they are in view and large enough to be seen. */
export function frameRefs(view: ViewStore, scene: Scene, refs: readonly Ref[]): void {
  const box = boxOfRefs(scene, refs);
  if (box.minX > box.maxX) return;
  const { camera, viewport } = view.getState();
  const seen = boxInView(camera, viewport, -30);
  const inView = box.minX >= seen.minX && box.maxX <= seen.maxX && box.minY >= seen.minY && box.maxY <= seen.maxY;
  if (inView && camera.scale >= 3.5) return;
  const { x, y, scale } = fitted(box, viewport, roomOf(viewport) * 1.5, Math.max(camera.scale, 10));
  glideTo(view, { x, y, scale: inView ? Math.max(scale, camera.scale) : scale });
}

/** Pixels to a foot at which every drop in view carries its name and height. */
const NAMED = 12.5;

/** Brings a place to the middle of the board, so near that what stands round it is named. */
export function showPlace(view: ViewStore, [x, y]: Point2): void {
  const { camera } = view.getState();
  glideTo(view, { x, y, scale: Math.max(camera.scale, NAMED) });
}

/** Zooms on the middle of the board. */
export function zoomBy(view: ViewStore, factor: number): void {
  const { camera, viewport } = view.getState();
  glideTo(view, zoomed(camera, viewport, { px: viewport.width / 2, py: viewport.height / 2 }, factor));
}
