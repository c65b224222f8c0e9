import { direction } from '../../../../../routing/plane/direction.ts';
import type { Point2 } from '../../../../../routing/site/site.ts';
import type { Extent } from '../../../drawing/drawing.ts';
import type { LayerName } from '../../../drawing/layers.ts';
import { type Area, isWithinArea } from '../area.ts';
import { PENS } from '../ink.ts';
import type { Weight } from '../lettering/lettering.ts';
import type { Pen } from '../pen.ts';
import { partIn } from '../view/view.ts';
import { type FreeSpace, isFreeAlong, takeAlong, turnedAreas } from './free-space.ts';

/** One line of a label, with the colours of its phases as dots before the text. */
export interface LabelLine {
  readonly text: string;
  readonly weight?: Weight;
  readonly dots?: readonly string[];
  /** The element that it names, or that it tells of. */
  readonly of?: string;
}

/** Where a label may stand: its lower left corner before it is turned about that corner. */
export interface LabelPlace {
  readonly at: Point2;
  readonly turn: number;
  /** How much worse than the best it is, where it is not simply in order. */
  readonly cost?: number;
  /** The point that a thin leader ties it to, where it stands too far off to be read without. */
  readonly leader?: Point2;
  /** Points round where the leader starts that its own symbol takes, and through which it may go. */
  readonly own?: number;
}

/** Something to be written on a drawing, with the places where it may stand, best first. */
export interface LabelWish {
  readonly layer: LayerName;
  readonly lines: readonly LabelLine[];
  /** Other ways to write the same, tried where the lines find no place, best first. */
  readonly or?: readonly (readonly LabelLine[])[];
  readonly size: 'small' | 'note';
  readonly colour: string;
  readonly places: (size: LabelSize) => Iterable<LabelPlace>;
}

export interface LabelSize {
  readonly width: number;
  readonly height: number;
  /** Whether a place that costs so much is of no use to the label that asks for it. */
  readonly isTooMuch?: (cost: number) => boolean;
  /** Whether a label that is not turned has no room with its lower left corner there: such a place need not be given. */
  readonly isBarred?: (x: number, y: number) => boolean;
}

/** What the places of a drawing are taken by. */
export interface LabelGround {
  /** Nothing is ever written over it: symbols, other words. */
  readonly hard: FreeSpace;
  /** Raceways and other lines that a word would make unreadable: dimension lines may cross them, words never. */
  readonly heavy: FreeSpace;
  /** Thin lines of the ground: they break where something is written on them. */
  readonly thin: FreeSpace;
}

export const DOT = 2;
export const DOT_STEP = 5.5;
/** White kept round a label, points. */
export const ROOM = 1.2;

/**
 * Takes the best free place for something that is drawn apart, and draws its leader; the place's lower left corner, or null
 * where there is none.
 */
export function markAt(
  pen: Pen,
  room: Area,
  ground: LabelGround,
  size: LabelSize,
  places: Iterable<LabelPlace>,
): Point2 | null {
  const place = bestPlace({ places: () => places }, size, room, ground);
  if (place === undefined) return null;
  for (const area of areasOf(size, place)) ground.hard.take(area);
  const leader = leaderOf(size, place);
  if (leader !== null) {
    pen.line(leader, PENS.hair);
    takeAlong(ground.heavy, leader, 0.4);
  }
  return place.at;
}

const OVER_THIN = 1.5;

export function bestPlace(
  wish: Pick<LabelWish, 'places'>,
  size: LabelSize,
  room: Area,
  { hard, heavy, thin }: LabelGround,
): LabelPlace | undefined {
  let best: LabelPlace | undefined;
  let least = Infinity;
  const { width, height } = size;
  const asked: LabelSize = { width, height, isTooMuch: (cost) => cost >= least, isBarred };
  for (const place of wish.places(asked)) {
    const cost = place.cost ?? 0;
    if (cost >= least) continue;
    const areas = place.turn === 0 ? levelArea(size, place.at[0], place.at[1]) : areasOf(size, place);
    if (!isEach(areas, isIn) || !isEach(areas, isOpen)) continue;
    const over = isEach(areas, thin.isFree) ? 0 : OVER_THIN;
    if (cost + over >= least || !isLeaderFree(size, place, hard)) continue;
    least = cost + over;
    best = place;
    if (least === 0) break;
  }
  return best;

  function isBarred(x: number, y: number): boolean {
    levelArea(size, x, y);
    return !isIn(level) || !isOpen(level);
  }
  function isIn(area: Area): boolean {
    return isWithinArea(area, room);
  }
  function isOpen(area: Area): boolean {
    return hard.isFree(area) && heavy.isFree(area);
  }
}

function isEach(areas: readonly Area[], is: (area: Area) => boolean): boolean {
  for (let i = 0; i < areas.length; i++) if (!is(areas[i]!)) return false;
  return true;
}

const level = { x: 0, y: 0, width: 0, height: 0 };
const LEVEL: readonly Area[] = [level];

/** What `areasOf` gives for a label that is not turned, in one list for all: places are tried by the hundred. */
function levelArea({ width, height }: LabelSize, x: number, y: number): readonly Area[] {
  level.x = x - ROOM;
  level.y = y - ROOM;
  level.width = level.x + (width + 2 * ROOM) - level.x;
  level.height = level.y + (height + 2 * ROOM) - level.y;
  return LEVEL;
}

/** Points that a symbol takes round where a leader starts; from there on it goes over nothing that is written or stands. */
const SYMBOL = 14;

function isLeaderFree(size: LabelSize, place: LabelPlace, hard: FreeSpace): boolean {
  const line = leaderOf(size, place);
  if (line === null) return true;
  const [from, to] = line;
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const { own = SYMBOL } = place;
  if (length <= own) return true;
  const share = own / length;
  const start: Point2 = [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])];
  return isFreeAlong(hard, [start, to], 0.3);
}

/**
 * From what a label speaks of to the nearest of the middles of the sides of its words to which the way is free of them;
 * null where it stands beside it. Labels with a leader are not turned.
 */
export function leaderOf(
  { width, height }: LabelSize,
  { at: [x, y], leader }: LabelPlace,
): readonly [Point2, Point2] | null {
  if (leader === undefined) return null;
  const words: Extent = { minX: x - 0.5, minY: y - 0.5, maxX: x + width + 0.5, maxY: y + height + 0.5 };
  const ends: readonly Point2[] = [
    [x - 1, y + height / 2],
    [x + width + 1, y + height / 2],
    [x + width / 2, y - 1],
    [x + width / 2, y + height + 1],
  ];
  let nearest = ends[0]!;
  let open: Point2 | null = null;
  let [least, leastOpen] = [Infinity, Infinity];
  for (const end of ends) {
    const off = Math.hypot(end[0] - leader[0], end[1] - leader[1]);
    if (off < least) [nearest, least] = [end, off];
    if (off < leastOpen && partIn(words, leader, end) === null) [open, leastOpen] = [end, off];
  }
  return [leader, open ?? nearest];
}

export function areasOf({ width, height }: LabelSize, { at: [x, y], turn }: LabelPlace): readonly Area[] {
  const [ux, uy] = direction(turn);
  const corner: Point2 = [x - ROOM * (ux - uy), y - ROOM * (uy + ux)];
  return turnedAreas(corner, width + 2 * ROOM, height + 2 * ROOM, turn);
}
