import type { Drawing } from '../../drawing/drawing.ts';
import { type Area, top } from '../kit/area.ts';
import { type Draft, type Job, NOT_TO_SCALE } from '../kit/draft.ts';
import type { Lettering } from '../kit/lettering/lettering.ts';
import { LEADING } from '../kit/lettering/letters.ts';
import { wrapped } from '../kit/lettering/lines-of-text.ts';
import { centred, type Pen } from '../kit/pen.ts';
import { flowTables } from '../kit/tables/table.ts';
import { drawTable } from '../kit/tables/table-drawing.ts';
import { abbreviationTable } from './abbreviations.ts';
import { type Entry, entriesShown, type Group } from './entries.ts';
import { ONE_LINE } from './one-line-entries.ts';
import { colours, LINE_ENTRIES, PLAN_SYMBOLS, RAISED_LINES, REVISION } from './plan-entries.ts';
import { STRIP_SYMBOLS } from './strip-entries.ts';

const SIGN_WIDTH = 110;
const GAP = 30;
/** On a sheet of its own; the last is that of the abbreviations. */
const COLUMNS = 3;
/** Columns of a legend beside something else are no narrower than this, in sizes of the lettering. */
const NARROWEST = 38;

/** The legend of a set: on a sheet of its own, or in a part of another. */
export interface Legend {
  readonly sheet: Draft;
  /** Draws it at the foot of an area; null where that is too narrow, or lower than it. */
  readonly within: (area: Area) => { readonly height: number; readonly draw: (pen: Pen) => void } | null;
}

/** The legend: no standard symbol exists for a cord drop or a retractor, so that the set defines its own. */
export function legendOfSet(job: Job, drawing: Drawing, hasMatchLines: boolean): Legend {
  const { site, shape, lettering } = job;
  const all = [PLAN_SYMBOLS, LINE_ENTRIES, colours(site), STRIP_SYMBOLS, ONE_LINE, RAISED_LINES];
  if (job.revision) all.push(REVISION);
  const layers = new Set(drawing.items.map(({ layer }) => layer));
  const groups = entriesShown(all, { ...job, layers, hasMatchLines });
  const within: Legend['within'] = (area) => {
    const count = Math.floor((area.width + GAP) / (NARROWEST * lettering.sizes.small + GAP));
    if (count < 2) return null;
    const width = (area.width - (count - 1) * GAP) / count;
    const even = evened(lettering, groups, width, area, count);
    if (!placedIn(lettering, groups, width, even, 1, count).fit) return null;
    const abbreviations = flowTables([abbreviationTable(width)], area, lettering);
    const tall = Math.max(...abbreviations.flat().map((part) => part.area.height));
    if (abbreviations.length > 1 || abbreviations[0]!.some(({ area: { x } }) => x > area.x)) return null;
    const block = { ...area, height: Math.max(tall, even.height) };
    return { height: block.height, draw: (pen) => drawLegend(pen, job, groups, block, count) };
  };
  const sheet: Draft = {
    key: 'legend',
    series: 'E-0',
    title: 'Legend, symbols and abbreviations',
    scale: NOT_TO_SCALE,
    draw: (pen) => drawLegend(pen, job, groups, shape.field, COLUMNS),
  };
  return { sheet, within };
}

/** Groups in all columns but the last, which has the abbreviations. */
function drawLegend(pen: Pen, { lettering }: Job, groups: readonly Group[], area: Area, columns: number): void {
  const width = (area.width - (columns - 1) * GAP) / columns;
  const areaAt = (column: number): Area => ({ ...area, x: area.x + column * (width + GAP), width });
  const even = evened(lettering, groups, width, area, columns);
  const placed = SQUEEZES.map((by) => placedIn(lettering, groups, width, by === 1 ? even : area, by, columns));
  for (const { group, column, y, by } of placed.find(({ fit }) => fit)?.of ?? placed.at(-1)!.of)
    drawGroup(pen, group, areaAt(column), y, by);
  const [parts = []] = flowTables([abbreviationTable(width)], areaAt(columns - 1), lettering);
  for (const part of parts) drawTable(pen, part);
}

function linesFor(lettering: Lettering, { says }: Entry, width: number): readonly string[] {
  return wrapped(says, width - SIGN_WIDTH - 6, lettering.sizes.small, lettering);
}

/** Rows are pressed together by these, in this order, until all groups fit: a small sheet is lettered nearly as large. */
const SQUEEZES = [1, 0.92, 0.85];

interface Placed {
  readonly group: Group;
  readonly column: number;
  /** Its upper edge. */
  readonly y: number;
  readonly by: number;
}

/** The upper part of a field in which the groups stand in columns of about one height, where they fit. */
function evened(lettering: Lettering, groups: readonly Group[], width: number, field: Area, columns: number): Area {
  for (let share = 0.2; share < 1; share += 0.025) {
    const height = share * field.height;
    const part: Area = { ...field, y: top(field) - height, height };
    if (placedIn(lettering, groups, width, part, 1, columns).fit) return part;
  }
  return field;
}

/** Each group in the first column that has room for it, else in the one that has most. */
function placedIn(
  lettering: Lettering,
  groups: readonly Group[],
  width: number,
  field: Area,
  by: number,
  columns: number,
): { readonly of: readonly Placed[]; readonly fit: boolean } {
  const from = Array.from({ length: columns - 1 }, () => top(field));
  const of = groups.map((group) => {
    const height = groupHeight(lettering, group, width, by);
    const free = from.findIndex((y) => y - height >= field.y);
    const column = free >= 0 ? free : from.indexOf(Math.max(...from));
    const y = from[column]!;
    from[column] = y - height - 16 * by;
    return { group, column, y, by };
  });
  return { of, fit: from.every((y) => y + 16 * by >= field.y) };
}

const entryHeight = (lettering: Lettering, entry: Entry, width: number, by: number): number =>
  Math.max(entry.height * by, linesFor(lettering, entry, width).length * lettering.sizes.small * LEADING + 6 * by);

const groupHeight = (lettering: Lettering, { entries }: Group, width: number, by: number): number =>
  lettering.sizes.head * 1.8 + entries.reduce((sum, entry) => sum + entryHeight(lettering, entry, width, by), 0);

function drawGroup(pen: Pen, group: Group, { x, width }: Area, from: number, by: number): void {
  const { head, small } = pen.lettering.sizes;
  let y = from - head;
  pen.text(group.title.toUpperCase(), [x, y], { size: head, weight: 'bold' });
  y -= head * 0.8;
  for (const entry of group.entries) {
    const height = entryHeight(pen.lettering, entry, width, by);
    const middle = y - height / 2;
    entry.draw(pen, [x + SIGN_WIDTH / 2 - 6, middle]);
    const lines = linesFor(pen.lettering, entry, width);
    lines.forEach((words, i) => {
      const base = centred(middle, small) + ((lines.length - 1) / 2 - i) * small * LEADING;
      pen.text(words, [x + SIGN_WIDTH, base], { size: small });
    });
    y -= height;
  }
}
