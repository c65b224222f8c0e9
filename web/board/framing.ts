import { type Box, joinedBox, NO_BOX } from '../../routing/plane/box.ts';
import type { Ref } from '../document/element-lists.ts';
import { boxInView, type Camera, fitted, type Viewport, zoomed } from './camera.ts';
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

/** Pixels by which the whole drawing stands above the middle where there is room: the run strip takes some below. */
const RAISED = 60;
/** Pixels: a board narrower than this is a phone's, where the strip stands below the board and takes nothing from it. */
const STRIP_FROM = 500;

/** The site, or what lies under the drawing while that is empty. */
const extentOf = (view: ViewStore, { extent }: Scene): Box =>
  extent.minX > extent.maxX ? (view.getState().underBox ?? extent) : extent;

function wholeIn(view: ViewStore, scene: Scene, viewport: Viewport): Camera {
  const extent = extentOf(view, scene);
  const room = roomOf(viewport);
  const level = fitted(extent, viewport, room, extent === scene.extent ? undefined : UNDER_MOST);
  const { minY, maxY } = extent;
  const free = (viewport.height - (maxY - minY) * level.scale) / 2 - room;
  const raised = viewport.width < STRIP_FROM || minY > maxY ? 0 : Math.min(RAISED, Math.max(0, free));
  const camera = { ...level, y: level.y - raised / level.scale };
  wholes.add(camera);
  return camera;
}

/** Shows the whole drawing. */
export const fitAll = (view: ViewStore, scene: Scene): void =>
  glideTo(view, wholeIn(view, scene, view.getState().viewport));

/**
 * Takes a new size of the board. The drawing stays where it is on the screen, from the upper left corner; where it was
 * shown whole and the person changed the room (`refits`), it is shown whole again.
 */
export function resized(view: ViewStore, scene: Scene, viewport: Viewport, refits: boolean): void {
  const { camera, viewport: was } = view.getState();
  if (was.width === 0) {
    view.setState({ viewport });
    return;
  }
  const stays: Camera = {
    x: camera.x + (viewport.width - was.width) / 2 / camera.scale,
    y: camera.y - (viewport.height - was.height) / 2 / camera.scale,
    scale: camera.scale,
  };
  const whole = wholes.has(camera);
  if (whole) wholes.add(stays);
  view.setState({ viewport, camera: whole && refits ? wholeIn(view, scene, viewport) : stays });
}

/** Shows the whole drawing at once, as when a document was opened. */
export const fitNow = (view: ViewStore, scene: Scene): void => {
  cancelAnimationFrame(gliding);
  view.setState({ camera: wholeIn(view, scene, view.getState().viewport) });
};

/** The box round what a selection puts in heavier ink; one of nothing where that is nowhere. */
export function boxOfRefs(scene: Scene, refs: readonly Ref[]): Box {
  let box = NO_BOX;
  for (const marks of Object.values(chosenMarks(scene, refs).marks))
    for (const mark of marks) if (mark.kind !== 'run' || refs.length === 1) box = joinedBox(box, mark);
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

/** Zooms on the middle of the board. */
export function zoomBy(view: ViewStore, factor: number): void {
  const { camera, viewport } = view.getState();
  glideTo(view, zoomed(camera, viewport, { px: viewport.width / 2, py: viewport.height / 2 }, factor));
}
