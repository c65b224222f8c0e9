import { describe, expect, test } from 'vitest';
import type { Area } from '../../../../calc/sheets/pdf/kit/area.ts';
import { PAPERS, type Paper, sheetShape } from '../../../../calc/sheets/pdf/kit/paper.ts';
import type { Point2 } from '../../../../routing/site/site.ts';
import { toSite } from '../../../../routing/site/to-site.ts';
import { type DrawnSheet, drawnSheets } from './drawn-sheets.ts';
import { TWELVE_LOTS } from './twelve-lots.ts';

const COLUMNS = 24;
const ROWS = 16;

/** Share of the field of a sheet, in small rectangles, that some line or letter comes to. */
function filledOf({ texts, strokes }: DrawnSheet, paper: Paper): number {
  const { field } = sheetShape(paper);
  const seen = new Set<number>();
  const along = ([ax, ay]: Point2, [bx, by]: Point2, clip: Area | null): void => {
    const steps = Math.ceil(Math.hypot(bx - ax, by - ay) / 10) + 1;
    for (let i = 0; i <= steps; i++) {
      const [x, y] = [ax + ((bx - ax) * i) / steps, ay + ((by - ay) * i) / steps];
      if (clip && (x < clip.x || x > clip.x + clip.width || y < clip.y || y > clip.y + clip.height)) continue;
      const column = Math.floor(((x - field.x) / field.width) * COLUMNS);
      const row = Math.floor(((y - field.y) / field.height) * ROWS);
      if (column >= 0 && column < COLUMNS && row >= 0 && row < ROWS) seen.add(row * COLUMNS + column);
    }
  };
  for (const { corners } of texts) along(corners[0]!, corners[1]!, null);
  for (const { points, clip } of strokes) for (const [i, at] of points.slice(1).entries()) along(points[i]!, at, clip);
  return seen.size / (COLUMNS * ROWS);
}

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

const leastOf = (paper: Paper, { title }: DrawnSheet): number =>
  ALONE.find((one) => one.title.test(title) && one.papers.includes(paper))?.least ?? LEAST;

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

test('one line of words is a nearly empty sheet', () => {
  const { field } = sheetShape('ANSI D');
  const corners: readonly Point2[] = [
    [field.x, field.y],
    [field.x + field.width, field.y],
  ];
  const sheet = { texts: [{ corners }], strokes: [] } as unknown as DrawnSheet;
  expect(filledOf(sheet, 'ANSI D')).toBeCloseTo(1 / ROWS, 6);
});
