import { addTo } from '../../../../../routing/lists/grouping.ts';
import type { Units } from '../../../../../routing/site/schema/vocabulary.ts';
import type { Gridline, Point2, Site } from '../../../../../routing/site/site.ts';
import { type Area, isWithinArea } from '../../kit/area.ts';
import type { LabelGround } from '../../kit/labels/best-label-place.ts';
import {
  type DimensionString,
  figureRoom,
  lineAreas,
  type StringFigure,
  type StringMark,
  stringFigures,
} from '../../kit/labels/dimension.ts';
import { type FreeSpace, freeSpace } from '../../kit/labels/free-space.ts';
import type { Lettering } from '../../kit/lettering/lettering.ts';
import { shows, type View } from '../../kit/view/view.ts';
import { symbolScale } from '../base-plan.ts';

/** Coordinates of the site that are this close, feet, are one row, or one mark. */
const ROW_TIE = 0.02;
/** Parts of a symbol left clear between it and its extension line, feet at the scale of symbols. */
const CLEAR = 0.9;
/** Distances tried for a string from its row, points. */
const NEAREST = 20;
const FARTHEST = 130;
const STEP = 5;

/** A string that has found its place. */
export interface PlacedString {
  readonly string: DimensionString;
  readonly figures: readonly (StringFigure | null)[];
}

/** A row of boxes or retractors that share a coordinate. */
interface Row {
  readonly at: number;
  readonly points: readonly Point2[];
}

/**
 * Dimension strings that set out the boxes and retractors in a view from the gridlines in it: along each row, and across
 * the rows. A string is left out where most of its figures would not fit or no place is free for it: the setting-out
 * schedule has every one of them. Takes the places of those it returns.
 */
export function settingOutStrings(
  view: View,
  site: Site,
  ground: LabelGround,
  lettering: Lettering,
): readonly PlacedString[] {
  const boxes = site.drops.map(({ box: [x, y] }): Point2 => [x, y]);
  const apart = site.drops.flatMap(({ box, retractor }): Point2[] =>
    retractor !== undefined && Math.hypot(retractor[0] - box[0], retractor[1] - box[1]) > ROW_TIE
      ? [[retractor[0], retractor[1]]]
      : [],
  );
  const strings: PlacedString[] = [];
  const drawn = { x: freeSpace(), y: freeSpace() };
  for (const points of [boxes, apart]) {
    const seen = points.filter((point) => shows(view.window, point));
    const rows = rowsOf(seen, 1);
    for (const row of rows)
      keep(strings, alongRow(view, site.gridlines.x, row), view, site.units, ground, lettering, drawn);
    for (const across of acrossRows(view, site.gridlines.y, rows))
      keep(strings, across, view, site.units, ground, lettering, drawn);
  }
  return strings;
}

/** Dimension lines so far: none lies along another; crossing one is borne where there is no better place. */
interface DrawnStrings {
  readonly x: FreeSpace;
  readonly y: FreeSpace;
}

const OVER_HEAVY = 3;

function keep(
  strings: PlacedString[],
  places: Iterable<DimensionString>,
  view: View,
  units: Units,
  { hard, heavy, thin }: LabelGround,
  lettering: Lettering,
  drawn: DrawnStrings,
): void {
  let best: PlacedString | undefined;
  let least = Infinity;
  for (const string of places) {
    const isClear = (area: Area): boolean => hard.isFree(area) && heavy.isFree(area);
    const figures = stringFigures(string, units, lettering, isClear);
    const fitting = figures.filter((figure) => figure !== null);
    if (2 * fitting.length < figures.length) return;
    const lines = lineAreas(string);
    const areas = [...lines, ...fitting.map(figureRoom)];
    if (
      !areas.every((area) => isWithinArea(area, view.area) && hard.isFree(area)) ||
      !drawn[string.axis].isFree(lines[0]!)
    )
      continue;
    const isCrossing = !drawn[string.axis === 'x' ? 'y' : 'x'].isFree(lines[0]!);
    const crossed = fitting.reduce(
      (sum, { area }) => sum + (heavy.isFree(area) ? 0 : OVER_HEAVY) + (thin.isFree(area) ? 0 : 1),
      isCrossing ? OVER_HEAVY : 0,
    );
    if (crossed >= least) continue;
    least = crossed;
    best = { string, figures };
    if (crossed === 0) break;
  }
  if (best === undefined) return;
  strings.push(best);
  const lines = lineAreas(best.string);
  drawn[best.string.axis].take(lines[0]!);
  for (const area of lines) heavy.take(area);
  for (const figure of best.figures) if (figure !== null) hard.take(figureRoom(figure));
}

/** Points that share a coordinate: y for `axis` 1. Rows by it, points along them. */
function rowsOf(points: readonly Point2[], axis: 0 | 1): readonly Row[] {
  const other = axis === 1 ? 0 : 1;
  const rows: { at: number; points: Point2[] }[] = [];
  for (const point of [...points].sort((a, b) => a[axis] - b[axis] || a[other] - b[other])) {
    const last = rows.at(-1);
    if (last !== undefined && Math.abs(last.at - point[axis]) <= ROW_TIE) last.points.push(point);
    else rows.push({ at: point[axis], points: [point] });
  }
  for (const row of rows) row.points.sort((a, b) => a[other] - b[other]);
  return rows;
}

/** Sorted marks without those that coincide; a gridline stands before what lies on it. */
function marksOf(marks: readonly StringMark[]): readonly StringMark[] {
  const sorted = [...marks].sort((a, b) => a.feet - b.feet);
  return sorted.filter((mark, i) => i === 0 || mark.feet - sorted[i - 1]!.feet > ROW_TIE);
}

/** Something other than gridlines is among the marks. */
const setsOut = (marks: readonly StringMark[]): boolean =>
  marks.length > 1 && marks.some(({ from }) => from !== undefined);

/** Gridlines of a window that dimension a stretch: those on it and the nearest on either side of it. */
function linesFor(lines: readonly Gridline[], from: number, to: number, min: number, max: number): readonly number[] {
  const seen = lines.map(({ at }) => at).filter((at) => at >= min && at <= max);
  const before = seen.filter((at) => at < from);
  const after = seen.filter((at) => at > to);
  return [
    ...(before.length > 0 ? [Math.max(...before)] : []),
    ...seen.filter((at) => at >= from && at <= to),
    ...(after.length > 0 ? [Math.min(...after)] : []),
  ];
}

function* alongRow(view: View, lines: readonly Gridline[], { at, points }: Row): Generator<DimensionString> {
  const { window } = view;
  const [first, last] = [points[0]!, points.at(-1)!];
  const grid = linesFor(lines, first[0], last[0], window.minX, window.maxX);
  if (points.length < 2 && grid.length === 0) return;
  const [, y] = view.at([0, at]);
  const clear = CLEAR * symbolScale(view.perFoot);
  for (const [off, side] of offsets()) {
    const marks = marksOf([
      ...grid.map((feet) => ({ on: view.at([feet, 0])[0], feet })),
      ...points.map(([x]) => ({ on: view.at([x, 0])[0], feet: x, from: y + side * clear })),
    ]);
    if (setsOut(marks)) yield { axis: 'x', at: y + side * off, marks };
  }
}

/** One string for the rows nearest to each gridline, at their left end or at their right. */
function* acrossRows(
  view: View,
  lines: readonly Gridline[],
  rows: readonly Row[],
): Generator<Iterable<DimensionString>> {
  const { window } = view;
  const seen = lines.map(({ at }) => at).filter((at) => at >= window.minY && at <= window.maxY);
  const groups = new Map<number, Row[]>();
  for (const row of rows) {
    if (seen.length === 0) continue;
    const nearest = seen.reduce((best, at) => (Math.abs(at - row.at) < Math.abs(best - row.at) ? at : best));
    addTo(groups, nearest, row);
  }
  for (const [line, group] of groups) yield acrossGroup(view, line, group);
}

function* acrossGroup(view: View, line: number, rows: readonly Row[]): Generator<DimensionString> {
  const clear = CLEAR * symbolScale(view.perFoot);
  const lefts = rows.map(({ points }) => view.at(points[0]!)[0]);
  const rights = rows.map(({ points }) => view.at(points.at(-1)!)[0]);
  for (const [off, side] of offsets()) {
    const at = side > 0 ? Math.max(...rights) + off : Math.min(...lefts) - off;
    const marks = marksOf([
      { on: view.at([0, line])[1], feet: line },
      ...rows.map((row, i) => ({
        on: view.at([0, row.at])[1],
        feet: row.at,
        from: side > 0 ? rights[i]! + clear : lefts[i]! - clear,
      })),
    ]);
    if (setsOut(marks)) yield { axis: 'y', at, marks };
  }
}

function* offsets(): Generator<readonly [number, 1 | -1]> {
  for (let off = NEAREST; off <= FARTHEST; off += STEP) {
    yield [off, 1];
    yield [off, -1];
  }
}
