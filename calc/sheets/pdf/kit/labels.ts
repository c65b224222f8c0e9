import { direction } from '../../../../routing/plane/direction.ts';
import type { Point2 } from '../../../../routing/site/site.ts';
import type { LayerName } from '../../drawing/layers.ts';
import { type Area, within } from './area.ts';
import { type FreeSpace, spaceOver, turnedAreas } from './free-space.ts';
import { PENS, WHITE } from './ink.ts';
import type { Lettering, Weight } from './lettering.ts';
import { CAP, LEADING } from './letters.ts';
import type { Pen } from './pen.ts';

/** One line of a label, with the colours of its phases as dots before the text. */
export interface LabelLine {
  readonly text: string;
  readonly weight?: Weight;
  readonly dots?: readonly string[];
}

/** Where a label may stand: its lower left corner before it is turned about that corner. */
export interface LabelPlace {
  readonly at: Point2;
  readonly turn: number;
  /** How much worse than the best it is, where it is not simply in order. */
  readonly cost?: number;
  /** The point that a thin leader ties it to, where it stands too far off to be read without. */
  readonly leader?: Point2;
}

/** Something to be written on a drawing, with the places where it may stand, best first. */
export interface LabelWish {
  readonly layer: LayerName;
  readonly lines: readonly LabelLine[];
  readonly size: 'small' | 'note';
  readonly colour: string;
  readonly places: (size: LabelSize) => Iterable<LabelPlace>;
}

export interface LabelSize {
  readonly width: number;
  readonly height: number;
}

/** What the places of a drawing are taken by. */
export interface Ground {
  /** Nothing is ever written over it: symbols, other words. */
  readonly hard: FreeSpace;
  /** Raceways: written over only where there is no other place. */
  readonly heavy: FreeSpace;
  /** Thin lines of the ground: they break where something is written on them. */
  readonly thin: FreeSpace;
}

const DOT = 2;
const DOT_STEP = 5.5;
/** Off a line through the middle of a symbol, points. */
const BESIDE = 3;
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
  ground: Ground,
  wishes: readonly LabelWish[],
  share: number,
): readonly LabelWish[] {
  const trial: Ground = { ...ground, hard: spaceOver(ground.hard) };
  const good = wishes.filter((wish) => {
    const size = labelSize(wish, pen.lettering);
    const place = bestPlace(wish, size, room, trial);
    if (place === undefined) return false;
    const areas = areasOf(size, place);
    for (const area of areas) trial.hard.take(area);
    return areas.every((area) => ground.heavy.isFree(area));
  });
  if (good.length < share * wishes.length) return wishes;
  return writeLabels(pen, room, ground, wishes);
}

/**
 * Writes each label at the best of its places that is free and inside the room, and takes the place. Those that find none
 * are returned: the caller says where else they can be read.
 */
export function writeLabels(pen: Pen, room: Area, ground: Ground, wishes: readonly LabelWish[]): readonly LabelWish[] {
  const left: LabelWish[] = [];
  for (const wish of wishes) {
    const size = labelSize(wish, pen.lettering);
    const place = bestPlace(wish, size, room, ground);
    if (place === undefined) left.push(wish);
    else {
      const areas = areasOf(size, place);
      const isMasked =
        areas.every((area) => ground.heavy.isFree(area)) && areas.some((area) => !ground.thin.isFree(area));
      for (const area of areas) ground.hard.take(area);
      pen.onLayer(wish.layer, () => writeLabel(pen, wish, place, size, isMasked));
    }
  }
  return left;
}

const OVER_THIN = 1.5;
const OVER_HEAVY = 6;

function bestPlace(
  wish: LabelWish,
  size: LabelSize,
  room: Area,
  { hard, heavy, thin }: Ground,
): LabelPlace | undefined {
  let best: LabelPlace | undefined;
  let least = Infinity;
  for (const place of wish.places(size)) {
    const cost = place.cost ?? 0;
    if (cost >= least) continue;
    const areas = areasOf(size, place);
    if (!areas.every((area) => within(area, room) && hard.isFree(area))) continue;
    const over =
      (areas.every((area) => thin.isFree(area)) ? 0 : OVER_THIN) +
      (areas.every((area) => heavy.isFree(area)) ? 0 : OVER_HEAVY);
    if (cost + over >= least) continue;
    least = cost + over;
    best = place;
    if (least === 0) break;
  }
  return best;
}

function areasOf({ width, height }: LabelSize, { at: [x, y], turn }: LabelPlace): readonly Area[] {
  const [ux, uy] = direction(turn);
  const corner: Point2 = [x - ROOM * (ux - uy), y - ROOM * (uy + ux)];
  return turnedAreas(corner, width + 2 * ROOM, height + 2 * ROOM, turn);
}

function writeLabel(pen: Pen, wish: LabelWish, place: LabelPlace, size: LabelSize, isMasked: boolean): void {
  const { lines, colour } = wish;
  const { turn, leader } = place;
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
  if (leader !== undefined)
    pen.line([leader, nearestEnd(leader, at(-1, size.height / 2), at(size.width + 1, size.height / 2))], PENS.hair);
  lines.forEach(({ text, weight = 'regular', dots = [] }, i) => {
    const up = (lines.length - 1 - i) * points * LEADING;
    dots.forEach((dot, k) => {
      pen.circle(at(DOT + k * DOT_STEP, up + (points * CAP) / 2), DOT, null, dot);
    });
    pen.text(text, at(dots.length * DOT_STEP, up), { size: points, weight, colour, turn });
  });
}

const nearestEnd = (to: Point2, a: Point2, b: Point2): Point2 =>
  Math.hypot(a[0] - to[0], a[1] - to[1]) <= Math.hypot(b[0] - to[0], b[1] - to[1]) ? a : b;

/** Places round a point: beside it first, then above and below, then farther off, with a leader, where `far` says so. */
export function* placesAround(
  [x, y]: Point2,
  off: number,
  { width, height }: LabelSize,
  far: boolean,
): Generator<LabelPlace> {
  for (const step of far ? [0, 1, 2, 3, 4, 5, 6] : [0]) {
    const r = off + step * 7;
    const leader = step < 2 ? {} : { leader: [x, y] as Point2 };
    const corners: readonly Point2[] = [
      [x + r, y - height / 2],
      [x - r - width, y - height / 2],
      [x + r, y + BESIDE],
      [x + r, y - BESIDE - height],
      [x - r - width, y + BESIDE],
      [x - r - width, y - BESIDE - height],
      [x + BESIDE, y + r],
      [x + BESIDE, y - r - height],
      [x - BESIDE - width, y + r],
      [x - BESIDE - width, y - r - height],
      [x - width / 2, y + r],
      [x - width / 2, y - r - height],
    ];
    for (const [i, at] of corners.entries()) yield { at, turn: 0, cost: step + i / 100, ...leader };
  }
}

/** Shares of a line at which a label may stand. */
const SHARES = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.12, 0.88];

/** Places along a line, on either side of it, the middle first; turned to be read from below or from the right. */
export function* placesAlong(
  from: Point2,
  to: Point2,
  off: number,
  { width, height }: LabelSize,
): Generator<LabelPlace> {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (length < 1) return;
  const angle = (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI;
  const upright = angle > 90 + 1e-6 ? angle - 180 : angle <= -90 + 1e-6 ? angle + 180 : angle;
  const turn = Math.round(upright * 1e6) / 1e6;
  const [ux, uy] = direction(turn);
  for (const [i, share] of SHARES.entries()) {
    if (2 * Math.min(share, 1 - share) * length < width) continue;
    const middle: Point2 = [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])];
    for (const [k, up] of [off, -off - height].entries()) {
      const back = -width / 2;
      const at: Point2 = [middle[0] + back * ux - up * uy, middle[1] + back * uy + up * ux];
      yield { at, turn, cost: (2 * i + k) / 50 };
    }
  }
}
