import Papa from 'papaparse';
import { INVENTED_LIST } from './invented-list.ts';
import { type Allowance, type CrewMember, keyOf, type PriceRow, type Quote } from './price-list.ts';
import { COLUMNS, type MORE_COLUMNS } from './price-sheet.ts';
import { RATE_FACTS, RATES, type Rate } from './rates.ts';
import { amountIn, dayIn, unguarded, unitIn } from './read-cells.ts';

const MOST_LINES = 200_000;

export interface PriceError {
  /** Such as `line 12, hours`. */
  readonly place: string;
  readonly says: string;
}

/** What stands in a price file, line by line; hours that a line does not give are null. */
export interface ReadLines {
  readonly rows: (Omit<PriceRow, 'hours'> & { readonly hours: number | null })[];
  readonly rates: { [rate in Rate]?: number };
  readonly crew: CrewMember[];
  readonly quotes: Quote[];
  readonly allowances: Allowance[];
  readonly exclusions: string[];
  bidDay?: string;
  readonly errors: PriceError[];
  /** The columns are there, so that its lines were read. */
  readonly isTable: boolean;
}

type Column = (typeof COLUMNS)[number] | (typeof MORE_COLUMNS)[number];

/** Other names that suppliers give the columns. */
const ALSO: Readonly<Record<string, Column>> = {
  description: 'item',
  product: 'item',
  specification: 'spec',
  size: 'spec',
  uom: 'unit',
  per: 'unit',
  'unit of measure': 'unit',
  price: 'material',
  'unit price': 'material',
  'net price': 'material',
  cost: 'material',
  'material ($)': 'material',
  'labor hours': 'hours',
  'hours a unit': 'hours',
  'valid through': 'valid until',
};

/** The unit in which an item is counted, as far as the list that is there from the start has it. */
const unitOfItem = (item: string): PriceRow['unit'] | undefined =>
  INVENTED_LIST.rows.find((row) => row.item === item)?.unit;

const RATE_OF: ReadonlyMap<string, Rate> = new Map(RATES.map((rate) => [RATE_FACTS[rate].words, rate]));

/** The lines of a price file, with every fault at its line. Where `wantsHours`, a column of hours has to be there. */
export function priceLines(text: string, wantsHours: boolean): ReadLines {
  const { data, errors: broken } = Papa.parse<string[]>(text.replace(/^\ufeff/, ''), { skipEmptyLines: false });
  const errors: PriceError[] = broken
    // One column alone has no comma to tell by; the missing columns are told below.
    .filter(({ code }) => code !== 'UndetectableDelimiter')
    .map(({ row, message }) => ({ place: `line ${(row ?? 0) + 1}`, says: message }));
  const head = (data[0] ?? []).map((cell) => {
    const name = unguarded(cell.trim()).toLowerCase();
    return Object.hasOwn(ALSO, name) ? ALSO[name]! : name;
  });
  for (const column of COLUMNS) {
    const count = head.filter((cell) => cell === column).length;
    if (count > 1 || (count === 0 && (column !== 'hours' || wantsHours)))
      errors.push({ place: 'line 1', says: `expected one column "${column}"` });
  }
  if (data.length > MOST_LINES)
    errors.push({ place: `line ${MOST_LINES}`, says: `a list may have ${MOST_LINES} lines` });
  const read: ReadLines = {
    rows: [],
    rates: {},
    crew: [],
    quotes: [],
    allowances: [],
    exclusions: [],
    errors,
    isTable: errors.length === 0,
  };
  if (!read.isTable) return read;
  const lines = new Map<string, number>();
  data.slice(1).forEach((cells, i) => {
    if (cells.every((cell) => cell.trim() === '')) return;
    const field = (column: Column): string => unguarded((cells[head.indexOf(column)] ?? '').trim());
    readLine(read, i + 2, field, lines);
  });
  return read;
}

function readLine(read: ReadLines, line: number, field: (column: Column) => string, lines: Map<string, number>): void {
  const { errors } = read;
  const fault = (column: Column | null, says: string): void => {
    errors.push({ place: column === null ? `line ${line}` : `line ${line}, ${column}`, says });
  };
  const [item, spec] = [field('item'), field('spec')];
  if (item === '') {
    fault('item', 'missing');
    return;
  }
  const key = keyOf(item, spec);
  const before = lines.get(key);
  if (before !== undefined) fault(null, `${item} ${spec} is priced on line ${before} too`);
  lines.set(key, line);
  const value = (column: 'material' | 'hours'): number | null => {
    const words = field(column);
    if (words === '') return null;
    const number = amountIn(words);
    if (number === null || number < 0) fault(column, `expected a number of 0 or more, got "${words}"`);
    return number;
  };
  const material = (): number => {
    if (field('material') === '') fault('material', 'missing');
    return value('material') ?? 0;
  };
  switch (item) {
    case 'rate': {
      const rate = RATE_OF.get(spec);
      if (rate) read.rates[rate] = material();
      else fault('spec', `no rate "${spec}"; the rates are ${[...RATE_OF.keys()].join('; ')}`);
      return;
    }
    case 'crew':
      read.crew.push({ trade: spec, wage: material(), count: value('hours') ?? 1 });
      return;
    case 'allowance':
      read.allowances.push({ name: spec, dollars: material() });
      return;
    case 'exclusion':
      read.exclusions.push(spec);
      return;
    case 'bid day': {
      const day = dayIn(spec);
      if (day === null) fault('spec', `expected a day such as 2026-12-31, got "${spec}"`);
      else read.bidDay = day;
      return;
    }
    case 'quote': {
      const covers = field('covers')
        .split(';')
        .flatMap((words) => words.trim() || []);
      if (covers.length === 0) fault('covers', 'expected the items that the quote covers, with ; between them');
      const until = field('valid until');
      const validUntil = until === '' ? undefined : dayIn(until);
      if (validUntil === null) fault('valid until', `expected a day such as 2026-12-31, got "${until}"`);
      read.quotes.push({ name: spec, material: material(), covers, ...(validUntil && { validUntil }) });
      return;
    }
  }
  const found = unitIn(field('unit'));
  if (!found) {
    fault('unit', `expected ft, each, C or M, got "${field('unit')}"`);
    return;
  }
  const unit = found.unit ?? unitOfItem(item);
  if (!unit) {
    fault('unit', `"${field('unit')}" of what? Write ${field('unit')} ft or ${field('unit')} each`);
    return;
  }
  const hours = value('hours');
  read.rows.push({
    item,
    spec,
    unit,
    material: material() / found.of,
    hours: hours === null ? null : hours / found.of,
  });
}
