import { tablesOf } from '../../../tables/editions.ts';
import { type Area, top } from '../kit/area.ts';
import { type Draft, type Job, NOT_TO_SCALE, type NumberedSheet, numberedSheets } from '../kit/draft.ts';
import { PENS } from '../kit/ink.ts';
import { shortened } from '../kit/lines-of-text.ts';
import type { Pen } from '../kit/pen.ts';
import { flowTables, TABLE_GAP, type Table, type TablePage } from '../kit/table.ts';
import { drawTable } from '../kit/table-drawing.ts';
import { checksTable, notCheckedTable } from './checks-table.ts';
import { assumptionsTable, criteriaTable } from './criteria.ts';
import { findingsSummary } from './findings-summary.ts';
import { keyFigures } from './key-figures.ts';
import { cautionNotes, generalNotes } from './notes.ts';

/** A column of the cover is about this wide, in sizes of the lettering. */
const COLUMN = 58;
/** More general sheets than this are not tried: the index alone would have thousands of sheets. */
const MOST = 200;

/** The general sheets of a set: cover with index, figures, findings, notes, cautions and rules, over as many as it takes. */
export function coverSheets(job: Job, others: readonly Draft[]): readonly Draft[] {
  const { shape, lettering } = job;
  const { field } = shape;
  const columns = Math.max(1, Math.round(field.width / (COLUMN * lettering.sizes.small)));
  const width = (field.width - (columns - 1) * TABLE_GAP) / columns;
  const banner = lettering.sizes.number * 1.5;
  const room: Area = { ...field, height: field.height - banner };
  // The index lists the general sheets too, so their number is known only once they are laid out.
  for (let count = 1; count <= MOST; count++) {
    const drafts = Array.from({ length: count }, (_, i) => blank(i));
    const pages = flowTables(coverTables(job, numberedSheets([...drafts, ...others]), width), room, lettering);
    if (pages.length > count) continue;
    return pages.map((page, i) => ({ ...blank(i), draw: (pen) => drawCover(pen, job, page) }));
  }
  throw new RangeError('a set has too many sheets for its index');
}

const blank = (i: number): Draft => ({
  key: i === 0 ? 'cover' : `cover ${i + 1}`,
  series: 'G-0',
  title: i === 0 ? 'Cover, notes and findings' : 'Notes and findings, continued',
  scale: NOT_TO_SCALE,
  draw: () => {},
});

function coverTables(job: Job, sheets: readonly NumberedSheet[], width: number): readonly Table[] {
  const { site, plan } = job;
  const index: Table = {
    short: 'index',
    title: 'Sheet index',
    width,
    columns: [{ head: 'Sheet' }, { head: 'Title' }],
    rows: sheets.map(({ number, draft }) => [number, draft.title]),
  };
  return [
    index,
    keyFigures(site, plan, width),
    generalNotes(width, job.remarks),
    cautionNotes(width),
    findingsSummary(plan, tablesOf(site.rules), width),
    checksTable(plan, width),
    notCheckedTable(plan, width),
    criteriaTable(site, width),
    assumptionsTable(site, width),
  ];
}

function drawCover(pen: Pen, { site, shape: { field } }: Job, page: TablePage): void {
  const { sizes } = pen.lettering;
  const name = shortened(site.name, field.width, sizes.number, pen.lettering, 'bold');
  const base = top(field) - sizes.number * 0.75;
  pen.text(name, [field.x, base], { size: sizes.number, weight: 'bold' });
  const y = base - sizes.number * 0.35;
  pen.line(
    [
      [field.x, y],
      [field.x + field.width, y],
    ],
    PENS.heavy,
  );
  for (const part of page) drawTable(pen, part);
}
