import type { Site } from '../../../../routing/site/site.ts';
import { sectionOf } from '../../../space/section/section.ts';
import type { Section } from '../../../space/section/shape.ts';
import type { Drawing, Extent } from '../../drawing/drawing.ts';
import { existingInCut } from '../../drawing/existing-raceways.ts';
import { sectionDrawing } from '../../drawing/section-drawing.ts';
import { sectionExtent } from '../../drawing/section-extent.ts';
import { detailScales } from '../details/detail-scales.ts';
import type { Area } from '../kit/area.ts';
import type { Job } from '../kit/draft.ts';
import { CAP } from '../kit/lettering/letters.ts';
import { pointsPerFoot, type Scale } from '../kit/view/scales.ts';

/** No section is drawn higher than lets so many rows of them stand on a sheet that has more. */
const ROWS = 2;
const GAP = 18;
/** Under each section its title, points. */
export const SECTION_TITLE = 58;

/** A cut that plans call by its id. */
type MarkedCut = Site['sections'][number];

export interface LaidSection {
  readonly cut: MarkedCut;
  readonly section: Section;
  readonly drawing: Drawing;
  readonly extent: Extent;
  readonly scale: Scale;
  readonly cell: Area;
}

/** Its title and where it is cut ask for so much width, in sizes of the lettering. */
const LEAST_WIDTH = 45;
/** No section is drawn larger. */
const LEAST_RATIO = 10;
/** A section smaller than this, 3/16" or 1:50, has the whole width of a sheet. */
const SMALLEST_HALF = 64;

/** Sections side by side, as high as the highest of them. */
export type SectionRow = readonly LaidSection[];

/** Ways to lay sections out: rows that their heights are for, and whether each is as wide as a sheet lets it be. */
const WAYS = [
  { rows: ROWS, isWide: false },
  { rows: 1, isWide: false },
  { rows: ROWS, isWide: true },
  { rows: ROWS + 1, isWide: true },
] as const;

/**
 * The sections of a site, those that it keeps, else the typical ones: side by side in rows, as many rows to a sheet as go
 * onto it. Of ways that take as few sheets, that in which the smallest is largest, then all together: none stands alone
 * and large beside others that are small.
 * @param room height for them on a sheet, points
 */
export function sectionsOnSheets(job: Job, room: number): readonly (readonly SectionRow[])[] {
  const ways = WAYS.map(({ rows, isWide }) =>
    sheetsOfRows(rowsOf(job, job.site.sections, (room - (rows - 1) * GAP) / rows - SECTION_TITLE, isWide), room),
  );
  const best = ways.reduce((one, other) => (isLarger(other, one) ? other : one));
  return best.map((rows) => {
    // A row that is alone on its sheet has all of its height.
    const cuts = rows.flat().map(({ cut }) => cut);
    const alone = rows.length > 1 ? rows : rowsOf(job, cuts, room - SECTION_TITLE);
    return alone.length === 1 ? alone : rows;
  });
}

type Sheets = readonly (readonly SectionRow[])[];

function isLarger(some: Sheets, than: Sheets): boolean {
  if (some.length !== than.length) return some.length < than.length;
  const sizes = (sheets: Sheets): readonly number[] => sheets.flat(2).map(({ scale }) => 1 / scale.ratio);
  const [own, others] = [sizes(some), sizes(than)];
  const [least, other] = [Math.min(...own), Math.min(...others)];
  if (Math.abs(least - other) > 1e-9) return least > other;
  return sum(own) > sum(others) + 1e-9;
}

const sum = (numbers: readonly number[]): number => numbers.reduce((all, one) => all + one, 0);

/**
 * Sections in rows no higher than so much: half as wide as a sheet unless that makes one small or they are to be wide, and
 * in the first row that has room for it and its title.
 */
function rowsOf(job: Job, cuts: readonly MarkedCut[], high: number, isWide = false): readonly SectionRow[] {
  const { site, plan, shape, lettering } = job;
  const { width } = shape.field;
  const rows: { readonly own: LaidSection[]; readonly whole: LaidSection; left: number }[] = [];
  for (const cut of cuts) {
    const section = sectionOf(site, plan, cut);
    if (!section) continue;
    const half = laidOut(job, cut, section, { x: 0, y: 0, width: (width - GAP) / 2, height: high });
    const whole = laidOut(job, cut, section, { x: 0, y: 0, width, height: high });
    const isSmall = isWide || half.scale.ratio > SMALLEST_HALF;
    const laid = isSmall && whole.scale.ratio < half.scale.ratio ? whole : half;
    const { extent, scale } = laid;
    const needed = Math.max(LEAST_WIDTH * lettering.sizes.small, (extent.maxX - extent.minX) * pointsPerFoot(scale));
    const one = { ...laid, cell: { ...laid.cell, width: needed } };
    const row = rows.find(({ left }) => left >= needed + GAP);
    if (row) {
      row.own.push(one);
      row.left -= needed + GAP;
    } else
      rows.push({ own: [one], whole: { ...whole, cell: { ...whole.cell, x: shape.field.x } }, left: width - needed });
  }
  // What a row leaves is shared out.
  return rows.map(({ own, whole, left }) => {
    if (own.length === 1) return [whole];
    const more = left / own.length;
    let x = shape.field.x;
    return own.map((one) => {
      const cell = { ...one.cell, x, width: one.cell.width + more };
      x += cell.width + GAP;
      return { ...one, cell };
    });
  });
}

const heightOf = ({ extent, scale }: LaidSection): number => (extent.maxY - extent.minY) * pointsPerFoot(scale);
export const rowHeight = (row: SectionRow): number => Math.max(...row.map(heightOf)) + SECTION_TITLE;

/** Rows from sheet to sheet, as many on each as it has room for. */
function sheetsOfRows(rows: readonly SectionRow[], room: number): readonly (readonly SectionRow[])[] {
  const sheets: SectionRow[][] = [];
  let left = 0;
  for (const row of rows) {
    const needed = rowHeight(row);
    if (sheets.length === 0 || needed > left) {
      sheets.push([]);
      left = room;
    }
    sheets.at(-1)!.push(row);
    left -= needed + GAP;
  }
  return sheets;
}

/** At the largest standard scale at which it goes into its cell, letters and all. */
function laidOut({ site, plan, lettering }: Job, cut: MarkedCut, section: Section, cell: Area): LaidSection {
  const scales = detailScales(site.units).filter(({ ratio }) => ratio >= LEAST_RATIO);
  const existing = existingInCut(site, plan);
  const at = (scale: Scale): LaidSection => {
    const letter = (lettering.sizes.small * CAP) / pointsPerFoot(scale);
    const drawing = sectionDrawing(section, site.units, letter, cut.name, existing);
    return { cut, section, drawing, extent: sectionExtent(drawing.items), scale, cell };
  };
  const fits = ({ extent, scale }: LaidSection): boolean =>
    (extent.maxX - extent.minX) * pointsPerFoot(scale) <= cell.width &&
    (extent.maxY - extent.minY) * pointsPerFoot(scale) <= cell.height;
  for (const scale of scales) {
    const laid = at(scale);
    if (fits(laid)) return laid;
  }
  return at(scales.at(-1)!);
}
