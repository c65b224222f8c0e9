import { printLength } from '../../../../routing/site/numbers/feet-inches.ts';
import { planWords } from '../../../../routing/site/place/gridline-words.ts';
import type { Units } from '../../../../routing/site/schema/vocabulary.ts';
import { sectionOf } from '../../../space/section/section.ts';
import type { Section } from '../../../space/section/shape.ts';
import { type NamedCut, sectionsOf } from '../../../space/section/typical.ts';
import { sectionDrawing } from '../../drawing/section-drawing.ts';
import { type Area, right, top } from '../kit/area.ts';
import { type Draft, type Job, sectionKey } from '../kit/draft.ts';
import { LEADING } from '../kit/lettering/letters.ts';
import { wrapped } from '../kit/lettering/lines-of-text.ts';
import type { Pen } from '../kit/pen.ts';
import { drawSmallDelta } from '../kit/revision/delta.ts';
import { viewIn } from '../kit/view/view.ts';
import { drawViewTitle } from '../kit/view/view-title.ts';
import { drawBasePlan } from '../plans/base-plan.ts';
import { type LaidSection, rowHeight, SECTION_TITLE, type SectionRow, sectionsOnSheets } from './section-rows.ts';

/** Under all sections the notes, points. */
const NOTES_HEIGHT = 40;

const notesOf = ({ parts }: Job): readonly string[] => [
  'Heights are over finished grade, taken as level. Clear heights are to the lowest overhead work at the cut or seen past it; vehicles and cords that are out do not count.',
  `Steel is shown where the site has it: its sizes, its capacity and what is hung from it are checked by others. Trapezes and rods are drawn for the conduits that cross there${parts.has('setting-out') ? '; supports stand where the setting-out by the tape has them' : ''}.`,
  'Trenches are shown with 3 in. beside and below the raceways. Call before digging; verify what lies in the ground.',
];

/** The sections of a site, those that it keeps, else the typical ones, with what is to be known of them all under them. */
export function sectionSheets(job: Job): readonly Draft[] {
  const sheets = sectionsOnSheets(job, job.shape.field.height - NOTES_HEIGHT);
  return sheets.map((own, sheet) => sectionSheet(job, own, sheet, sheets.length));
}

function sectionSheet(job: Job, rows: readonly SectionRow[], sheet: number, count: number): Draft {
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
          const foot: Area = { ...one.cell, y, height: SECTION_TITLE };
          const area: Area = { ...one.cell, y: y + SECTION_TITLE, height: height - SECTION_TITLE };
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

/** Draws a section over its title; the place after that, from the left. */
function drawSection(
  pen: Pen,
  { site }: Job,
  { cut, drawing, extent, scale }: LaidSection,
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
