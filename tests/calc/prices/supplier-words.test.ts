import { describe, expect, test } from 'vitest';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { lineFor } from '../../../calc/prices/line-for.ts';
import { nearLines } from '../../../calc/prices/near-lines.ts';
import type { PriceList } from '../../../calc/prices/price-list.ts';
import { priceSheet } from '../../../calc/prices/price-sheet.ts';
import { readPrices } from '../../../calc/prices/read-prices.ts';
import { withMeaning, withoutWord } from '../../../calc/prices/supplier-words.ts';
import { priceStanding } from '../../../calc/sheets/cost/cost-sheet.ts';
import { csv } from '../../../calc/sheets/csv.ts';
import { costOf } from '../../../calc/takeoff/bid/cost.ts';

const read = (text: string, over: PriceList): PriceList => {
  const found = readPrices(text, 'supplier.csv', over);
  if (!found.ok) throw new Error(JSON.stringify(found.errors));
  return found.list;
};
const THEIRS = [
  'Item,Description,UOM,Price',
  'W8BK,"8 STR THHN BLK CU, 2500 R",MFT,$498.00',
  'C34,"3/4"" EMT CONDUIT",C,$96.50',
  'X1,FORK LIFT,EA,$9000',
  ',retractor cord,EA,180',
].join('\n');
const WIRE = ['conductor', '8 AWG copper THWN-2'] as const;
const of = (list: PriceList, item: string, spec: string, unit: string) => lineFor(list.rows, item, spec, unit)!;

describe("a supplier's list in words of its own", () => {
  const list = read(THEIRS, INVENTED_LIST);
  const [wire, pipe, lift] = list.unknown!;

  test('is read: what is not known stands apart with its part number and price, and prices nothing', () => {
    expect(list.unknown).toEqual([
      { theirs: '8 STR THHN BLK CU, 2500 R', part: 'W8BK', unit: 'ft', material: 0.498, hours: null },
      { theirs: '3/4" EMT CONDUIT', part: 'C34', unit: null, material: 0.965, hours: null },
      { theirs: 'FORK LIFT', part: 'X1', unit: 'each', material: 9000, hours: null },
    ]);
    // Our own words are taken, with the spec in a column of its own or not.
    expect(of(list, 'retractor', 'cord', 'each').material).toBe(180);
    expect(of(list, ...WIRE, 'ft')).toEqual(of(INVENTED_LIST, ...WIRE, 'ft'));
    expect(priceStanding(costOf([], list, 0)).join(' ')).toContain(
      '3 lines of the price list are in words that are not known',
    );
  });

  const answered = withMeaning(
    withMeaning(withMeaning(list, wire!, ...WIRE), pipe!, 'raceway', 'EMT 3/4 in'),
    lift!,
    '',
    '',
  );
  test('is asked once: what it means is priced at once, with the hours of the list', () => {
    expect(answered.unknown).toEqual([]);
    expect(of(answered, 'conductor', '8 AWG copper THWN-2, black', 'ft')).toMatchObject({
      material: 0.498,
      hours: of(INVENTED_LIST, ...WIRE, 'ft').hours,
    });
    // By the hundred of what was not said: of feet, once it is a raceway.
    expect(of(answered, 'raceway', 'EMT 3/4 in', 'ft').material).toBeCloseTo(0.965, 12);
  });

  test('and known the next time, by part number or by words, in a file or a browser that kept it', () => {
    const keptFile = csv(priceSheet({ ...INVENTED_LIST, words: answered.words! }));
    const again = read(keptFile, INVENTED_LIST);
    expect(again.words).toEqual(answered.words);
    const dearer = read(
      THEIRS.replace('$498', '$612').replace('W8BK,"8 STR THHN BLK CU, 2500 R"', 'W8BK,8 black'),
      again,
    );
    expect(dearer.unknown).toBeUndefined();
    expect(of(dearer, ...WIRE, 'ft').material).toBeCloseTo(0.612, 12);
    const byWords = read(THEIRS.replace('W8BK', 'OTHER'), again);
    expect(byWords.unknown).toBeUndefined();
    const forgotten = withoutWord(withoutWord(again, 'w8bk'), '8 str  thhn blk cu, 2500 r');
    expect(read(THEIRS, forgotten).unknown).toMatchObject([{ part: 'W8BK' }]);
  });

  test('comes back from a file as it was, answered or not', () => {
    for (const one of [list, answered]) {
      const { unknown = [], ...rest } = one;
      const back = read(csv(priceSheet(one)), INVENTED_LIST);
      expect(back).toEqual({ ...rest, name: 'supplier.csv', ...(unknown.length > 0 && { unknown }) });
    }
  });

  test('a column of the own list says what a supplier calls a line', () => {
    const own = read(
      'item,spec,unit,material,hours,called,part\nraceway,EMT 1 in,ft,2,0.05,1 IN EMT 10FT,E100\n',
      INVENTED_LIST,
    );
    expect(own.words).toEqual([{ theirs: '1 IN EMT 10FT', item: 'raceway', spec: 'EMT 1 in' }]);
    const priced = read('Description,UOM,Price\n1 in emt  10ft,C ft,155\n', own);
    expect(of(priced, 'raceway', 'EMT 1 in', 'ft').material).toBeCloseTo(1.55, 12);
  });

  test('is not taken where it is priced by another unit than it is counted in', () => {
    const byStick = read('Description,UOM,Price\nstick of emt,ea,9\n', INVENTED_LIST);
    const line = byStick.unknown![0]!;
    expect(withMeaning(byStick, line, 'raceway', 'EMT 3/4 in')).toBe(byStick);
  });

  test('an answer that names no spec is refused at its line', () => {
    const found = readPrices(
      'item,spec,unit,material,hours,means\ncalled,X,,0,0,raceway\n',
      'words.csv',
      INVENTED_LIST,
    );
    expect(found.ok ? [] : found.errors.map(({ place }) => place)).toEqual(['line 2, means']);
  });
});

describe('what comes near', () => {
  const near = (theirs: string, unit: string | null = null) =>
    nearLines(theirs, unit, INVENTED_LIST.rows).map(({ line }) => `${line.item}, ${line.spec}`);
  test.each([
    ['8 STR THHN BLK CU', 'ft', 'conductor, 8 AWG copper THWN-2'],
    ['#10 SOL CU THWN-2 RED', 'ft', 'conductor, 10 AWG copper THWN-2'],
    ['3/4" EMT CONDUIT 10FT', 'ft', 'raceway, EMT 3/4 in'],
    ['3/4 EMT SS CPLG STEEL', null, null],
    ['1-1/4 in EMT comp conn', 'each', 'connector, EMT 1-1/4 in'],
    ['2 IN SCH 40 PVC PIPE', 'ft', 'raceway, PVC40 2 in'],
    ['BKR 2P 40A BOLT ON', 'each', 'breaker, 2-pole 40 A'],
    ['3 pole 200 amp breaker', 'each', 'breaker, 3-pole 200 A'],
  ])('to %j by the %s is %j first', (theirs, unit, first) => {
    const found = near(theirs, unit);
    if (first === null) expect(found).not.toContain('raceway, EMT 1 in');
    else expect(found[0]).toBe(first);
  });
  test('is nothing of another size or unit', () => {
    expect(near('10 STR THHN CU', 'ft').some((name) => /\b8 AWG/.test(name))).toBe(false);
    expect(near('BKR 2P 50A', 'each')).not.toContain('breaker, 2-pole 40 A');
    expect(near('3/4" EMT CONDUIT', 'each').some((name) => name.startsWith('raceway'))).toBe(false);
    expect(near('FORK LIFT')).toEqual([]);
  });
});
