import Papa from 'papaparse';
import {
  type Allowance,
  type CrewMember,
  priceKey,
  type Quote,
  type SupplierWord,
  type UnknownLine,
} from './price-list.ts';
import { type MORE_COLUMNS, NOTHING, PRICE_COLUMNS } from './price-sheet.ts';
import { RATE_FACTS } from './rate-facts.ts';
import { RATES, type Rate } from './rates.ts';
import { amountIn, dayIn, unguarded, unitIn } from './read-cells.ts';
import { unitOfItem } from './supplier-words.ts';

const MOST_LINES = 200_000;

export interface PriceError {
  /** Such as `line 12, hours`. */
  readonly place: string;
  readonly says: string;
}

/** A line as it stands: in our words or in a supplier's, with its part number where there is one. */
export interface ReadLine extends UnknownLine {
  readonly item: string;
  readonly spec: string;
  readonly line: number;
  /** Its unit as it is written. */
  readonly per: string;
}

/** What stands in a price file, line by line; hours that a line does not give are null. */
export interface ReadLines {
  readonly rows: ReadLine[];
  readonly words: SupplierWord[];
  readonly unknown: UnknownLine[];
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

type Column = (typeof PRICE_COLUMNS)[number] | (typeof MORE_COLUMNS)[number];

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
  'part number': 'part',
  'part no': 'part',
  'part no.': 'part',
  'part #': 'part',
  'item number': 'part',
  'item no': 'part',
  'item no.': 'part',
  'item #': 'part',
  'stock number': 'part',
  'catalog number': 'part',
  'catalog no.': 'part',
  sku: 'part',
  'supplier words': 'called',
  "supplier's words": 'called',
};

const RATE_OF: ReadonlyMap<string, Rate> = new Map(RATES.map((rate) => [RATE_FACTS[rate].words, rate]));

/** Columns that a supplier's list may lack. */
const OWN: ReadonlySet<string> = new Set(['spec', 'hours']);

/** The columns by our names. An `item` beside a description is the number under which a supplier has it. */
function columnsOf(cells: readonly string[]): readonly string[] {
  const names = cells.map((cell) => unguarded(cell.trim()).toLowerCase());
  const isNumbered = names.includes('item') && names.some((name) => name === 'description' || name === 'product');
  return names.map((name) => {
    if (isNumbered && name === 'item') return 'part';
    return Object.hasOwn(ALSO, name) ? ALSO[name]! : name;
  });
}

/** The lines of a price file, with every fault at its line. Where `isOwn`, columns of specs and hours have to be there. */
export function priceLines(text: string, isOwn: boolean): ReadLines {
  const { data, errors: broken } = Papa.parse<string[]>(text.replace(/^\ufeff/, ''), { skipEmptyLines: false });
  const errors: PriceError[] = broken
    // One column alone has no comma to tell by; the missing columns are told below.
    .filter(({ code }) => code !== 'UndetectableDelimiter')
    .map(({ row, message }) => ({ place: `line ${(row ?? 0) + 1}`, says: message }));
  const head = columnsOf(data[0] ?? []);
  for (const column of PRICE_COLUMNS) {
    const count = head.filter((cell) => cell === column).length;
    if (count > 1 || (count === 0 && (!OWN.has(column) || isOwn)))
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
    words: [],
    unknown: [],
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
  const key = priceKey(item, spec);
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
    case 'called': {
      const means = field('means');
      // One that nobody has answered is asked again.
      if (means === '') return;
      const [, as = '', of = ''] = /^([^,]+), *(.+)$/.exec(means) ?? [];
      if (means !== NOTHING && as === '')
        fault('means', `expected an item and its spec, such as raceway, EMT 3/4 in, or ${NOTHING}; got "${means}"`);
      else
        for (const theirs of [field('part'), spec]) if (theirs !== '') read.words.push({ theirs, item: as, spec: of });
      return;
    }
    case 'not known':
      read.unknown.push({
        theirs: spec,
        ...(field('part') !== '' && { part: field('part') }),
        unit: unitIn(field('unit'))?.unit ?? null,
        material: material(),
        hours: value('hours'),
      });
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
  const hours = value('hours');
  const part = field('part');
  if (field('called') !== '') read.words.push({ theirs: field('called'), item, spec });
  read.rows.push({
    item,
    spec,
    theirs: spec === '' ? item : `${item} ${spec}`,
    ...(part !== '' && { part }),
    line,
    per: field('unit'),
    unit: found.unit ?? unitOfItem(item) ?? null,
    material: material() / found.of,
    hours: hours === null ? null : hours / found.of,
  });
}
