import { direction } from '../../../../../routing/plane/direction.ts';
import { printLength } from '../../../../../routing/site/numbers/feet-inches.ts';
import type { Units } from '../../../../../routing/site/schema/vocabulary.ts';
import type { Point2 } from '../../../../../routing/site/site.ts';
import type { Area } from '../area.ts';
import { PENS, WHITE } from '../ink.ts';
import type { Lettering } from '../lettering/lettering.ts';
import { CAP } from '../lettering/letters.ts';
import type { Pen } from '../pen.ts';
import { around } from './free-space.ts';

/** A string of dimensions along one line of the sheet: between each mark and the next stands what lies between them. */
export interface DimensionString {
  /** Along x, lettered to be read from below, or along y, lettered to be read from the right. */
  readonly axis: 'x' | 'y';
  /** Height of an `x` string, distance to the right of a `y` string, points on the sheet. */
  readonly at: number;
  /** Marks in rising order: on the sheet, and on the site in feet. */
  readonly marks: readonly StringMark[];
}

export interface StringMark {
  /** Along the string, points. */
  readonly on: number;
  /** Along the string, feet of the site. */
  readonly feet: number;
  /** Where its extension line starts, across the string; undefined where it needs none. */
  readonly from?: number;
}

/** A figure of a string: what it says and the area that its letters take. */
export interface StringFigure {
  readonly text: string;
  readonly area: Area;
}

/** Half of a tick, and how far lines go past where they meet, points. */
export const TICK = 2.5;
export const OVERSHOOT = 4;
/** Letters stand this far over the dimension line. */
const OFF = 2;
/** Shares of the room between two marks at which a figure may stand. */
const SHARES = [0.5, 0.35, 0.65, 0.2, 0.8];

export const onSheet = (axis: 'x' | 'y', on: number, across: number): Point2 =>
  axis === 'x' ? [on, across] : [across, on];

/**
 * The figures of a string, one for each two marks, in the middle between them or aside of it where `isFree` says that the
 * middle is taken; null where there is no room for the letters.
 */
export function stringFigures(
  { axis, at, marks }: DimensionString,
  units: Units,
  lettering: Lettering,
  isFree: (area: Area) => boolean = () => true,
): readonly (StringFigure | null)[] {
  const size = lettering.sizes.small;
  return marks.slice(1).map((b, i) => {
    const a = marks[i]!;
    const text = printLength(Math.abs(b.feet - a.feet), units);
    const width = lettering.width(text, size);
    const spare = b.on - a.on - width - 4;
    if (spare < 0) return null;
    const areas = SHARES.map((share): Area => {
      const start = a.on + 2 + spare * share;
      return axis === 'x'
        ? { x: start, y: at + OFF, width, height: size * CAP }
        : { x: at - OFF - size * CAP, y: start, width: size * CAP, height: width };
    });
    return { text, area: areas.find(isFree) ?? areas[0]! };
  });
}

/** The areas that the lines of a string take: its dimension line first, then its extension lines. */
export function lineAreas({ axis, at, marks }: DimensionString): readonly Area[] {
  const line = (from: Point2, to: Point2): Area => {
    const { x, y, width, height } = around([from, to]);
    return { x: x - 0.7, y: y - 0.7, width: width + 1.4, height: height + 1.4 };
  };
  return strokesOf({ axis, at, marks }).map(([from, to]) => line(from, to));
}

/** The dimension line of a string, then its extension lines, each a little past where they meet. */
function strokesOf({ axis, at, marks }: DimensionString): readonly (readonly [Point2, Point2])[] {
  const extensions = marks.flatMap(({ on, from }) =>
    from === undefined
      ? []
      : [[onSheet(axis, on, from), onSheet(axis, on, at + (at >= from ? 1 : -1) * OVERSHOOT)] as const],
  );
  const ends = [marks[0]!.on - OVERSHOOT, marks.at(-1)!.on + OVERSHOOT] as const;
  return [[onSheet(axis, ends[0], at), onSheet(axis, ends[1], at)], ...extensions];
}

/** Draws a string: its line, a slanted tick at each mark, extension lines from what is measured, and the figures. */
export function drawDimensions(pen: Pen, string: DimensionString, figures: readonly (StringFigure | null)[]): void {
  if (pen.dimensions) {
    pen.dimensions(string, figures);
    return;
  }
  const { axis, at, marks } = string;
  pen.lines(strokesOf(string), PENS.hair);
  const [tx, ty] = direction(axis === 'x' ? 45 : 135);
  pen.lines(
    marks.map(({ on }) => {
      const [x, y] = onSheet(axis, on, at);
      return [
        [x - TICK * tx, y - TICK * ty],
        [x + TICK * tx, y + TICK * ty],
      ] as const;
    }),
    PENS.medium,
  );
  const size = pen.lettering.sizes.small;
  for (const figure of figures) {
    if (figure === null) continue;
    const { text, area } = figure;
    pen.fillArea({ x: area.x - 1, y: area.y - 0.5, width: area.width + 2, height: area.height + 1 }, WHITE);
    pen.text(text, axis === 'x' ? [area.x, area.y] : [area.x + area.width, area.y], {
      size,
      turn: axis === 'x' ? 0 : 90,
    });
  }
}

/** A figure's letters with a little white round them. */
export const figureRoom = ({ area: { x, y, width, height } }: StringFigure): Area => ({
  x: x - 1,
  y: y - 1,
  width: width + 2,
  height: height + 2,
});
