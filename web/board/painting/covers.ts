import type { Viewport } from '../camera.ts';
import type { OverBoard } from './free-room.ts';

/** Pixels that the scale bar takes at most, and with the key of the margins above it: both change with the scale. */
const BAR = { width: 176, height: 30 };
const WITH_KEY = 76;

/**
 * What lies over the paper of the board at the moment, as large as it may become once the lot is shown whole. Pixels from
 * the left and top of the board.
 * @param keyed the key of the margins may stand above the scale bar
 */
export function coversOf(board: Viewport, keyed: boolean): readonly OverBoard[] {
  const paper = document.querySelector('.board-paper')?.getBoundingClientRect();
  if (!paper) return [];
  return [...document.querySelectorAll('.board > .over-board')].flatMap((element): readonly OverBoard[] => {
    const { left, top, right, bottom, width, height } = element.getBoundingClientRect();
    if (width === 0 || height === 0) return [];
    const keys = element.matches('.board-keys');
    const high = keys ? Math.max(height, keyed ? WITH_KEY : BAR.height) : height;
    const own: OverBoard = {
      minX: left - paper.left,
      minY: (keys ? bottom - high : top) - paper.top,
      maxX: (keys ? Math.max(right, left + BAR.width) : right) - paper.left,
      maxY: bottom - paper.top,
    };
    return own.minX < board.width && own.minY < board.height ? [own] : [];
  });
}
