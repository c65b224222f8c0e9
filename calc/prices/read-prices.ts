import Papa from 'papaparse';
import type { PriceRow } from './invented-prices.ts';
import { COLUMNS, keyOf, type PriceList, RATES, type Rates } from './price-list.ts';

export interface PriceError {
  /** Such as `line 12, hours`. */
  readonly place: string;
  readonly says: string;
}

export type PricesRead =
  | { readonly ok: true; readonly list: PriceList }
  | { readonly ok: false; readonly errors: readonly PriceError[] };

const MOST_LINES = 200_000;
/** Longest text that is read, in characters: a hundred thousand lines of the usual length. */
export const MOST_PRICE_CHARACTERS = 5_000_000;
/** So many faults are told one by one. */
const MOST_FAULTS = 1000;

/**
 * A price list from CSV with the columns item, spec, unit, material, hours; spec `*` is any spec of its item. All
 * faults at once, each with its line: a missing column, a price that is no number or below 0, an item priced twice, a
 * missing rate.
 * @example
 * // By definition: a list has four rates, and here is none
 * readPrices('item,spec,unit,material,hours', 'mine').errors.length // 4
 */
export function readPrices(text: string, name: string): PricesRead {
  if (text.length > MOST_PRICE_CHARACTERS) {
    const most = (MOST_PRICE_CHARACTERS / 1e6).toFixed(0);
    const says = `a list may have ${most} million characters, and this has ${(text.length / 1e6).toFixed(1)} million`;
    return { ok: false, errors: [{ place: '', says }] };
  }
  const read = pricesIn(text, name);
  if (read.ok || read.errors.length <= MOST_FAULTS) return read;
  const more = (read.errors.length - MOST_FAULTS).toLocaleString('en-US');
  return { ok: false, errors: [...read.errors.slice(0, MOST_FAULTS), { place: '', says: `and ${more} more faults` }] };
}

function pricesIn(text: string, name: string): PricesRead {
  const { data, errors: broken } = Papa.parse<string[]>(text.replace(/^\ufeff/, ''), { skipEmptyLines: false });
  const errors: PriceError[] = broken.map(({ row, message }) => ({ place: `line ${(row ?? 0) + 1}`, says: message }));
  const head = (data[0] ?? []).map((cell) => cell.trim().toLowerCase());
  for (const column of COLUMNS)
    if (head.filter((cell) => cell === column).length !== 1)
      errors.push({ place: 'line 1', says: `expected one column "${column}"` });
  if (data.length > MOST_LINES)
    errors.push({ place: `line ${MOST_LINES}`, says: `a list may have ${MOST_LINES} lines` });
  if (errors.length > 0) return { ok: false, errors };

  const rows: PriceRow[] = [];
  const rates: Partial<Record<keyof Rates, number>> = {};
  const lines = new Map<string, number>();
  data.slice(1).forEach((cells, i) => {
    const line = i + 2;
    const field = (column: (typeof COLUMNS)[number]): string => unguarded((cells[head.indexOf(column)] ?? '').trim());
    const [item, spec, unit] = [field('item'), field('spec'), field('unit')];
    if (cells.every((cell) => cell.trim() === '')) return;
    if (item === '') {
      errors.push({ place: `line ${line}, item`, says: 'missing' });
      return;
    }
    const key = keyOf(item, spec);
    const before = lines.get(key);
    if (before !== undefined)
      errors.push({ place: `line ${line}`, says: `${item} ${spec} is priced on line ${before} too` });
    lines.set(key, line);
    const value = (column: 'material' | 'hours', otherwise?: number): number => {
      const words = field(column);
      const number = words === '' && otherwise !== undefined ? otherwise : Number(words);
      if (words === '' && otherwise === undefined) errors.push({ place: `line ${line}, ${column}`, says: 'missing' });
      else if (!Number.isFinite(number) || number < 0)
        errors.push({ place: `line ${line}, ${column}`, says: `expected a number of 0 or more, got "${words}"` });
      return number;
    };
    if (item === 'rate') {
      const rate = Object.hasOwn(RATES, spec) ? RATES[spec] : undefined;
      if (rate) rates[rate] = value('material');
      else
        errors.push({
          place: `line ${line}, spec`,
          says: `no rate "${spec}"; the rates are ${Object.keys(RATES).join('; ')}`,
        });
      return;
    }
    if (unit !== 'ft' && unit !== 'each') {
      errors.push({ place: `line ${line}, unit`, says: `expected ft or each, got "${unit}"` });
      return;
    }
    rows.push({ item, spec, unit, material: value('material'), hours: value('hours', 0) });
  });
  for (const [words, rate] of Object.entries(RATES))
    if (rates[rate] === undefined) errors.push({ place: '', says: `no row gives the rate "${words}"` });
  return errors.length > 0 ? { ok: false, errors } : { ok: true, list: { name, rows, rates: rates as Rates } };
}

/** A spreadsheet's guard against formulas, an apostrophe before the text, is no part of a name. */
const unguarded = (text: string): string => (/^'[=+\-@]/.test(text) ? text.slice(1) : text);
