import type { Box } from '../../routing/plane/box.ts';
import type { Point2 } from '../../routing/site/site.ts';

/** A place on the screen: pixels from the board's left and top edge, y down. Never mixed with site feet. */
export interface ScreenPoint {
  readonly px: number;
  readonly py: number;
}

/** What the board looks at: the site point in its middle, and pixels to a foot. */
export interface Camera {
  readonly x: number;
  readonly y: number;
  readonly scale: number;
}

export interface Viewport {
  readonly width: number;
  readonly height: number;
}

const MIN_SCALE = 0.02;
const MAX_SCALE = 240;
/** A scale that the board can show. */
export const clampScale = (scale: number): number => Math.min(MAX_SCALE, Math.max(MIN_SCALE, scale));

export const toScreen = (camera: Camera, view: Viewport, [x, y]: Point2): ScreenPoint => ({
  px: view.width / 2 + (x - camera.x) * camera.scale,
  py: view.height / 2 - (y - camera.y) * camera.scale,
});

export const placeOnSite = (camera: Camera, view: Viewport, { px, py }: ScreenPoint): Point2 => [
  camera.x + (px - view.width / 2) / camera.scale,
  camera.y - (py - view.height / 2) / camera.scale,
];

/** The camera after zooming by a factor with the site point under `at` kept there. */
export function zoomed(camera: Camera, view: Viewport, at: ScreenPoint, factor: number): Camera {
  const scale = clampScale(camera.scale * factor);
  const [x, y] = placeOnSite(camera, view, at);
  return {
    x: x - (at.px - view.width / 2) / scale,
    y: y + (at.py - view.height / 2) / scale,
    scale,
  };
}

/** The camera after the drawing was pushed by so many pixels. */
export const pushed = (camera: Camera, dx: number, dy: number): Camera => ({
  ...camera,
  x: camera.x - dx / camera.scale,
  y: camera.y + dy / camera.scale,
});

/** The part of the plan in view, with a margin of so many pixels round it. */
export function boxInView(camera: Camera, view: Viewport, margin = 0): Box {
  const halfWidth = (view.width / 2 + margin) / camera.scale;
  const halfHeight = (view.height / 2 + margin) / camera.scale;
  return {
    minX: camera.x - halfWidth,
    minY: camera.y - halfHeight,
    maxX: camera.x + halfWidth,
    maxY: camera.y + halfHeight,
  };
}

/** Feet of ground that an empty site shows from side to side: a lot of 24 stalls with room beside it. */
const EMPTY_WIDE = 200;

/**
 * The camera that shows a box as large as it goes, `margin` pixels free round it; a box without size is shown at `most`,
 * and where there is no box the ground for a lot to be drawn.
 */
export function fitted(box: Box, view: Viewport, margin: number, most = 40): Camera {
  if (!(box.minX <= box.maxX && box.minY <= box.maxY))
    return { x: 0, y: 0, scale: clampScale(Math.min(8, view.width / EMPTY_WIDE)) };
  const width = Math.max(40, view.width - 2 * margin);
  const height = Math.max(40, view.height - 2 * margin);
  const scale = Math.min(most, width / (box.maxX - box.minX || 1), height / (box.maxY - box.minY || 1));
  return { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2, scale: clampScale(scale) };
}
