import type { Point2, Site } from '../../routing/site/site.ts';
import type { Ref } from '../document/change/element-lists.ts';
import type { PictureBoard } from './painting/painting.ts';
import type { BoardPen, Frame } from './pictures/frame.ts';
import type { MarksByList } from './scene/differ.ts';
import type { Passing } from './scene/pick.ts';
import type { Scene, SceneList } from './scene/scene.ts';

/**
 * The board as it is raised: the plan below, true to scale, and heights straight up over it. Its script comes when it is
 * asked for.
 */
export interface RaisedView {
  /** How a picture of the plan lies under it; null where what stands over it takes its place. */
  readonly under: (list: SceneList, name: string, frame: Frame) => Frame | null;
  /** Draws what stands, hangs and lies below; returns how many marks it drew. */
  readonly base: (pen: BoardPen, painting: PictureBoard) => number;
  /** Draws some marks where they are in space, in the ink of the frame; returns how many. */
  readonly marks: (pen: BoardPen, frame: Frame, painting: PictureBoard, marks: MarksByList) => number;
  /** How far the drawing reaches up past its plan, feet. */
  readonly high: (site: Site) => number;
  /** The element that is drawn at a place of the drawing, over the plan; null where only the plan lies there. */
  readonly pick: (scene: Scene, at: Point2, near: number, passing: Passing) => Ref | null;
}
