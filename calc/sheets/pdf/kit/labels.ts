import { direction } from '../../../../routing/plane/direction.ts';
import type { Point2 } from '../../../../routing/site/site.ts';
import type { Extent } from '../../drawing/drawing.ts';
import type { LayerName } from '../../drawing/layers.ts';
import { type Area, isWithinArea } from './area.ts';
import { alongLine, type FreeSpace, spaceOver, turnedAreas } from './free-space.ts';
import { PENS, WHITE } from './ink.ts';
import type { Lettering, Weight } from './lettering.ts';
import { CAP, LEADING } from './letters.ts';
import type { Pen } from './pen.ts';
import { partIn } from './view.ts';

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

const DOT = 2;
const DOT_STEP = 5.5;
/** White kept round a label, points. */
const ROOM = 1.2;

function labelSize({ lines, size }: LabelWish, lettering: Lettering): LabelSize {
  const points = lettering.sizes[size];
  const widths = lines.map(
    ({ text, weight, dots = [] }) => lettering.width(text, points, weight) + dots.length * DOT_STEP,
  );
  return { width: Math.max(0, ...widths), height: (lines.length - 1) * points * LEADING + points * CAP };
}

/**
 * Writes labels of one kind only where at least a share of them finds a good place, one that is not on a raceway: half a
 * row of numbers misleads. Those that stay unwritten are returned: all, or those without a place.
 */
export function writeMostOrNone(
  pen: Pen,
  room: Area,
  ground: LabelGround,
  wishes: readonly LabelWish[],
  share: number,
): readonly LabelWish[] {
  const trial: LabelGround = { ...ground, hard: spaceOver(ground.hard) };
  const good = wishes.filter((wish) => {
    const size = labelSize(wish, pen.lettering);
    const place = bestPlace(wish, size, room, trial);
    if (place === undefined) return false;
    for (const area of areasOf(size, place)) trial.hard.take(area);
    return true;
  });
  if (good.length < share * wishes.length) return wishes;
  return writeLabels(pen, room, ground, wishes);
}

/**
 * Writes each label at the best of its places that is free and inside the room, and takes the place. Those that find none
 * are returned: the caller says where else they can be read.
 */
export function writeLabels(
  pen: Pen,
  room: Area,
  ground: LabelGround,
  wishes: readonly LabelWish[],
): readonly LabelWish[] {
  const left: LabelWish[] = [];
  for (const whole of wishes) {
    const found = formOf(whole, pen.lettering, room, ground);
    if (found === undefined) {
      left.push(whole);
      continue;
    }
    const { wish, size, place } = found;
    const areas = areasOf(size, place);
    const isMasked = areas.some((area) => !ground.thin.isFree(area));
    for (const area of areas) ground.hard.take(area);
    pen.onLayer(wish.layer, () => {
      const leader = writeLabel(pen, wish, place, size, isMasked);
      for (const piece of leader) ground.heavy.take(piece);
    });
  }
  return left;
}

interface FoundForm {
  readonly wish: LabelWish;
  readonly size: LabelSize;
  readonly place: LabelPlace;
}

/** The first way to write a label that has a place, and the best place for it. */
function formOf(wish: LabelWish, lettering: Lettering, room: Area, ground: LabelGround): FoundForm | undefined {
  for (const lines of [wish.lines, ...(wish.or ?? [])]) {
    const form = { ...wish, lines };
    const size = labelSize(form, lettering);
    const place = bestPlace(form, size, room, ground);
    if (place !== undefined) return { wish: form, size, place };
  }
  return undefined;
}

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
    for (const area of alongLine(leader, 0.4)) ground.heavy.take(area);
  }
  return place.at;
}

const OVER_THIN = 1.5;

function bestPlace(
  wish: Pick<LabelWish, 'places'>,
  size: LabelSize,
  room: Area,
  { hard, heavy, thin }: LabelGround,
): LabelPlace | undefined {
  let best: LabelPlace | undefined;
  let least = Infinity;
  for (const place of wish.places(size)) {
    const cost = place.cost ?? 0;
    if (cost >= least) continue;
    const areas = areasOf(size, place);
    if (
      !areas.every((area) => isWithinArea(area, room)) ||
      !areas.every((area) => hard.isFree(area) && heavy.isFree(area))
    )
      continue;
    const over = areas.every((area) => thin.isFree(area)) ? 0 : OVER_THIN;
    if (cost + over >= least || !isLeaderFree(size, place, hard)) continue;
    least = cost + over;
    best = place;
    if (least === 0) break;
  }
  return best;
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
  for (const area of alongLine([start, to], 0.3)) if (!hard.isFree(area)) return false;
  return true;
}

/**
 * From what a label speaks of to the nearest of the middles of the sides of its words to which the way is free of them;
 * null where it stands beside it. Labels with a leader are not turned.
 */
function leaderOf({ width, height }: LabelSize, { at: [x, y], leader }: LabelPlace): readonly [Point2, Point2] | null {
  if (leader === undefined) return null;
  const words: Extent = { minX: x - 0.5, minY: y - 0.5, maxX: x + width + 0.5, maxY: y + height + 0.5 };
  const off = (to: Point2): number => Math.hypot(to[0] - leader[0], to[1] - leader[1]);
  const ends: readonly Point2[] = [
    [x - 1, y + height / 2],
    [x + width + 1, y + height / 2],
    [x + width / 2, y - 1],
    [x + width / 2, y + height + 1],
  ];
  const near = [...ends].sort((a, b) => off(a) - off(b));
  return [leader, near.find((end) => partIn(words, leader, end) === null) ?? near[0]!];
}

function areasOf({ width, height }: LabelSize, { at: [x, y], turn }: LabelPlace): readonly Area[] {
  const [ux, uy] = direction(turn);
  const corner: Point2 = [x - ROOM * (ux - uy), y - ROOM * (uy + ux)];
  return turnedAreas(corner, width + 2 * ROOM, height + 2 * ROOM, turn);
}

/** Draws the words and their leader; what the leader takes is returned. */
function writeLabel(pen: Pen, wish: LabelWish, place: LabelPlace, size: LabelSize, isMasked: boolean): readonly Area[] {
  const { lines, colour } = wish;
  const { turn } = place;
  const points = pen.lettering.sizes[wish.size];
  const [ux, uy] = direction(turn);
  const at = (along: number, up: number): Point2 => [
    place.at[0] + along * ux - up * uy,
    place.at[1] + along * uy + up * ux,
  ];
  if (isMasked) {
    const [low, high] = [-ROOM, size.height + ROOM];
    pen.fill([at(low, low), at(size.width + ROOM, low), at(size.width + ROOM, high), at(low, high)], WHITE);
  }
  const leader = leaderOf(size, place);
  if (leader !== null) pen.line(leader, PENS.hair);
  lines.forEach(({ text, weight = 'regular', dots = [], of = null }, i) => {
    const up = (lines.length - 1 - i) * points * LEADING;
    dots.forEach((dot, k) => {
      pen.circle(at(DOT + k * DOT_STEP, up + (points * CAP) / 2), DOT, null, dot);
    });
    pen.about?.(of);
    pen.text(text, at(dots.length * DOT_STEP, up), { size: points, weight, colour, turn });
  });
  pen.about?.(null);
  return leader === null ? [] : [...alongLine(leader, 0.4)];
}
