import { type Box, boxesMeet } from '../../../routing/plane/box.ts';
import type { ScreenPoint, Viewport } from '../camera.ts';

/** What is laid over the board: pixels from its left and top edge, y down. */
export type OverBoard = Box;

export interface FreeRoomWish {
  /** Pixels that stay free at the edges of the board. */
  readonly margin: number;
  /** Pixels to the unit, at most. */
  readonly most: number;
  /** Where the middle of the picture is wished, pixels. */
  readonly wish: ScreenPoint;
}

/** Pixels of air between what is shown whole and what lies over the board. */
const AIR = 8;

/**
 * The largest picture of a size (any unit) that stands on the board clear of all covers, and the middle of it: of the
 * places that are as good the one nearest where it is wished. Each cover is passed by on one of its four sides; at
 * most six covers are looked at, which is all the board has.
 */
export function freeRoom(
  board: Viewport,
  covers: readonly OverBoard[],
  size: { readonly width: number; readonly height: number },
  { margin, most, wish }: FreeRoomWish,
): { readonly px: number; readonly py: number; readonly scale: number } {
  const whole: Box = { minX: margin, minY: margin, maxX: board.width - margin, maxY: board.height - margin };
  const placed = (room: Box): Placed => placedIn(room, wish, size, most, covers);
  let best = placed(whole);
  let rooms: readonly Box[] = [whole];
  for (const { minX, minY, maxX, maxY } of covers.slice(0, 6))
    rooms = rooms.flatMap((room) =>
      boxesMeet(room, { minX: minX - AIR, minY: minY - AIR, maxX: maxX + AIR, maxY: maxY + AIR })
        ? [
            { ...room, minX: maxX + AIR },
            { ...room, maxX: minX - AIR },
            { ...room, minY: maxY + AIR },
            { ...room, maxY: minY - AIR },
          ].filter((each) => each.maxX - each.minX > LEAST && each.maxY - each.minY > LEAST)
        : [room],
    );
  for (const room of rooms) {
    const place = placed(room);
    const better = best.covered !== place.covered ? best.covered : place.scale > best.scale * 1.001;
    if (better || (!place.covered && place.scale > best.scale * 0.999 && place.off < best.off)) best = place;
  }
  return { px: best.px, py: best.py, scale: best.scale };
}

/** Pixels: less room than this shows nothing. */
const LEAST = 60;

interface Placed extends ScreenPoint {
  readonly scale: number;
  /** Pixels from where it is wished. */
  readonly off: number;
  readonly covered: boolean;
}

function placedIn(
  room: Box,
  wish: ScreenPoint,
  size: { readonly width: number; readonly height: number },
  most: number,
  covers: readonly OverBoard[],
): Placed {
  const wide = Math.max(LEAST, room.maxX - room.minX);
  const high = Math.max(LEAST, room.maxY - room.minY);
  const scale = Math.min(most, wide / (size.width || 1), high / (size.height || 1));
  const halfWidth = (size.width * scale) / 2;
  const halfHeight = (size.height * scale) / 2;
  const near = (to: number, from: number, until: number): number => Math.max(from, Math.min(to, until));
  const px = near(wish.px, room.minX + halfWidth, room.maxX - halfWidth);
  const py = near(wish.py, room.minY + halfHeight, room.maxY - halfHeight);
  const own = { minX: px - halfWidth, minY: py - halfHeight, maxX: px + halfWidth, maxY: py + halfHeight };
  return {
    px,
    py,
    scale,
    off: Math.hypot(px - wish.px, py - wish.py),
    covered: covers.some((cover) => boxesMeet(own, cover)),
  };
}
