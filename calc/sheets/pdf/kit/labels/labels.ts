import { direction } from '../../../../../routing/plane/direction.ts';
import type { Point2 } from '../../../../../routing/site/site.ts';
import type { Area } from '../area.ts';
import { PENS, WHITE } from '../ink.ts';
import type { Lettering } from '../lettering/lettering.ts';
import { CAP, LEADING } from '../lettering/letters.ts';
import type { Pen } from '../pen.ts';
import {
  areasOf,
  bestPlace,
  DOT,
  DOT_STEP,
  type LabelGround,
  type LabelPlace,
  type LabelSize,
  type LabelWish,
  leaderOf,
  ROOM,
} from './best-label-place.ts';
import { spaceOver, takeAlong } from './free-space.ts';

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
      if (leader !== null) takeAlong(ground.heavy, leader, 0.4);
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

/** Draws the words and their leader, which is returned. */
function writeLabel(
  pen: Pen,
  wish: LabelWish,
  place: LabelPlace,
  size: LabelSize,
  isMasked: boolean,
): readonly Point2[] | null {
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
  return leader;
}
