import type { Box } from '../../../../routing/plane/box.ts';
import type { Units } from '../../../../routing/site/schema/vocabulary.ts';
import type { Point2 } from '../../../../routing/site/site.ts';
import { type Area, right, top } from '../kit/area.ts';
import { LEADING } from '../kit/lettering/letters.ts';
import { pointsPerFoot, scaleThatFits } from '../kit/view/scales.ts';
import { sizeOf, type View, viewIn } from '../kit/view/view.ts';

/** No raised view is drawn larger than 1/2 in = 1 ft, or 1:25. */
export const LARGEST_RAISED = 24;
/** Smaller than this nobody could tell a box from its retractor. */
export const SMALLEST_RATIO = 240;
/** Into no more parts than this is a lot cut: of more nobody would see how they hang together. */
const MOST_PARTS = 4;
/** White between parts, points. */
const BETWEEN = 24;

/** A part of a lot in a view of its own, with what is written over it and its edges past which another part goes on. */
export interface RaisedPart {
  /** What of the plan it shows, feet. */
  readonly within: Box;
  readonly view: View;
  readonly words: string;
  readonly cuts: readonly (readonly [from: Point2, to: Point2])[];
}

/**
 * A lot cut into parts as long as one another, those of a long one under one another on the sheet, those of a tall one
 * beside each other: as few as are drawn largest; none where they would be too small to read.
 * @param whole all of the lot in plan, feet
 * @param high how far what stands on it is drawn above the plan, feet
 * @param small size of the lettering, points
 * @param keepOff what no cut is to go through where there is a gap beside it, feet
 */
export function raisedParts(
  units: Units,
  whole: Box,
  high: number,
  room: Area,
  small: number,
  keepOff: readonly Point2[],
): readonly RaisedPart[] {
  let best: readonly RaisedPart[] = [];
  for (let count = 2; count <= MOST_PARTS; count++)
    for (const isLong of [true, false]) {
      const parts = partsOf({ units, whole, high, room, over: small * LEADING + 4, count, isLong, keepOff });
      const { ratio } = parts[0]!.view.scale;
      if (ratio <= SMALLEST_RATIO && !(best[0] && best[0].view.scale.ratio <= ratio)) best = parts;
    }
  return best;
}

interface Cut {
  readonly units: Units;
  readonly whole: Box;
  readonly high: number;
  readonly room: Area;
  /** Points over each part for its words. */
  readonly over: number;
  readonly count: number;
  readonly isLong: boolean;
  readonly keepOff: readonly Point2[];
}

/** A cut is moved by no more than this share of a part. */
const MOVED = 0.15;

/** Where a lot is cut along an axis: into like parts, but in the middle of the widest gap near by. Feet, with both ends. */
function cutPlaces({ whole, count, isLong, keepOff }: Cut): readonly number[] {
  const [low, high] = isLong ? [whole.minX, whole.maxX] : [whole.minY, whole.maxY];
  const part = (high - low) / count;
  const places = keepOff.map((at) => at[isLong ? 0 : 1]).sort((a, b) => a - b);
  const inner = Array.from({ length: count - 1 }, (_, i) => {
    const wished = low + (i + 1) * part;
    const [from, to] = [wished - MOVED * part, wished + MOVED * part];
    const near = [from, ...places.filter((place) => place > from && place < to), to];
    const gaps = near.slice(1).map((place, k) => [near[k]!, place] as const);
    const widest = gaps.reduce((best, gap) => (gap[1] - gap[0] > best[1] - best[0] + 1e-6 ? gap : best));
    return near.length === 2 ? wished : (widest[0] + widest[1]) / 2;
  });
  return [low, ...inner, high];
}

function partsOf(cut: Cut): readonly RaisedPart[] {
  const { units, whole, high, room, over, count, isLong } = cut;
  const size = sizeOf(whole);
  const places = cutPlaces(cut);
  const longest = Math.max(...places.slice(1).map((place, i) => place - places[i]!));
  const [width, height] = isLong ? [longest, size.height] : [size.width, longest];
  const across = isLong ? room.width : (room.width - (count - 1) * BETWEEN) / count;
  const up = (isLong ? (room.height - (count - 1) * BETWEEN) / count : room.height) - over;
  const scale = scaleThatFits(units, { width, height: height + high }, { width: across, height: up }, LARGEST_RAISED);
  const perFoot = pointsPerFoot(scale);
  // Parts stand in one column or row, as near to one another as they are drawn, in the middle of the room.
  const drawn = isLong ? (height + high) * perFoot + over : width * perFoot;
  const step = drawn + Math.min(3 * BETWEEN, ((isLong ? room.height : room.width) - count * drawn) / (count - 1));
  const span = drawn + (count - 1) * step;
  return Array.from({ length: count }, (_, i): RaisedPart => {
    const within: Box = isLong
      ? { ...whole, minX: places[i]!, maxX: places[i + 1]! }
      : // The first beside the others is the uppermost: read from the left, and down.
        { ...whole, minY: places[count - 1 - i]!, maxY: places[count - i]! };
    const place: Area = isLong
      ? { ...room, y: top(room) - (room.height - span) / 2 - i * step - drawn, height: drawn - over }
      : { x: room.x + (room.width - span) / 2 + i * step, y: room.y, width: drawn, height: room.height - over };
    const view = viewIn(place, { ...within, maxY: within.maxY + high }, scale);
    const [first, last] = isLong ? ['LEFT', 'RIGHT'] : ['TOP', 'BOTTOM'];
    const where = i === 0 ? `, ${first} OF THE LOT` : i === count - 1 ? `, ${last} OF THE LOT` : '';
    return { within, view, words: `PART ${i + 1} OF ${count}${where}`, cuts: cutsOf(view, i, count, isLong) };
  });
}

/** The edges of a view past which the parts before and after it go on. */
function cutsOf({ area }: View, at: number, count: number, isLong: boolean): RaisedPart['cuts'] {
  const upright = (x: number): readonly [Point2, Point2] => [
    [x, area.y],
    [x, top(area)],
  ];
  const level = (y: number): readonly [Point2, Point2] => [
    [area.x, y],
    [right(area), y],
  ];
  const [before, after] = isLong ? [upright(area.x), upright(right(area))] : [level(top(area)), level(area.y)];
  return [...(at > 0 ? [before] : []), ...(at < count - 1 ? [after] : [])];
}
