import type { Site } from '../../../../routing/site/site.ts';
import type { Drawing } from '../../drawing/drawing.ts';
import { type Area, right, top } from '../kit/area.ts';
import { type Draft, type Job, NOT_TO_SCALE, type NumberedSheet, numberedSheets } from '../kit/draft.ts';
import { PENS } from '../kit/ink.ts';
import { shortened } from '../kit/lettering/lines-of-text.ts';
import type { Pen } from '../kit/pen.ts';
import { PURPOSE_WORDS } from '../kit/purpose.ts';
import { revisedTables } from '../kit/revision/deltas.ts';
import { revisedRemark } from '../kit/revision/revised.ts';
import { flowTables, TABLE_GAP, type Table, type TablePage } from '../kit/tables/table.ts';
import { drawTable } from '../kit/tables/table-drawing.ts';
import { drawNorthArrow } from '../kit/view/north-arrow.ts';
import { scaleThatFits } from '../kit/view/scales.ts';
import { grown, sizeOf, viewIn } from '../kit/view/view.ts';
import { drawViewTitle, FOOT } from '../kit/view/view-title.ts';
import { drawBasePlan } from '../plans/base-plan.ts';
import { keynotesOf } from '../plans/keynotes.ts';
import { drawnExtent } from '../plans/plan-sheet.ts';
import { columnWidth } from './columns.ts';
import { keyFigures } from './key-figures.ts';
import { cautionNotes, generalNotes, keynoteList } from './notes.ts';
import { codesTable, scopeTable } from './scope.ts';

/** More general sheets than this are not tried: the index alone would have thousands of sheets. */
const MOST = 200;

/** What the general sheets have beside what follows from the job. */
export interface CoverParts {
  readonly drawing: Drawing;
  /** Plans have keynotes for which there is no room beside them. */
  readonly hasKeynotes: boolean;
  /** Sheets of the version that a revised set revises. */
  readonly earlier: () => readonly NumberedSheet[];
}

/**
 * The general sheets of a set: cover with index, scope, codes, figures, notes and cautions, over as many as it takes. Its
 * index is held against the sheets of the version that it revises.
 */
export function coverSheets(
  job: Job,
  others: readonly Draft[],
  { drawing, hasKeynotes, earlier }: CoverParts,
): readonly Draft[] {
  const { shape, lettering } = job;
  const { field } = shape;
  const width = columnWidth(job);
  const banner = lettering.sizes.number * 1.5;
  const room: Area = { ...field, height: field.height - banner };
  // The index lists the general sheets too, so their number is known only once they are laid out.
  for (let count = 1; count <= MOST; count++) {
    const drafts = Array.from({ length: count }, (_, i) => blank(i));
    const index = numberedSheets([...drafts, ...others]);
    const tables = revisedTables(job, (one) => coverTables(one, one === job ? index : earlier(), width, hasKeynotes));
    const pages = flowTables(tables, room, lettering);
    if (pages.length > count) continue;
    return pages.map((page, i) => ({
      ...blank(i),
      listsKeynotes: page.some(({ table, title }) => table.short === 'keynotes' && title === table.title),
      draw: (pen) => drawCover(pen, job, page, drawing),
    }));
  }
  throw new RangeError('a set has too many sheets for its index');
}

const blank = (i: number): Draft => ({
  key: i === 0 ? 'cover' : `cover ${i + 1}`,
  series: 'G-0',
  title: i === 0 ? 'Cover, scope and notes' : 'Scope and notes, continued',
  scale: NOT_TO_SCALE,
  draw: () => {},
});

function coverTables(
  job: Job,
  sheets: readonly NumberedSheet[],
  width: number,
  hasKeynotes: boolean,
): readonly Table[] {
  const { site, plan, parts } = job;
  const index: Table = {
    short: 'index',
    title: 'Sheet index',
    width,
    columns: [{ head: 'Sheet' }, { head: 'Title' }],
    rows: sheets.map(({ number, draft }) => [number, draft.title]),
  };
  return [
    index,
    scopeTable(site, plan, width),
    codesTable(site, width),
    keyFigures(site, plan, width),
    generalNotes(width, notesOf(job)),
    ...(hasKeynotes ? [keynoteList(keynotesOf(site, plan), width)] : []),
    cautionNotes(width, parts),
  ];
}

/** What this set adds to the general notes; what comes and goes with its revision last, so that others keep their numbers. */
const notesOf = ({ site, remarks, revision }: Job): readonly string[] => [
  ...remarks,
  ...(site.drawings.notes ?? []),
  ...(revision ? [revisedRemark(revision)] : []),
];

function drawCover(pen: Pen, { site, shape: { field } }: Job, page: TablePage, drawing: Drawing): void {
  const { sizes } = pen.lettering;
  const { purpose } = site.drawings;
  const told = purpose === undefined ? '' : PURPOSE_WORDS[purpose].title.toUpperCase();
  const beside = told === '' ? 0 : pen.lettering.width(told, sizes.title, 'bold') + 20;
  const name = shortened(site.name, field.width - beside, sizes.number, pen.lettering, 'bold');
  const base = top(field) - sizes.number * 0.75;
  pen.text(name, [field.x, base], { size: sizes.number, weight: 'bold' });
  pen.text(told, [field.x + field.width, base], { size: sizes.title, weight: 'bold', anchor: 'right' });
  const y = base - sizes.number * 0.35;
  pen.line(
    [
      [field.x, y],
      [field.x + field.width, y],
    ],
    PENS.heavy,
  );
  for (const part of page) drawTable(pen, part);
  const left = Math.max(...page.map(({ area }) => right(area))) + 2 * TABLE_GAP;
  drawSite(pen, { x: left, y: field.y, width: right(field) - left, height: y - TABLE_GAP - field.y }, site, drawing);
}

/** A picture of the site is worth no less room than this, points. */
const LEAST_PICTURE = 260;

/** The whole site, small, without words and what calls other sheets, where the tables leave room for it. */
function drawSite(pen: Pen, room: Area, site: Site, drawing: Drawing): void {
  if (room.width < LEAST_PICTURE || site.stalls.length + site.drops.length === 0) return;
  const foot: Area = { ...room, height: FOOT };
  const area: Area = { ...room, y: room.y + FOOT, height: room.height - FOOT };
  const window = grown(drawnExtent(drawing), 6);
  const scale = scaleThatFits(site.units, sizeOf(window), area);
  const view = viewIn(area, window, scale);
  drawBasePlan(pen, view, {
    items: drawing.items.filter(({ kind, layer }) => kind !== 'text' && layer !== 'sections'),
  });
  const after = drawViewTitle(pen, foot, '1', 'Site', scale.says);
  if (right(foot) - after > 120) drawNorthArrow(pen, [after + 40, foot.y + 32], site);
}
