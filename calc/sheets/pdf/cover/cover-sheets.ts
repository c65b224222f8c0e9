import type { Drawing } from '../../drawing/drawing.ts';
import { type Area, right, top } from '../kit/area.ts';
import { type Draft, type Job, NOT_TO_SCALE, type NumberedSheet, numberedSheets } from '../kit/draft.ts';
import { PENS } from '../kit/ink.ts';
import type { Lettering } from '../kit/lettering/lettering.ts';
import { shortened } from '../kit/lettering/lines-of-text.ts';
import type { Pen } from '../kit/pen.ts';
import { PURPOSE_WORDS } from '../kit/purpose.ts';
import { revisedTables } from '../kit/revision/deltas.ts';
import { revisedRemark } from '../kit/revision/revised.ts';
import { flowTables, TABLE_GAP, type Table, type TablePage } from '../kit/tables/table.ts';
import { drawTable } from '../kit/tables/table-drawing.ts';
import type { Legend } from '../legend/legend-sheet.ts';
import { keynotesOf } from '../plans/keynotes.ts';
import { basisSheets, basisTables } from './basis-sheets.ts';
import { columnWidth } from './columns.ts';
import { keyFigures } from './key-figures.ts';
import { cautionNotes, generalNotes, keynoteList } from './notes.ts';
import { codesTable, scopeTable } from './scope.ts';
import { drawSitePicture } from './site-picture.ts';

/** More general sheets than this are not tried: the index alone would have thousands of sheets. */
const MOST = 200;

/** What the general sheets have beside what follows from the job. */
export interface CoverParts {
  readonly drawing: Drawing;
  /** Plans have keynotes for which there is no room beside them. */
  readonly hasKeynotes: boolean;
  /** Sheets of the version that a revised set revises. */
  readonly earlier: () => readonly NumberedSheet[];
  /** Stands on the cover where that has room, else on a sheet of its own; null where a set has none. */
  readonly legend: Legend | null;
}

/**
 * The general sheets of a set and its legend: cover with index, scope, codes, figures, notes and cautions, then the basis of
 * design, on its own or going on after them where that takes a sheet less. Their index is held against the sheets of the
 * version that it revises.
 */
export function generalSheets(job: Job, others: readonly Draft[], given: CoverParts): readonly Draft[] {
  const { legend } = given;
  const after = legend === null ? others : [legend.sheet, ...others];
  const basis = job.parts.has('basis') ? basisSheets(job) : [];
  const onCover = legend && pagesWithLegend(job, [...basis, ...others], given, legend);
  if (onCover) return [...drafted(job, onCover, given, legend), ...basis];
  const apart = coverPages(job, [...basis, ...after], given, null);
  const sheet = legend === null ? [] : [legend.sheet];
  if (basis.length > 0) {
    const joined = coverPages(job, after, given, basisTables);
    if (joined.length < apart.length + basis.length) return [...drafted(job, joined, given, null, true), ...sheet];
  }
  return [...drafted(job, apart, given, null), ...basis, ...sheet];
}

/** The pages of a cover that has the legend, which its index says of the sheet that has room for it; null where none has. */
function pagesWithLegend(
  job: Job,
  others: readonly Draft[],
  given: CoverParts,
  legend: Legend,
): readonly TablePage[] | null {
  for (let at = 0; at < MOST; at++) {
    const pages = coverPages(job, others, given, null, at);
    const pictured = picturedOn(job, pages, legend);
    if (!pictured?.rooms.legend) return null;
    if (pictured.at === at) return pages;
  }
  return null;
}

/** The pages of the cover; the tables of the basis after its own where they are given, the legend on one where it stands there. */
function coverPages(
  job: Job,
  others: readonly Draft[],
  { hasKeynotes, earlier }: CoverParts,
  basis: ((job: Job) => readonly Table[]) | null,
  legendAt = -1,
): readonly TablePage[] {
  const { field } = job.shape;
  const width = columnWidth(job);
  const room: Area = { ...field, height: field.height - bannerHeight(job.lettering) };
  // The index lists the general sheets too, so their number is known only once they are laid out.
  for (let count = 1; count <= MOST; count++) {
    const drafts = Array.from({ length: count }, (_, i) => blank(i, basis !== null, i === legendAt));
    const index = numberedSheets([...drafts, ...others]);
    const tables = revisedTables(job, (one) => [
      ...coverTables(one, one === job ? index : earlier(), width, hasKeynotes),
      ...(basis?.(one) ?? []),
    ]);
    const pages = flowTables(tables, room, job.lettering);
    if (pages.length <= count) return pages;
  }
  throw new RangeError('a set has too many sheets for its index');
}

function drafted(
  job: Job,
  pages: readonly TablePage[],
  { drawing }: CoverParts,
  legend: Legend | null,
  hasBasis = false,
): readonly Draft[] {
  const pictured = picturedOn(job, pages, legend);
  return pages.map((page, i) => ({
    ...blank(i, hasBasis, legend !== null && pictured?.at === i),
    listsKeynotes: page.some(({ table, title }) => table.short === 'keynotes' && title === table.title),
    draw: (pen) => {
      drawBanner(pen, job, page);
      if (pictured?.at !== i) return;
      drawSitePicture(pen, pictured.rooms.picture, job, drawing);
      pictured.rooms.legend?.draw(pen);
    },
  }));
}

/** The picture of the site stands once, on the first sheet that has room for it. */
function picturedOn(
  job: Job,
  pages: readonly TablePage[],
  legend: Legend | null,
): { readonly at: number; readonly rooms: Rooms } | null {
  for (const [at, page] of pages.entries()) {
    const rooms = pictureRooms(job, page, legend);
    if (rooms) return { at, rooms };
  }
  return null;
}

function blank(i: number, hasBasis: boolean, hasLegend = false): Draft {
  const first = hasLegend ? 'Cover, scope, notes and legend' : 'Cover, scope and notes';
  const scope = hasLegend ? 'Scope, notes and legend' : 'Scope and notes';
  const then = hasBasis ? 'Notes, basis of design and assumptions' : scope;
  return {
    key: i === 0 ? 'cover' : `cover ${i + 1}`,
    series: 'G-0',
    title: i === 0 ? first : `${then}, continued`,
    scale: NOT_TO_SCALE,
    draw: () => {},
  };
}

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

const bannerHeight = ({ sizes }: Lettering): number => sizes.number * 1.5;

/** The name of the site over the tables of a general sheet. */
function drawBanner(pen: Pen, { site, shape: { field } }: Job, page: TablePage): void {
  const { sizes } = pen.lettering;
  const { purpose } = site.drawings;
  const told = purpose === undefined ? '' : PURPOSE_WORDS[purpose].title.toUpperCase();
  const beside = told === '' ? 0 : pen.lettering.width(told, sizes.title, 'bold') + 20;
  const name = shortened(site.name, field.width - beside, sizes.number, pen.lettering, 'bold');
  const base = top(field) - sizes.number * 0.75;
  pen.text(name, [field.x, base], { size: sizes.number, weight: 'bold' });
  pen.text(told, [field.x + field.width, base], { size: sizes.title, weight: 'bold', anchor: 'right' });
  const y = lineUnderBanner(field, pen.lettering);
  pen.line(
    [
      [field.x, y],
      [field.x + field.width, y],
    ],
    PENS.heavy,
  );
  for (const part of page) drawTable(pen, part);
}

const lineUnderBanner = (field: Area, { sizes }: Lettering): number => top(field) - sizes.number * 1.1;

/** A picture of the site is worth no less room than this, points. */
const LEAST_PICTURE = 260;
/** Of the room beside the tables the picture keeps this share beside a legend. */
const PICTURE = 0.5;

interface Rooms {
  readonly picture: Area;
  readonly legend: ReturnType<Legend['within']>;
}

/** Where the picture of the site goes beside the tables of a page, and the legend under it; null where there is no room. */
function pictureRooms(
  { site, shape: { field }, lettering }: Job,
  page: TablePage,
  legend: Legend | null,
): Rooms | null {
  const x = Math.max(...page.map(({ area }) => right(area))) + 2 * TABLE_GAP;
  const y = lineUnderBanner(field, lettering) - TABLE_GAP;
  const room: Area = { x, y: field.y, width: right(field) - x, height: y - field.y };
  if (room.width < LEAST_PICTURE || site.stalls.length + site.drops.length === 0) return null;
  const under = legend?.within({ ...room, height: (1 - PICTURE) * room.height }) ?? null;
  const taken = under === null ? 0 : under.height + 2 * TABLE_GAP;
  return { picture: { ...room, y: room.y + taken, height: room.height - taken }, legend: under };
}
