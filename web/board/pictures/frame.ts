import type { Box } from '../../../routing/plane/box.ts';
import type { Units } from '../../../routing/site/schema/vocabulary.ts';
import type { Station } from '../../document/document-state.ts';
import { boxInView, type Camera, type Viewport } from '../camera.ts';
import type { DropCharging } from '../charging.ts';
import type { BoardInk } from '../painting/ink.ts';
import type { Scene } from '../scene/scene.ts';

export type BoardPen = CanvasRenderingContext2D;

/** All that a picture needs to draw itself: pixels are `left + x * scale` and `top - y * scale` of site feet. */
export interface Frame {
  readonly scale: number;
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  /** The part of the plan in view, with room for lettering and symbols at its edge. */
  readonly box: Box;
  readonly ink: BoardInk;
  readonly units: Units;
  /** The station for which it is drawn: it decides which words stand on the board. */
  readonly station: Station;
  /** How drops and equipment fare. */
  readonly scene: Scene;
  /** Whether every drop carries the bars of its margins. */
  readonly margins: boolean;
  /** What each drop gives at a time of a charging day that is looked at. */
  readonly charging: ReadonlyMap<string, DropCharging> | null;
  /** A picture of the site lies underneath: what covers the ground lets it through. */
  readonly overPicture: boolean;
  /** Drawn heavier: what is selected. */
  readonly chosen: boolean;
}

const MARGIN_PX = 80;

/** How much of what covers the ground stays where a picture lies underneath. */
const THIN = 0.3;

/** Fills a path that covers the ground: thinly over a picture, for stalls are checked against it. */
export function fillGround(pen: BoardPen, { overPicture }: Frame, color: string): void {
  pen.fillStyle = color;
  if (overPicture) pen.globalAlpha = THIN;
  pen.fill();
  pen.globalAlpha = 1;
}

export const boardFrame = (
  camera: Camera,
  view: Viewport,
  ink: BoardInk,
  {
    scene,
    station,
    margins,
    charging = null,
    overPicture = false,
  }: Pick<Frame, 'scene' | 'station' | 'margins'> & Partial<Pick<Frame, 'charging' | 'overPicture'>>,
  chosen = false,
): Frame => ({
  scale: camera.scale,
  left: view.width / 2 - camera.x * camera.scale,
  top: view.height / 2 + camera.y * camera.scale,
  width: view.width,
  height: view.height,
  box: boxInView(camera, view, MARGIN_PX),
  ink,
  units: scene.units,
  scene,
  station,
  margins,
  charging,
  overPicture,
  chosen,
});
