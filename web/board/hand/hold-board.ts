import { attachUnsigned } from '../../page-state/unsigned.ts';
import { attachLeaving } from '../../parts/leaving.ts';
import { attachDrawKeys } from '../draw/draw-keys.ts';
import '../draw/tools/tools.ts';
import type { Desk } from '../draw/desk.ts';
import { drawHand } from '../draw/draw-hand.ts';
import { liveDrawingComes } from '../painting/live-drawing.ts';
import { drawLive } from '../painting/live-picture.ts';
import type { Painting } from '../painting/painting.ts';
import { attachClips } from './clips.ts';
import { attachKeys } from './keys.ts';
import { attachPointer } from './pointer.ts';
import { attachWheel } from './wheel.ts';

liveDrawingComes(drawLive);

/** Gives the board to the hand: pointer, wheel, keys and the clipboard. Returns how to take it back. */
export function holdBoard(board: HTMLElement, desk: Desk, painting: Painting): () => void {
  // What was chosen before it came is drawn now.
  painting.redraw();
  const draw = drawHand(desk, painting.base);
  const world = { element: board, ...desk, scene: painting.scene, draw };
  // Before the hand selects something, what is typed beside the board is taken in.
  const stops = [
    attachLeaving(),
    attachUnsigned(desk.page),
    attachDrawKeys(board, desk, draw),
    attachPointer(world),
    attachWheel(world),
    attachClips(world),
    attachKeys(world),
  ];
  return () => {
    for (const stop of stops) stop();
  };
}
