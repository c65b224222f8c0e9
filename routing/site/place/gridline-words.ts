import { printLength } from '../numbers/feet-inches.ts';
import type { Units } from '../schema/vocabulary.ts';
import type { Gridline, Point2, Point3, Site } from '../site.ts';
import { fromGridline } from './from-gridlines.ts';
import { setOutPlace } from './grid-frame.ts';

/**
 * A place as a crew finds it: `4' 6" past line 3, 1' 0" before line B, 11' 0" above grade`. On an axis without gridlines
 * the coordinate itself. `at` in feet.
 */
export function gridlineWords(at: Point3, gridlines: Site['gridlines'], units: Units): string {
  const up = at[2];
  const height = up === 0 ? 'at grade' : `${printLength(Math.abs(up), units)} ${up > 0 ? 'above' : 'below'} grade`;
  return `${planWords([at[0], at[1]], gridlines, units)}, ${height}`;
}

/** The same of a place of the plan: `4' 6" past line 3, 1' 0" before line B`, lengths as `print` writes them. */
export function planWords(
  at: Point2,
  gridlines: Site['gridlines'],
  units: Units,
  print: (feet: number, units: Units) => string = printLength,
): string {
  const { x, y } = gridlines;
  const [east, north] = setOutPlace(gridlines, at);
  return [across('x', x, east, units, print), across('y', y, north, units, print)].join(', ');
}

/** Offsets smaller than this, feet, are on the line: 1/16 in. */
const ON_LINE = 1 / 192;

function across(
  axis: 'x' | 'y',
  lines: readonly Gridline[],
  value: number,
  units: Units,
  print: (feet: number, units: Units) => string,
): string {
  const from = fromGridline(lines, value);
  if (from === null) return `${axis} ${print(value, units)}`;
  if (Math.abs(from.offset) < ON_LINE) return `on line ${from.label}`;
  return `${print(Math.abs(from.offset), units)} ${from.offset > 0 ? 'past' : 'before'} line ${from.label}`;
}
