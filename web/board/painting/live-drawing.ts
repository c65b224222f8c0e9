import type { Ref } from '../../document/change/element-lists.ts';
import type { BoardPen } from '../pictures/frame.ts';
import type { ViewState } from '../view-store.ts';
import type { Painting } from './painting.ts';

/** Draws what moves, what is selected, and what the hand does. Returns how many marks it drew. */
export type DrawLive = (pen: BoardPen, painting: Painting, view: ViewState, selection: readonly Ref[]) => number;

/** Before the hand there is nothing of it to be seen: it comes with it (`hand/hold-board.ts`). */
let drawing: DrawLive | null = null;

export const liveDrawing = (): DrawLive | null => drawing;

export function liveDrawingComes(come: DrawLive): void {
  drawing = come;
}
