import { type Box, boxesMeet, boxOf } from '../../../../../routing/plane/box.ts';
import { workingSpaceOf } from '../../../../../routing/site/place/working-space.ts';
import type { Equipment, Site } from '../../../../../routing/site/site.ts';
import { tablesOf } from '../../../../tables/editions.ts';
import { leastWorkingSpace } from '../../../../tables/equipment-of.ts';
import { isWithinArea } from '../../kit/area.ts';
import type { LabelGround } from '../../kit/labels/best-label-place.ts';
import {
  type DimensionString,
  figureRoom,
  lineAreas,
  type StringMark,
  stringFigures,
} from '../../kit/labels/dimension.ts';
import type { Lettering } from '../../kit/lettering/lettering.ts';
import { grown, type View } from '../../kit/view/view.ts';
import type { PlacedString } from './setting-out-strings.ts';

/** Distances tried for a string from the space, points. */
const NEAREST = 9;
const FARTHEST = 36;
const STEP = 3;
/** Left clear between the space and its extension lines, points. */
const CLEAR = 2;
/** A space that lies askew by more than this share of its size has no string along the sheet, feet. */
const STRAIGHT = 0.01;

/** A string of one side of a working space. */
export interface SpaceString extends PlacedString {
  /** The equipment before which the space lies. */
  readonly of: string;
  readonly measures: SpaceSide;
}

export type SpaceSide = 'deep' | 'wide';

/**
 * Dimension strings of the depth and the width of each working space in a view that lies along the sheet, beside it and
 * before it: only where there is room that nothing else has taken, so they come after all words. Takes their places.
 */
export function workingSpaceStrings(
  view: View,
  site: Site,
  ground: LabelGround,
  lettering: Lettering,
): readonly SpaceString[] {
  const least = leastWorkingSpace(tablesOf(site.rules));
  const seen = grown(view.window, CLEAR / view.perFoot + STRAIGHT);
  return site.equipment.flatMap((one) => {
    const corners = workingSpaceOf(one, least);
    if (corners === null || !isStraight(corners)) return [];
    const space = boxOf(corners);
    // What lies outside the view has its extension lines there too.
    if (!boxesMeet(space, seen)) return [];
    const sides = [
      ['deep', alongSpace(one, space, view)],
      ['wide', acrossSpace(one, space, view)],
    ] as const;
    return sides.flatMap(([measures, places]) => {
      for (const string of places) {
        const placed = placedAt(string, view, site, ground, lettering);
        if (placed !== null) return [{ ...placed, of: one.id, measures }];
      }
      return [];
    });
  });
}

const isStraight = (corners: readonly (readonly [number, number])[]): boolean =>
  corners.every(([x, y], i) => {
    const [nextX, nextY] = corners[(i + 1) % corners.length]!;
    return Math.min(Math.abs(nextX - x), Math.abs(nextY - y)) < STRAIGHT;
  });

/** Towards which the equipment is entered: along x or y, up or down. */
function frontOf({ at }: Equipment, { minX, minY, maxX, maxY }: Box): readonly ['x' | 'y', 1 | -1] {
  const [dx, dy] = [(minX + maxX) / 2 - at[0], (minY + maxY) / 2 - at[1]];
  return Math.abs(dy) > Math.abs(dx) ? ['y', dy > 0 ? 1 : -1] : ['x', dx > 0 ? 1 : -1];
}

/** Its depth, on either side of it. */
function* alongSpace(one: Equipment, space: Box, view: View): Generator<DimensionString> {
  const [axis] = frontOf(one, space);
  for (const off of offsets()) for (const side of [1, -1] as const) yield besideSpace(axis, side, off, space, view);
}

/** Its width, before it. */
function* acrossSpace(one: Equipment, space: Box, view: View): Generator<DimensionString> {
  const [axis, side] = frontOf(one, space);
  for (const off of offsets()) yield besideSpace(axis === 'x' ? 'y' : 'x', side, off, space, view);
}

function besideSpace(axis: 'x' | 'y', side: 1 | -1, off: number, space: Box, view: View): DimensionString {
  const [low, high] = [view.at([space.minX, space.minY]), view.at([space.maxX, space.maxY])];
  const [along, across] = axis === 'x' ? [0, 1] : [1, 0];
  const edge = (side > 0 ? high : low)[across]!;
  const from = edge + side * CLEAR;
  const ends = axis === 'x' ? [space.minX, space.maxX] : [space.minY, space.maxY];
  const marks = [low, high].map((at, i): StringMark => ({ on: at[along]!, feet: ends[i]!, from }));
  return { axis, at: edge + side * off, marks };
}

function* offsets(): Generator<number> {
  for (let off = NEAREST; off <= FARTHEST; off += STEP) yield off;
}

/** Null where its figure finds no room, or where it lies on something. */
function placedAt(
  string: DimensionString,
  view: View,
  { units }: Site,
  { hard, heavy, thin }: LabelGround,
  lettering: Lettering,
): PlacedString | null {
  const figures = stringFigures(string, units, lettering);
  const [figure] = figures;
  if (!figure) return null;
  const [lines, room] = [lineAreas(string), figureRoom(figure)];
  const isFree =
    [...lines, room].every((area) => isWithinArea(area, view.area) && hard.isFree(area) && heavy.isFree(area)) &&
    thin.isFree(lines[0]!) &&
    thin.isFree(room);
  if (!isFree) return null;
  for (const area of lines) heavy.take(area);
  hard.take(room);
  return { string, figures };
}
