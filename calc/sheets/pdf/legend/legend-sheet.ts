import { type Area, top } from '../kit/area.ts';
import { type Draft, type Job, NOT_TO_SCALE } from '../kit/draft.ts';
import { LEADING } from '../kit/letters.ts';
import { wrapped } from '../kit/lines-of-text.ts';
import { centred, type Pen } from '../kit/pen.ts';
import { flowTables } from '../kit/table.ts';
import { drawTable } from '../kit/table-drawing.ts';
import { abbreviationTable } from './abbreviations.ts';
import {
  colours,
  type Entry,
  type Group,
  LINES,
  ONE_LINE,
  PLAN_SYMBOLS,
  RAISED_LINES,
  REVISION,
  STRIP_SYMBOLS,
} from './entries.ts';

const SIGN_WIDTH = 110;
const GAP = 30;

/** The legend: no standard symbol exists for a cord drop or a retractor, so that the set defines its own. */
export function legendSheet(job: Job): Draft {
  const { site, shape, lettering } = job;
  const columns = [
    [PLAN_SYMBOLS, LINES, colours(site), STRIP_SYMBOLS],
    [ONE_LINE, RAISED_LINES, ...(job.revision ? [REVISION] : [])],
    [],
  ];
  const width = (shape.field.width - (columns.length - 1) * GAP) / columns.length;
  const areaAt = (column: number): Area => ({ ...shape.field, x: shape.field.x + column * (width + GAP), width });
  return {
    key: 'legend',
    series: 'E-0',
    title: 'Legend, symbols and abbreviations',
    scale: NOT_TO_SCALE,
    draw: (pen) => {
      columns.forEach((groups, column) => {
        let y = top(shape.field);
        for (const group of groups) {
          drawGroup(pen, group, areaAt(column), y);
          y -= groupHeight(pen, group, width) + 16;
        }
      });
      const [parts = []] = flowTables([abbreviationTable(width)], areaAt(columns.length - 1), lettering);
      for (const part of parts) drawTable(pen, part);
    },
  };
}

function linesFor(pen: Pen, { says }: Entry, width: number): readonly string[] {
  return wrapped(says, width - SIGN_WIDTH - 6, pen.lettering.sizes.small, pen.lettering);
}

const entryHeight = (pen: Pen, entry: Entry, width: number): number =>
  Math.max(entry.height, linesFor(pen, entry, width).length * pen.lettering.sizes.small * LEADING + 6);

const groupHeight = (pen: Pen, { entries }: Group, width: number): number =>
  pen.lettering.sizes.head * 1.8 + entries.reduce((sum, entry) => sum + entryHeight(pen, entry, width), 0);

function drawGroup(pen: Pen, group: Group, { x, width }: Area, from: number): void {
  const { head, small } = pen.lettering.sizes;
  let y = from - head;
  pen.text(group.title.toUpperCase(), [x, y], { size: head, weight: 'bold' });
  y -= head * 0.8;
  for (const entry of group.entries) {
    const height = entryHeight(pen, entry, width);
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
