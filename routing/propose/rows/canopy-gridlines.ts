import { onGrid } from '../../site/place/grid-frame.ts';
import type { Gridline, Site } from '../../site/site.ts';
import type { CanopyBays } from './canopy-bays.ts';
import { lineLetter, lineNumber, withLines } from './gridline-labels.ts';

type Gridlines = Site['gridlines'];

/** So nearly square, degrees, is square. */
const SQUARE = 1e-6;

/**
 * Gridlines with those through the columns of a canopy among them: numbers along it and letters across it, as the
 * lines that stand already go on. Where no line stands yet, a slanting canopy turns the gridlines to lie along it, from
 * its first column. Null where lines stand that the canopy is not square to. Feet.
 */
export function withCanopyLines(gridlines: Gridlines, { columns }: CanopyBays): Gridlines | null {
  const [first] = columns;
  if (!first) return null;
  const standing = gridlines.x.length + gridlines.y.length > 0;
  const frame = standing ? gridlines : frameFor(gridlines, first);
  const turned = quarterTurns(first.rotation - (frame.rotation ?? 0));
  if (turned === null) return null;
  const along: 'x' | 'y' = turned % 2 === 0 ? 'x' : 'y';
  const numbered = numberedAxis(gridlines) ?? along;
  const places = columns.map(({ at }) => onGrid(frame, at));
  const axis = (which: 0 | 1): number[] => distinct(places.map((place) => place[which]));
  return {
    ...(frame.rotation !== undefined && { rotation: frame.rotation }),
    ...(frame.origin !== undefined && { origin: frame.origin }),
    x: withLines(gridlines.x, axis(0), numbered === 'x' ? lineNumber : lineLetter),
    y: withLines(gridlines.y, axis(1), numbered === 'y' ? lineNumber : lineLetter),
  };
}

/** The gridlines' own turn where the canopy is square to it, else the canopy's, from its first column. */
function frameFor(
  { rotation, origin }: Gridlines,
  first: CanopyBays['columns'][number],
): Pick<Gridlines, 'rotation' | 'origin'> {
  if (quarterTurns(first.rotation - (rotation ?? 0)) !== null)
    return { ...(rotation !== undefined && { rotation }), ...(origin !== undefined && { origin }) };
  // Between -90 and 90: numbers then run to the right on the sheet.
  const turn = ((((first.rotation + 90) % 180) + 180) % 180) - 90;
  return { rotation: tidy(turn), origin: first.at };
}

/** How many quarter turns an angle in degrees is; null where it is none. */
function quarterTurns(degrees: number): number | null {
  const turns = Math.round(degrees / 90);
  return Math.abs(degrees - turns * 90) < SQUARE ? ((turns % 4) + 4) % 4 : null;
}

function numberedAxis({ x, y }: Gridlines): 'x' | 'y' | null {
  const isNumber = ({ label }: Gridline): boolean => /^\d/.test(label);
  if (x.length > 0) return x.every(isNumber) ? 'x' : 'y';
  return y.length > 0 ? (y.every(isNumber) ? 'y' : 'x') : null;
}

const distinct = (values: readonly number[]): number[] => [...new Set(values.map(tidy))];

/** A millionth of a foot is rounding. */
const tidy = (value: number): number => Math.round(value * 1e6) / 1e6 + 0;
