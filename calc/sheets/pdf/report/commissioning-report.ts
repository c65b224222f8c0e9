import type { Site } from '../../../../routing/site/site.ts';
import { counted } from '../../../../routing/words/counted.ts';
import { commissioning, openTests, type TestRow, type TestSheet } from '../../../field/commissioning/commissioning.ts';
import { GROUP_WORDS, readingWords, unitWords } from '../../../field/commissioning/measures.ts';
import type { Plan } from '../../../plan/plan-shape.ts';
import { right } from '../kit/area.ts';
import { PENS } from '../kit/ink.ts';
import type { Lettering } from '../kit/lettering/lettering.ts';
import type { Pen } from '../kit/pen.ts';
import { flowTables, type Table } from '../kit/tables/table.ts';
import { drawTable } from '../kit/tables/table-drawing.ts';
import { type ReportPage, type ReportParts, report, UPRIGHT } from './report.ts';

const { field } = UPRIGHT;
/** Of the lines at the foot of each sheet, to be signed. */
const SIGNED = 34;

/** The commissioning of a lot: where it stands and what is open, then a sheet for each board, feeder and charger. */
export const commissioningReport = (site: Site, plan: Plan, parts: ReportParts): Promise<Uint8Array> =>
  report(`${site.name}: commissioning`, UPRIGHT, parts, [site], (lettering) => {
    const sheets = commissioning(site, plan);
    return [...lotPages(sheets, lettering), ...sheetPages(sheets, lettering)];
  });

/** The same without what was read: to be filled in by hand. */
export const blankCommissioning = (site: Site, plan: Plan, parts: ReportParts): Promise<Uint8Array> =>
  report(`${site.name}: commissioning, blank`, UPRIGHT, parts, [site], (lettering) => {
    const records = site.records.filter(({ what }) => what !== 'measured');
    // Where nothing was read the sheets are those that others have of the site.
    const unread = records.length === site.records.length ? site : { ...site, records };
    return sheetPages(commissioning(unread, plan), lettering);
  });

const pagesOf = (tables: readonly Table[], lettering: Lettering, more?: (pen: Pen) => void): readonly ReportPage[] =>
  flowTables(tables, { ...field, y: field.y + SIGNED, height: field.height - SIGNED }, lettering).map((page) => ({
    title: page[0]?.title ?? '',
    draw: (pen) => {
      for (const part of page) drawTable(pen, part);
      more?.(pen);
    },
  }));

const sheetPages = (sheets: readonly TestSheet[], lettering: Lettering): readonly ReportPage[] =>
  sheets.length === 0
    ? pagesOf([{ ...lotTable(sheets), title: 'Nothing to test is drawn' }], lettering)
    : sheets.flatMap((sheet) => pagesOf([sheetTable(sheet)], lettering, drawSigned));

function lotPages(sheets: readonly TestSheet[], lettering: Lettering): readonly ReportPage[] {
  const open = openTests(sheets);
  const told = open.filter(({ standing }) => standing !== 'not measured');
  return pagesOf([lotTable(sheets), ...(told.length > 0 ? [openTable(told)] : [])], lettering);
}

function lotTable(sheets: readonly TestSheet[]): Table {
  const all = sheets.flatMap(({ rows }) => rows);
  const asked = all.filter(({ standing }) => standing !== 'not asked');
  return {
    short: 'lot',
    title: 'Commissioning of the lot',
    width: field.width,
    lead: [
      `${counted(asked.length, 'test')} of ${counted(sheets.length, 'thing')}: ${count(all, 'passes')} pass, ${count(all, 'fails')} fail, ${count(all, 'not judged')} cannot be judged yet, ${count(all, 'two say')} were read differently by two people, ${count(all, 'not measured')} are not measured.`,
      'A test that passes was held to the limit beside it and to nothing else. What is not measured stands on the sheets.',
    ],
    columns: [
      { head: 'Of', most: 60 },
      { head: 'Pass', align: 'right' },
      { head: 'Fail', align: 'right' },
      { head: 'To be judged', align: 'right' },
      { head: 'Two say', align: 'right' },
      { head: 'Not measured', align: 'right' },
      { head: 'Measured by' },
    ],
    rows: sheets.map(({ title, rows }) => [
      title,
      ...(['passes', 'fails', 'not judged', 'two say', 'not measured'] as const).map((standing) =>
        String(count(rows, standing)),
      ),
      [...new Set(rows.flatMap(({ register }) => register?.now?.by || []))].join(', '),
    ]),
  };
}

const count = (rows: readonly TestRow[], standing: TestRow['standing']): number =>
  rows.filter((row) => row.standing === standing).length;

const openTable = (rows: readonly TestRow[]): Table => ({
  short: 'open',
  title: 'Open: failed, or to be decided',
  width: field.width,
  columns: [
    { head: 'Of' },
    { head: 'Test', most: 40 },
    { head: 'Read' },
    { head: 'Asked', most: 40 },
    { head: 'Why', most: 40 },
  ],
  rows: rows.map(({ of, measure, reading, limit, standing, says }) => [
    of,
    `${GROUP_WORDS[measure.group]}, ${measure.name}`,
    reading ? readingWords(reading) : '',
    limit.says,
    `${standing}: ${says}`,
  ]),
});

/** Where a figure is written in by hand. */
const BLANK = '________';

/** What was read, or room for it. */
function readCell({ reading, measure }: TestRow): string {
  if (reading) return readingWords(reading);
  if (measure.unit === null) return measure.words.join(' / ');
  return `${BLANK} ${unitWords(measure.unit)}${measure.takesAmps ? ` at ${BLANK} A` : ''}`;
}

/** What it is held to, or room for what the equipment is marked with. */
const askedCell = ({ limit, reading }: TestRow): string =>
  limit.lacks !== undefined && reading === null ? `${limit.says}: ${BLANK}` : limit.says;

function sheetTable({ title, rows }: TestSheet): Table {
  const sources = new Map<string, Set<string>>();
  for (const { measure, limit } of rows) {
    const known = sources.get(limit.source) ?? new Set();
    sources.set(limit.source, known.add(GROUP_WORDS[measure.group].toLowerCase()));
  }
  return {
    short: 'tests',
    title,
    width: field.width,
    columns: [
      { head: 'Test', most: 10 },
      { head: 'Where', most: 15 },
      { head: 'Asked', most: 17 },
      { head: 'Read', most: 17, least: 9 },
      { head: 'By, on', most: 9, least: 8 },
      { head: 'Result', least: 6 },
    ],
    rows: rows.map((row, i) => [
      row.measure.group === rows[i - 1]?.measure.group ? '' : GROUP_WORDS[row.measure.group],
      `${row.measure.name}${row.measure.isOptional ? ', where it can be' : ''}`,
      askedCell(row),
      readCell(row),
      row.register?.now ? [row.register.now.by, row.register.now.on].filter(Boolean).join(', ') : '',
      row.standing === 'not measured' || row.standing === 'not asked'
        ? ''
        : `${row.standing}${row.says ? `: ${row.says}` : ''}`,
    ]),
    foot: [...sources].map(([source, groups]) => `Asked of ${[...groups].join(', ')}: by ${source}.`),
  };
}

const SIGNS = ['Measured by', 'Instruments, calibrated until', 'Witnessed by', 'Date'] as const;

/** Lines to sign on. */
function drawSigned(pen: Pen): void {
  const { small } = pen.lettering.sizes;
  const step = field.width / SIGNS.length;
  SIGNS.forEach((words, i) => {
    const x = field.x + i * step;
    pen.text(words, [x, field.y], { size: small });
    pen.line(
      [
        [x, field.y + small + 4],
        [Math.min(x + step - 14, right(field)), field.y + small + 4],
      ],
      PENS.hair,
    );
  });
}
