import { printLength } from '../../../../routing/site/numbers/feet-inches.ts';
import { planWords } from '../../../../routing/site/place/gridline-words.ts';
import type { Units } from '../../../../routing/site/schema/vocabulary.ts';
import type { Site } from '../../../../routing/site/site.ts';
import { sectionOf } from '../../../space/section/section.ts';
import type { Section } from '../../../space/section/shape.ts';
import { type NamedCut, sectionsOf } from '../../../space/section/typical.ts';
import type { Drawing, Extent } from '../../drawing/drawing.ts';
import { existingInCut } from '../../drawing/existing-raceways.ts';
import { sectionDrawing } from '../../drawing/section-drawing.ts';
import { sectionExtent } from '../../drawing/section-extent.ts';
import { detailScales } from '../details/detail-scales.ts';
import { type Area, right, top } from '../kit/area.ts';
import { type Draft, type Job, sectionKey } from '../kit/draft.ts';
import { CAP, LEADING } from '../kit/lettering/letters.ts';
import { wrapped } from '../kit/lettering/lines-of-text.ts';
import type { Pen } from '../kit/pen.ts';
import { drawSmallDelta } from '../kit/revision/delta.ts';
import { pointsPerFoot, type Scale } from '../kit/view/scales.ts';
import { viewIn } from '../kit/view/view.ts';
import { drawViewTitle } from '../kit/view/view-title.ts';
import { drawBasePlan } from '../plans/base-plan.ts';

/** No section is drawn higher than lets so many rows of them stand on a sheet that has more. */
const ROWS = 2;
const GAP = 18;
/** Under each section its title, and under all of them the notes, points. */
const TITLE = 58;
const NOTES_HEIGHT = 40;

const notesOf = ({ parts }: Job): readonly string[] => [
  'Heights are over finished grade, taken as level. Clear heights are to the lowest overhead work at the cut or seen past it; vehicles and cords that are out do not count.',
  `Steel is shown where the site has it: its sizes, its capacity and what is hung from it are checked by others. Trapezes and rods are drawn for the conduits that cross there${parts.has('setting-out') ? '; supports stand where the setting-out by the tape has them' : ''}.`,
  'Trenches are shown with 3 in. beside and below the raceways. Call before digging; verify what lies in the ground.',
];

/** A cut that plans call by its id. */
type MarkedCut = Site['sections'][number];

interface Laid {
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
type Row = readonly Laid[];

/**
 * The sections of a site, those that it keeps, else the typical ones: side by side in rows, as many rows to a sheet as go
 * onto it. Where they take no more sheets so, each is as large as a sheet lets it be.
 */
export function sectionSheets(job: Job): readonly Draft[] {
  const { field } = job.shape;
  const room = field.height - NOTES_HEIGHT;
  const at = (rows: number) =>
    sheetsOfRows(rowsOf(job, job.site.sections, (room - (rows - 1) * GAP) / rows - TITLE), room);
  const [usual, larger] = [at(ROWS), at(1)];
  const sizes = (some: readonly (readonly Row[])[]): number =>
    some.flat(2).reduce((sum, { scale }) => sum + 1 / scale.ratio, 0);
  const isBetter = larger.length < usual.length || (larger.length === usual.length && sizes(larger) > sizes(usual));
  const sheets = (isBetter ? larger : usual).map((rows) => {
    // A row that is alone on its sheet has all of its height.
    const cuts = rows.flat().map(({ cut }) => cut);
    const alone = rows.length > 1 ? rows : rowsOf(job, cuts, room - TITLE);
    return alone.length === 1 ? alone : rows;
  });
  return sheets.map((own, sheet) => sectionSheet(job, own, sheet, sheets.length));
}

/**
 * Sections in rows no higher than so much: half as wide as a sheet unless that makes one small, and in the first row that
 * has room for it and its title.
 */
function rowsOf(job: Job, cuts: readonly MarkedCut[], high: number): readonly Row[] {
  const { site, plan, shape, lettering } = job;
  const { width } = shape.field;
  const rows: { readonly own: Laid[]; readonly whole: Laid; left: number }[] = [];
  for (const cut of cuts) {
    const section = sectionOf(site, plan, cut);
    if (!section) continue;
    const half = laidOut(job, cut, section, { x: 0, y: 0, width: (width - GAP) / 2, height: high });
    const whole = laidOut(job, cut, section, { x: 0, y: 0, width, height: high });
    const laid = half.scale.ratio > SMALLEST_HALF && whole.scale.ratio < half.scale.ratio ? whole : half;
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

const heightOf = ({ extent, scale }: Laid): number => (extent.maxY - extent.minY) * pointsPerFoot(scale);
const rowHeight = (row: Row): number => Math.max(...row.map(heightOf)) + TITLE;

/** Rows from sheet to sheet, as many on each as it has room for. */
function sheetsOfRows(rows: readonly Row[], room: number): readonly (readonly Row[])[] {
  const sheets: Row[][] = [];
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

function sectionSheet(job: Job, rows: readonly Row[], sheet: number, count: number): Draft {
  const { field } = job.shape;
  const isChanged = changedSections(job);
  const scales = [...new Set(rows.flat().map(({ scale }) => scale.says))];
  // What the rows leave goes between them.
  const spare = field.height - NOTES_HEIGHT - rows.reduce((sum, row) => sum + rowHeight(row), 0);
  const gap = spare / rows.length;
  return {
    key: `sections ${sheet + 1}`,
    series: 'E-3',
    title: count > 1 ? `Sections, ${sheet + 1} of ${count}` : 'Sections',
    scale: scales.length === 1 ? scales[0]! : 'as noted',
    views: new Map(rows.flat().map(({ cut }, i) => [sectionKey(cut), String(i + 1)])),
    draw: (pen) => {
      let mark = 0;
      let y = top(field);
      for (const row of rows) {
        const height = rowHeight(row) + gap;
        y -= height;
        for (const one of row) {
          mark++;
          const foot: Area = { ...one.cell, y, height: TITLE };
          const area: Area = { ...one.cell, y: y + TITLE, height: height - TITLE };
          const after = drawSection(pen, job, one, area, foot, String(mark));
          if (isChanged(one.cut, one.section)) drawSmallDelta(pen, [after + 2, y + 36], job.revision!.number);
        }
      }
      drawNotes(pen, { ...field, height: NOTES_HEIGHT }, notesOf(job));
    },
  };
}

/** Whether a section says something else than that of its name in the version before. */
function changedSections({ site, revision }: Job): (cut: NamedCut, section: Section) => boolean {
  if (!revision) return () => false;
  const earlier = revision.earlier();
  const wordsOf = (section: Section, name: string): string =>
    sectionDrawing(section, site.units, 1, name)
      .items.flatMap((item) => (item.kind === 'text' ? [item.text] : []))
      .sort()
      .join('\n');
  const before = new Map(
    sectionsOf(earlier.site, earlier.plan).flatMap((cut) => {
      const section = sectionOf(earlier.site, earlier.plan, cut);
      return section ? [[cut.name, wordsOf(section, cut.name)] as const] : [];
    }),
  );
  return ({ name }, section) => before.get(name) !== wordsOf(section, name);
}

/** At the largest standard scale at which it goes into its cell, letters and all. */
function laidOut({ site, plan, lettering }: Job, cut: MarkedCut, section: Section, cell: Area): Laid {
  const scales = detailScales(site.units).filter(({ ratio }) => ratio >= LEAST_RATIO);
  const existing = existingInCut(site, plan);
  const at = (scale: Scale): Laid => {
    const letter = (lettering.sizes.small * CAP) / pointsPerFoot(scale);
    const drawing = sectionDrawing(section, site.units, letter, cut.name, existing);
    return { cut, section, drawing, extent: sectionExtent(drawing.items), scale, cell };
  };
  const fits = ({ extent, scale }: Laid): boolean =>
    (extent.maxX - extent.minX) * pointsPerFoot(scale) <= cell.width &&
    (extent.maxY - extent.minY) * pointsPerFoot(scale) <= cell.height;
  for (const scale of scales) {
    const laid = at(scale);
    if (fits(laid)) return laid;
  }
  return at(scales.at(-1)!);
}

/** Draws a section over its title; the place after that, from the left. */
function drawSection(
  pen: Pen,
  { site }: Job,
  { cut, drawing, extent, scale }: Laid,
  area: Area,
  foot: Area,
  mark: string,
): number {
  const view = viewIn(area, extent, scale);
  drawBasePlan(pen, view, drawing);
  const after = drawViewTitle(pen, foot, mark, cut.name, scale.says);
  const place = (at: NamedCut['from']): string =>
    site.gridlines.x.length + site.gridlines.y.length > 0
      ? planWords(at, site.gridlines, site.units, nearestInch)
      : `x ${nearestInch(at[0], site.units)}, y ${nearestInch(at[1], site.units)}`;
  const words = `Cut from ${place(cut.from)} to ${place(cut.to)}, looking ${printLength(Math.abs(cut.look), site.units)} to the ${cut.look < 0 ? 'right' : 'left'} of that way.`;
  const size = pen.lettering.sizes.small;
  wrapped(words, right(foot) - after - 24, size, pen.lettering).forEach((line, i) => {
    pen.text(line, [after + 20, foot.y + 38 - i * size * LEADING], { size });
  });
  return after;
}

function drawNotes(pen: Pen, { x, y, width }: Area, notes: readonly string[]): void {
  const size = pen.lettering.sizes.small;
  const lines = notes.flatMap((note, i) => wrapped(`${i + 1}. ${note}`, width, size, pen.lettering));
  for (const [i, words] of lines.toReversed().entries()) pen.text(words, [x, y + 2 + i * size * LEADING], { size });
}

/** Where a cut was laid is told to the inch, or to the centimetre. */
const nearestInch = (feet: number, units: Units): string =>
  printLength(units === 'm' ? Math.round(feet * 30.48) / 30.48 : Math.round(feet * 12) / 12, units);
