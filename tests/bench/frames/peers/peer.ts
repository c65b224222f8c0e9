import type { Camera, Viewport } from '../../../../web/board/camera.ts';
import type { Scene } from '../../../../web/board/scene/scene.ts';

/** A board drawn in another way. It pans with the middle button, zooms with the wheel, and a drop can be dragged. */
export interface Peer {
  readonly look: (camera: Camera) => void;
}

/** Makes a peer in an element. */
export type MakePeer = (element: HTMLElement, scene: Scene, viewport: Viewport, camera: Camera) => Peer;
