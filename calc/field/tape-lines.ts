import { kept } from '../../routing/kept/kept.ts';
import { setOutPlace } from '../../routing/site/place/grid-frame.ts';
import type { TapeAxis } from '../../routing/site/place/taped-place.ts';
import { registersOf } from '../../routing/site/records/registers.ts';
import type { Gridline, Mark, Point3, Site } from '../../routing/site/site.ts';

/** A line that the tape is held to: a gridline, or a line of the field's own, such as a column face or a curb. */
export interface TapeLine extends Gridline {
  readonly own: boolean;
}

/** The lines to measure from on both axes of the gridlines, in order; those of the field's own among them. */
export const tapeLines = kept(
  (gridlines: Site['gridlines'], records: readonly Mark[]): Readonly<Record<TapeAxis, readonly TapeLine[]>> => {
    const own = [...registersOf(records).values()].flatMap(({ what, of, now }) =>
      what === 'line' && now?.line ? [{ label: of, axis: now.line.axis, at: now.line.at }] : [],
    );
    const of = (axis: TapeAxis): readonly TapeLine[] =>
      [
        ...gridlines[axis].map(({ label, at }) => ({ label, at, own: false })),
        ...own
          .filter((line) => line.axis === axis)
          .map(({ label, at }) => ({
            label,
            at: setOutPlace(gridlines, [at[0], at[1]])[axis === 'x' ? 0 : 1],
            own: true,
          })),
      ].sort((a, b) => a.at - b.at);
    return { x: of('x'), y: of('y') };
  },
);

/** The reading of a tape from one line: negative before it, feet. */
export interface TapeReading {
  readonly line: string;
  readonly feet: number;
}

/** How a place is found along one axis, and the sum that shows a slip: from the line before and the line after it. */
export interface AxisOffsets {
  /** From the nearest of the lines; null where the axis has none, and it is measured from the origin. */
  readonly nearest: TapeReading | null;
  /** Its coordinate on that axis, feet from the origin of the lines. */
  readonly at: number;
  /** From the lines on both sides of it, and what the two readings add up to; null where one of the sides has none. */
  readonly closing: { readonly before: TapeReading; readonly after: TapeReading; readonly sum: number } | null;
}

/** Lines nearer than this, feet, are where the place is. */
const ON_LINE = 1e-6;

/** The offsets of a place along one axis. */
export function axisOffsets(at: number, lines: readonly TapeLine[]): AxisOffsets {
  const reading = (line: TapeLine): TapeReading => ({ line: line.label, feet: at - line.at });
  const before = lines.filter((line) => line.at <= at + ON_LINE).at(-1);
  const after = lines.find((line) => line.at > at + ON_LINE);
  const nearest = before && after ? (at - before.at <= after.at - at ? before : after) : (before ?? after);
  return {
    nearest: nearest ? reading(nearest) : null,
    at,
    closing: before && after ? { before: reading(before), after: reading(after), sum: after.at - before.at } : null,
  };
}

/** A place by the tape: along both axes, up from grade, and the straight from where its two nearest lines cross. */
export interface PlaceOffsets {
  readonly x: AxisOffsets;
  readonly y: AxisOffsets;
  /** Feet above grade. */
  readonly up: number;
  /** The third side of the triangle of its two readings, feet: where it is another, one of them is. */
  readonly tie: number | null;
}

/** How a place of the site is found with a tape. */
export function placeOffsets(
  gridlines: Site['gridlines'],
  lines: Readonly<Record<TapeAxis, readonly TapeLine[]>>,
  [px, py, up]: Point3,
): PlaceOffsets {
  const [u, v] = setOutPlace(gridlines, [px, py]);
  const [x, y] = [axisOffsets(u, lines.x), axisOffsets(v, lines.y)];
  return { x, y, up, tie: x.nearest && y.nearest ? Math.hypot(x.nearest.feet, y.nearest.feet) : null };
}
