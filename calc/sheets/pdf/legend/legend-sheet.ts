import type { Drawing } from '../../drawing/drawing.ts';
import { type Area, top } from '../kit/area.ts';
import { type Draft, type Job, NOT_TO_SCALE } from '../kit/draft.ts';
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
/** The last is that of the abbreviations. */
const COLUMNS = 3;

/** The legend: no standard symbol exists for a cord drop or a retractor, so that the set defines its own. */
export function legendSheet(job: Job, drawing: Drawing, hasMatchLines: boolean): Draft {
  const { site, shape, lettering } = job;
  const all = [PLAN_SYMBOLS, LINE_ENTRIES, colours(site), STRIP_SYMBOLS, ONE_LINE, RAISED_LINES];
  if (job.revision) all.push(REVISION);
  const layers = new Set(drawing.items.map(({ layer }) => layer));
  const groups = entriesShown(all, { ...job, layers, hasMatchLines });
  const width = (shape.field.width - (COLUMNS - 1) * GAP) / COLUMNS;
  const areaAt = (column: number): Area => ({ ...shape.field, x: shape.field.x + column * (width + GAP), width });
  return {
    key: 'legend',
    series: 'E-0',
    title: 'Legend, symbols and abbreviations',
    scale: NOT_TO_SCALE,
    draw: (pen) => {
      const even = evened(pen, groups, width, shape.field);
      const placed = SQUEEZES.map((by) => placedIn(pen, groups, width, by === 1 ? even : shape.field, by));
      for (const { group, column, y, by } of placed.find(({ fit }) => fit)?.of ?? placed.at(-1)!.of)
        drawGroup(pen, group, areaAt(column), y, by);
      const [parts = []] = flowTables([abbreviationTable(width)], areaAt(COLUMNS - 1), lettering);
      for (const part of parts) drawTable(pen, part);
    },
  };
}

function linesFor(pen: Pen, { says }: Entry, width: number): readonly string[] {
  return wrapped(says, width - SIGN_WIDTH - 6, pen.lettering.sizes.small, pen.lettering);
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
function evened(pen: Pen, groups: readonly Group[], width: number, field: Area): Area {
  for (let share = 0.3; share < 1; share += 0.05) {
    const height = share * field.height;
    const part: Area = { ...field, y: top(field) - height, height };
    if (placedIn(pen, groups, width, part, 1).fit) return part;
  }
  return field;
}

/** Each group in the first column that has room for it, else in the one that has most. */
function placedIn(
  pen: Pen,
  groups: readonly Group[],
  width: number,
  field: Area,
  by: number,
): { readonly of: readonly Placed[]; readonly fit: boolean } {
  const from = Array.from({ length: COLUMNS - 1 }, () => top(field));
  const of = groups.map((group) => {
    const height = groupHeight(pen, group, width, by);
    const free = from.findIndex((y) => y - height >= field.y);
    const column = free >= 0 ? free : from.indexOf(Math.max(...from));
    const y = from[column]!;
    from[column] = y - height - 16 * by;
    return { group, column, y, by };
  });
  return { of, fit: from.every((y) => y + 16 * by >= field.y) };
}

const entryHeight = (pen: Pen, entry: Entry, width: number, by: number): number =>
  Math.max(entry.height * by, linesFor(pen, entry, width).length * pen.lettering.sizes.small * LEADING + 6 * by);

const groupHeight = (pen: Pen, { entries }: Group, width: number, by: number): number =>
  pen.lettering.sizes.head * 1.8 + entries.reduce((sum, entry) => sum + entryHeight(pen, entry, width, by), 0);

function drawGroup(pen: Pen, group: Group, { x, width }: Area, from: number, by: number): void {
  const { head, small } = pen.lettering.sizes;
  let y = from - head;
  pen.text(group.title.toUpperCase(), [x, y], { size: head, weight: 'bold' });
  y -= head * 0.8;
  for (const entry of group.entries) {
    const height = entryHeight(pen, entry, width, by);
    const middle = y - height / 2;
    entry.draw(pen, [x + SIGN_WIDTH / 2 - 6, middle]);
    const lines = linesFor(pen, entry, width);
    lines.forEach((words, i) => {
      const base = centred(middle, small) + ((lines.length - 1) / 2 - i) * small * LEADING;
      pen.text(words, [x + SIGN_WIDTH, base], { size: small });
    });
    y -= height;
  }
}
