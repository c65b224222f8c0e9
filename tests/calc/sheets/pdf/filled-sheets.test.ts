import { describe, expect, test } from 'vitest';
import { PAPERS, type Paper, sheetShape } from '../../../../calc/sheets/pdf/kit/paper.ts';
import type { Point2 } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { type DrawnSheet, drawnSheets } from './drawn-sheets.ts';
import { FILLED_ROWS, filledOf } from './filled-share.ts';
import { TWELVE_LOTS } from './twelve-lots.ts';

/** No sheet of a permit set has less than this on it. */
const LEAST = 0.25;

/** What stands alone by its purpose and may have less, by its title, with why. */
const ALONE: readonly { readonly title: RegExp; readonly papers: readonly Paper[]; readonly least: number }[] = [
  // Few cuts, at the largest standard scale that goes onto the sheet.
  { title: /^Sections(, 2 of 2)?$/, papers: PAPERS, least: 0.17 },
  // The diagram is read alone where the paper has no room for a table beside it.
  { title: /^Supply one-line( \d of \d)?$/, papers: ['tabloid'], least: 0.15 },
  // A lot of one long canopy lies across the middle of its sheet.
  { title: /^Raceway and drop plan$/, papers: ['ANSI D'], least: 0.22 },
  // Where the index of a large set leaves the cover no room for it.
  { title: /^Legend, symbols and abbreviations$/, papers: ['ANSI D'], least: 0.22 },
];

/** Sheets that a permit set has not, or that have more on them there; no other sheet of these sets has less than `LEAST`. */
const ALONE_IN_OTHERS: typeof ALONE = [
  // A handful of stalls at the largest scale that a plan is drawn to.
  { title: /^Raised view$/, papers: ['ANSI D'], least: 0.2 },
  // A record of the work has no load calculation to stand beside it.
  { title: /^Supply one-line$/, papers: ['ANSI D'], least: 0.19 },
  // Without the strings that a permit set of such a lot has.
  { title: /^Raceway and drop plan$/, papers: ['ANSI D'], least: 0.19 },
  // Where a long table ends.
  { title: /^Schedules: takeoff$/, papers: ['tabloid'], least: 0.18 },
  { title: /^Scope and notes, continued$/, papers: ['tabloid'], least: 0.22 },
];

const leastOf = (paper: Paper, { title }: DrawnSheet, alone = ALONE): number =>
  alone.find((one) => one.title.test(title) && one.papers.includes(paper))?.least ?? LEAST;

describe.each(PAPERS)('a permit set on %s', (paper) => {
  test.each(TWELVE_LOTS)('of %s has no sheet that is nearly empty', async (_, file) => {
    const sheets = await drawnSheets(toSite({ ...file, drawings: { ...file.drawings, purpose: 'permit' } }), paper);
    expect(sheets.length).toBeGreaterThan(3);
    const sparse = sheets.flatMap((sheet) => {
      const filled = filledOf(sheet, paper);
      return filled < leastOf(paper, sheet) ? [`${sheet.number} ${sheet.title}: ${filled.toFixed(2)}`] : [];
    });
    expect(sparse).toEqual([]);
  });
});

const OTHERS = (['bid', 'construction', 'as-built'] as const).flatMap((purpose) =>
  PAPERS.map((paper) => [purpose, paper] as const),
);
const ALL_ALONE = [...ALONE_IN_OTHERS, ...ALONE];

describe.each(OTHERS)('a set for %s on %s', (purpose, paper) => {
  test.each(TWELVE_LOTS)('of %s has no sheet that is nearly empty', async (_, file) => {
    const sheets = await drawnSheets(toSite({ ...file, drawings: { ...file.drawings, purpose } }), paper);
    const sparse = sheets.flatMap((sheet) => {
      const filled = filledOf(sheet, paper);
      return filled < leastOf(paper, sheet, ALL_ALONE) ? [`${sheet.number} ${sheet.title}: ${filled.toFixed(2)}`] : [];
    });
    expect(sparse).toEqual([]);
  });
});

test('one line of words is a nearly empty sheet', () => {
  const { field } = sheetShape('ANSI D');
  const corners: readonly Point2[] = [
    [field.x, field.y],
    [field.x + field.width, field.y],
  ];
  const sheet = { texts: [{ corners }], strokes: [] } as unknown as DrawnSheet;
  expect(filledOf(sheet, 'ANSI D')).toBeCloseTo(1 / FILLED_ROWS, 6);
});
