import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { read, utils, type WorkBook, write } from '@e965/xlsx';
import { strFromU8, unzipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import XLSX_CALC from 'xlsx-calc';
import { alternativeOf } from '../../../calc/plan/compared/alternative.ts';
import type { Alternative } from '../../../calc/plan/compared/comparison.ts';
import { SUBTOTALS, subtotals } from '../../../calc/plan/compared/subtotals.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import type { PriceList } from '../../../calc/prices/price-list.ts';
import { workbook } from '../../../calc/sheets/workbook/workbook.ts';
import { xlsx } from '../../../calc/sheets/xlsx.ts';
import { whatIf } from '../../../calc/takeoff/bid/what-if.ts';
import { plannedSample } from './planned-samples.ts';

// What the evaluator lacks, as the standard has them (ISO/IEC 29500-1, 18.17.7).
XLSX_CALC.import_functions(
  {
    ROUNDUP: (value: number, digits: number) =>
      Math.sign(value) * (Math.ceil(Math.abs(value) * 10 ** digits) / 10 ** digits),
    // Its own takes the 1.005 that a double holds for less than a half; spreadsheets round the fifteen figures they show.
    ROUND: (value: number, digits: number) => {
      const whole = Math.round(Number((Math.abs(value) * 10 ** digits).toPrecision(15)));
      return (Math.sign(value) * whole) / 10 ** digits;
    },
    // Its own takes numbers alone.
    SUMIF: (range: readonly unknown[][], wanted: unknown, sums: readonly number[][]) =>
      range.flat().reduce((sum: number, one, place) => sum + (one === wanted ? (sums.flat()[place] ?? 0) : 0), 0),
    REPT: (words: string, times: number) => words.repeat(times),
    LN: Math.log,
  },
  { override: true },
);

const LIST: PriceList = { ...INVENTED_LIST, allowances: [{ name: 'signs', dollars: 1234.5 }] };
const site = (name: string) => plannedSample(name).site;
const yard = alternativeOf('yard', site('fleet-yard'), LIST);
const pedestals = alternativeOf('pedestals', site('library-pedestals'), LIST);
const lot = alternativeOf('lot', site('library-lot'), {
  ...LIST,
  // Nothing prices retractors, and a quote is in it.
  rows: LIST.rows.filter(({ item }) => item !== 'retractor'),
  quotes: [{ name: 'gear', material: 12_345.67, covers: ['panelboard', 'breaker'], validUntil: '2026-12-31' }],
});

/** The workbook without what its formulas come to. */
async function unworked(priced: Alternative): Promise<WorkBook> {
  const book = read(await xlsx(workbook(priced, [])), { cellFormula: true });
  for (const sheet of Object.values(book.Sheets))
    for (const [at, one] of Object.entries(sheet)) if (!at.startsWith('!') && one.f !== undefined) one.v = undefined;
  return book;
}

const cell = (book: WorkBook, sheet: string, at: string): number => book.Sheets[sheet]![at].v;
/** The place of a line of the bid: its amount. */
function placeOf(book: WorkBook, line: string): string {
  const rows = utils.sheet_to_json<unknown[]>(book.Sheets.bid!, { header: 1 });
  const place = rows.findIndex(([name]) => name === line);
  expect(place, line).toBeGreaterThan(0);
  return `B${place + 1}`;
}
const amount = (book: WorkBook, line: string): number => cell(book, 'bid', placeOf(book, line));
const cents = (dollars: number): number => Math.round(dollars * 100);

function expectPlan(book: WorkBook, priced: Alternative): void {
  const { cost } = priced;
  for (const [line, dollars] of [
    ['material', cost.material],
    ['labor', cost.labor],
    ['sum of rows', cost.cost],
    ['direct cost', cost.direct],
    ['contingency', cost.contingency],
    ['overhead', cost.overhead],
    ['margin', cost.margin],
    ['bonds', cost.bond],
    ['price', cost.price],
    ...cost.additions.map(({ name, dollars: added }) => [name, added] as const),
    ...SUBTOTALS.flatMap((by) => subtotals(priced, by).map((sum) => [`by ${by}: ${sum.name}`, sum.cost] as const)),
  ] as const)
    expect(cents(amount(book, line)), line).toBe(cents(dollars));
}

describe.each([
  ['pedestals', pedestals],
  ['a lot with a quote and without a price', lot],
])('the workbook of %s', (_, priced) => {
  test('is worked by another program to the totals of the plan, to the cent', async () => {
    const book = await unworked(priced);
    XLSX_CALC(book);
    expectPlan(book, priced);
  });
  test('has what its formulas come to beside them', async () => {
    expectPlan(read(await xlsx(workbook(priced, []))), priced);
  });
});

test('who changes a price, a rate or fills in what has none changes the total', async () => {
  const book = await unworked(lot);
  const rows = utils.sheet_to_json<unknown[]>(book.Sheets.cost!, { header: 1 });
  expect(rows[1]![0]).toBe('retractor');
  book.Sheets.cost!.G2 = { t: 'n', v: 250 };
  book.Sheets.cost!.I2 = { t: 'n', v: 1.5 };
  const tax = utils
    .sheet_to_json<unknown[]>(book.Sheets.rates!, { header: 1 })
    .findIndex(([name]) => name === 'tax, share of material');
  book.Sheets.rates![`B${tax + 1}`] = { t: 'n', v: 0.1 };
  XLSX_CALC(book);
  const list: PriceList = {
    ...lot.cost.list,
    rows: [...lot.cost.list.rows, { item: 'retractor', spec: 'cord', unit: 'each', material: 250, hours: 1.5 }],
    rates: { ...lot.cost.list.rates, tax: 0.1 },
  };
  const priced = alternativeOf('lot', lot.site, list);
  const { cost } = priced;
  // Whatever is summed, by system, phase, panel and area: what was filled in is in all of it.
  expectPlan(book, priced);
  expect(cost.price).toBeGreaterThan(lot.cost.price + 16 * 250);
});

test('who changes the factor of a ladder changes the sums by panel and area as a plan with that factor has them', async () => {
  const book = await unworked(pedestals);
  const place = utils
    .sheet_to_json<unknown[]>(book.Sheets.rates!, { header: 1 })
    .findIndex(([name]) => name === 'height factor on hours');
  book.Sheets.rates![`B${place + 1}`] = { t: 'n', v: 1.9 };
  XLSX_CALC(book);
  expectPlan(book, alternativeOf('pedestals', pedestals.site, { ...LIST, rates: { ...LIST.rates, height: 1.9 } }));
});

test('every sheet has a filter, its head on each printed page, one page across, and names', async () => {
  const tables = workbook(lot, [{ name: 'feeder-options', rows: [['a'], [1]] }]);
  const entries = unzipSync(await xlsx(tables));
  const text = (name: string): string => strFromU8(entries[name]!);
  tables.forEach(({ name }, i) => {
    const xml = text(`xl/worksheets/sheet${i + 1}.xml`);
    expect(xml, name).toMatch(/<autoFilter ref="A1:[A-Z]+\d+"\/>/);
    expect(xml).toContain('fitToWidth="1" fitToHeight="0"');
    expect(xml).toContain('<pageSetUpPr fitToPage="1"/>');
    expect(text('xl/workbook.xml')).toContain(`localSheetId="${i}">'${name}'!$1:$1<`);
  });
  const { Workbook } = read(await xlsx(tables));
  const names = Workbook!.Names!.map(({ Name }) => Name);
  for (const name of ['price', 'direct_cost', 'rate_labor', 'rate_tax']) expect(names).toContain(name);
});

describe('what if', () => {
  test('moves the price as an estimate with that change does', () => {
    const { cost } = pedestals;
    const byName = new Map(whatIf(cost).map((one) => [one.name, one]));
    const repriced = (change: (list: PriceList) => PriceList): number =>
      alternativeOf('pedestals', pedestals.site, change(LIST)).cost.price - cost.price;
    const dearer = repriced((list) => ({
      ...list,
      rows: list.rows.map((row) => (/\bcopper\b/.test(row.spec) ? { ...row, material: row.material * 1.2 } : row)),
    }));
    expect(byName.get('copper')!.moves).toBeCloseTo(dearer, 0);
    const { crew: _, ...without } = LIST;
    const hour = repriced(() => ({ ...without, rates: { ...LIST.rates, labor: LIST.rates.labor * 1.1 } }));
    expect(Math.abs(byName.get('labor rate')!.moves - hour)).toBeLessThan(2);
  });
  test('shows the five lines that move it most, the larger first, as bars that are worked', async () => {
    const cases = whatIf(pedestals.cost);
    expect(cases).toHaveLength(7);
    expect(cases.map(({ moves }) => moves)).toEqual(cases.map(({ moves }) => moves).sort((a, b) => b - a));
    const largest = Math.max(...pedestals.cost.rows.map(({ cost }) => cost));
    const dearest = pedestals.cost.rows.find(({ cost }) => cost === largest)!;
    expect(cases.some(({ name }) => name === `${dearest.item}, ${dearest.spec}`)).toBe(true);
    const book = await unworked(pedestals);
    XLSX_CALC(book);
    cases.forEach(({ moves }, i) => {
      expect(cell(book, 'what-if', `E${i + 2}`)).toBeCloseTo(moves, 6);
    });
    expect(book.Sheets['what-if']!.F2.v).toBe('█'.repeat(40));
  });
});

/** LibreOffice, where it is installed. */
const office = ['soffice', 'libreoffice'].find((name) => {
  try {
    execFileSync('which', [name]);
    return true;
  } catch {
    return false;
  }
});

test.skipIf(office === undefined)(
  'a spreadsheet program opens it and works it to the totals of the plan, to the cent',
  async () => {
    const folder = mkdtempSync(join(tmpdir(), 'overrow-workbook-'));
    try {
      const convert = (book: Uint8Array): WorkBook => {
        writeFileSync(join(folder, 'in.xlsx'), book);
        execFileSync(
          office!,
          [
            `-env:UserInstallation=file://${folder}/profile`,
            '--headless',
            '--convert-to',
            'ods',
            '--outdir',
            folder,
            join(folder, 'in.xlsx'),
          ],
          { stdio: 'ignore' },
        );
        return read(readFileSync(join(folder, 'in.ods')));
      };
      const book = convert(await xlsx(workbook(yard, []), { withValues: false }));
      expectPlan(book, yard);
      // One price doubled: the total moves by what a dollar of material comes to in it.
      const changed = read(await xlsx(workbook(yard, []), { withValues: false }), {
        cellFormula: true,
        cellStyles: true,
      });
      const before = cell(changed, 'cost', 'G2');
      const many = cell(changed, 'cost', 'D2');
      changed.Sheets.cost!.G2 = { t: 'n', v: before * 2 };
      const moved = amount(convert(write(changed, { type: 'buffer', bookType: 'xlsx' })), 'price') - yard.cost.price;
      expect(Math.abs(moved - before * many * yard.cost.multipliers.material)).toBeLessThan(0.05);
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  },
);
