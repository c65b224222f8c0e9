import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isWithinArea, right } from '../../../../../calc/sheets/pdf/kit/area.ts';
import { CELL_PAD, flowTables, type Table, type TablePart } from '../../../../../calc/sheets/pdf/kit/tables/table.ts';
import { drawTable } from '../../../../../calc/sheets/pdf/kit/tables/table-drawing.ts';
import { overlap } from './overlap.ts';
import { plainLettering } from './plain-lettering.ts';
import { watchedPen } from './watched-pen.ts';

const lettering = plainLettering();
const field = { x: 30, y: 20, width: 900, height: 500 };

const cell = fc.string({ unit: fc.constantFrom('a', 'b', ' ', '1'), maxLength: 40 });
const tables = fc.array(
  fc
    .record({ columns: fc.integer({ min: 1, max: 6 }), rows: fc.integer({ min: 1, max: 90 }), foot: fc.boolean() })
    .chain(({ columns, rows, foot }) =>
      fc.array(fc.array(cell, { minLength: columns, maxLength: columns }), { minLength: rows, maxLength: rows }).map(
        (cells): Table => ({
          short: 't',
          title: `Table of ${rows}`,
          columns: Array.from({ length: columns }, (_, i) => ({ head: `Head ${i}`, most: 12 })),
          rows: cells,
          ...(foot ? { foot: ['a line under the end of the table that is long enough to be wrapped'] } : {}),
        }),
      ),
    ),
  { minLength: 1, maxLength: 4 },
);

const partsOf = (list: readonly Table[]): readonly (readonly TablePart[])[] => flowTables(list, field, lettering);

describe('tables over sheets', () => {
  test('every row stands once, in order, under a head of its own table', () => {
    fc.assert(
      fc.property(tables, (list) => {
        const parts = partsOf(list).flat();
        for (const table of list) {
          const mine = parts.filter((part) => part.table === table);
          expect(mine.reduce((sum, { rows }) => sum + rows.length, 0)).toBe(table.rows.length);
          const words = mine.flatMap(({ rows }) => rows.map(({ cells }) => cells.map(({ lines }) => lines.join(''))));
          const plain = (row: readonly unknown[]): string => row.join('|').replaceAll(' ', '');
          expect(words.map(plain)).toEqual(table.rows.map(plain));
          for (const { head } of mine) expect(head.cells).toHaveLength(table.columns.length);
          expect(mine.map(({ title }) => title.includes('(continued)'))).toEqual(mine.map((_, i) => i > 0));
        }
      }),
      { numRuns: 60 },
    );
  });
  test('parts lie in the field and over no other part of their sheet', () => {
    fc.assert(
      fc.property(tables, (list) => {
        for (const page of partsOf(list))
          page.forEach((part, i) => {
            expect(isWithinArea(part.area, field)).toBe(true);
            for (const other of page.slice(i + 1)) expect(overlap(part.area, other.area)).toBe(false);
          });
      }),
      { numRuns: 60 },
    );
  });
  test('a table that is to be whole goes on to the next column rather than apart; one that no column holds is parted', () => {
    const table = (rows: number, isWhole: boolean): Table => ({
      short: 't',
      title: `Panel of ${rows}`,
      isWhole,
      columns: [{ head: 'Head' }],
      rows: Array.from({ length: rows }, (_, i) => [String(i)]),
    });
    const counts = (list: readonly Table[]): readonly number[] =>
      partsOf(list)
        .flat()
        .map(({ rows }) => rows.length);
    expect(counts([table(20, true), table(20, true), table(20, true)])).toEqual([20, 20, 20]);
    expect(counts([table(20, false), table(20, false), table(20, false)]).length).toBeGreaterThan(3);
    expect(counts([table(200, true)]).length).toBeGreaterThan(1);
  });
  test('a table that is wider than the sheet is pressed to its width', () => {
    const wide: Table = {
      short: 'w',
      title: 'Wide',
      columns: Array.from({ length: 12 }, (_, i) => ({ head: `H${i}` })),
      rows: [Array.from({ length: 12 }, () => 'word '.repeat(30))],
    };
    const [[part]] = partsOf([wide]) as [[TablePart]];
    expect(part.widths.reduce((sum, width) => sum + width, 0)).toBeLessThanOrEqual(field.width + 0.01);
  });
});

test('names that run from the right begin at the right edge of their column; others, and figures, stand as they do', () => {
  const rows = [
    ['EV01', '12'],
    ['\u05dc\u05d5\u05d7 \u05d0', '7'],
    ['For \u05d2\u05df', '9'],
    ['\u0644\u0648\u062d\u0629', '8'],
  ];
  const table: Table = {
    short: 'names',
    title: 'Names',
    columns: [
      { head: 'Name', least: 30 },
      { head: 'Number', align: 'right' },
    ],
    rows,
  };
  const [[part] = []] = flowTables([table], { x: 10, y: 10, width: 900, height: 600 }, plainLettering('ANSI D'));
  const { pen, written } = watchedPen('ANSI D');
  drawTable(pen, part!);
  const areaOf = (text: string) => written.find((one) => one.text === text)!.area;
  const [left, edge] = [part!.area.x + CELL_PAD, part!.area.x + part!.widths[0]! - CELL_PAD];
  for (const [name] of rows) {
    const { x, width } = areaOf(name!);
    if (/^[A-Z]/.test(name!)) expect(x).toBeCloseTo(left, 6);
    else expect(x + width).toBeCloseTo(edge, 6);
  }
  const end = right(part!.area) - CELL_PAD;
  for (const [, figure] of rows) expect(areaOf(figure!).x + areaOf(figure!).width).toBeCloseTo(end, 6);
});
