import { INVENTED_LIST } from './invented-list.ts';
import { type PriceError, priceLines, type ReadLines } from './price-lines.ts';
import type { PriceList, PriceRow, SupplierWord } from './price-list.ts';
import { RATE_FACTS } from './rate-facts.ts';
import { crewRate, NEEDED_RATES, type Rates } from './rates.ts';
import { dictionaryOf, isOurs, laid, meaningOf, ourLine, ourWords } from './supplier-words.ts';

export type { PriceError } from './price-lines.ts';

export type PricesRead =
  | { readonly ok: true; readonly list: PriceList }
  | { readonly ok: false; readonly errors: readonly PriceError[] };

/** Longest text that is read, in characters: a hundred thousand lines of the usual length. */
export const MOST_PRICE_CHARACTERS = 5_000_000;
/** So many faults are told one by one. */
const MOST_FAULTS = 1000;

/**
 * A price list from CSV with the columns item, spec, unit, material, hours in any order; spec `*` is any spec of its item,
 * `400 to 600 A` a range, `at 600 A` a point of a curve. Amounts with a currency sign and commas, by the each, foot,
 * hundred (`C`) or thousand (`M`). A list without any rate is a supplier's: given `over`, it is laid over that list, whose
 * hours, rates and other lines stay; words of its own and part numbers are looked up among `words`, and lines that are not
 * known stay apart. All faults at once, each with its line: a missing column, a price that is no number
 * or below 0, an item priced twice, a missing rate.
 * @example
 * // By definition: a list has four rates, and here is none
 * readPrices('item,spec,unit,material,hours', 'mine').errors.length // 4
 */
export function readPrices(text: string, name: string, over?: PriceList): PricesRead {
  if (text.length > MOST_PRICE_CHARACTERS) {
    const most = (MOST_PRICE_CHARACTERS / 1e6).toFixed(0);
    const says = `a list may have ${most} million characters, and this has ${(text.length / 1e6).toFixed(1)} million`;
    return { ok: false, errors: [{ place: '', says }] };
  }
  const read = priceLines(text, over === undefined);
  const isSuppliers = over !== undefined && Object.keys(read.rates).length === 0 && read.crew.length === 0;
  const list = isSuppliers ? laidOver(read, name, over) : wholeList(read, name, over?.words);
  const { errors } = read;
  if (errors.length === 0) return { ok: true, list };
  if (errors.length <= MOST_FAULTS) return { ok: false, errors };
  const more = (errors.length - MOST_FAULTS).toLocaleString('en-US');
  return { ok: false, errors: [...errors.slice(0, MOST_FAULTS), { place: '', says: `and ${more} more faults` }] };
}

/** A list that stands by itself, with the suppliers' words that are known; what it lacks is added to the errors. */
function wholeList(read: ReadLines, name: string, known?: readonly SupplierWord[]): PriceList {
  const { errors, crew, quotes, allowances, exclusions, bidDay } = read;
  const rates = { ...read.rates };
  if (crew.length > 0 && rates.labor !== undefined)
    errors.push({ place: '', says: `the crew gives the rate "${RATE_FACTS.labor.words}"; take one of them out` });
  if (crew.length > 0) rates.labor = crewRate(crew, rates.burden ?? 0);
  if (errors.length === 0 || read.isTable)
    for (const rate of NEEDED_RATES)
      if (rates[rate] === undefined)
        errors.push({ place: '', says: `no row gives the rate "${RATE_FACTS[rate].words}"` });
  const dictionary = dictionaryOf([...(known ?? []), ...read.words]);
  return {
    name,
    rows: read.rows.flatMap(({ item, spec, unit, material, hours, line, per }): PriceRow[] => {
      if (unit !== null) return [{ item, spec, unit, material, hours: hours ?? 0 }];
      errors.push({ place: `line ${line}, unit`, says: `"${per}" of what? Write ${per} ft or ${per} each` });
      return [];
    }),
    rates: rates as Rates,
    ...(crew.length > 0 && { crew }),
    ...(quotes.length > 0 && { quotes }),
    ...(allowances.length > 0 && { allowances }),
    ...(exclusions.length > 0 && { exclusions }),
    ...(bidDay !== undefined && { bidDay }),
    ...(dictionary.size > 0 && { words: [...dictionary.values()] }),
    ...(read.unknown.length > 0 && { unknown: read.unknown.slice(0, MOST_UNKNOWN) }),
  };
}

/** So many lines of unknown words are kept; a catalog has more of what no job needs. */
const MOST_UNKNOWN = 5000;

/**
 * A supplier's prices in place of those of a list: hours that they do not give are those that the list has for the same.
 * Lines in words that are not known here price nothing until it is said what they mean.
 */
function laidOver(read: ReadLines, name: string, over: PriceList): PriceList {
  const words = [...(over.words ?? []), ...read.words];
  const dictionary = dictionaryOf(words);
  const rows: PriceRow[] = [];
  const unknown = new Map((over.unknown ?? []).map((line) => [line.theirs, line]));
  for (const { item, spec, line: _, per: __, ...line } of read.rows) {
    const means = meaningOf(dictionary, line);
    const { unit } = line;
    const isKnown = means === undefined && unit !== null && isOurs(over.rows, { item, spec, unit });
    const ours = isKnown ? { item, spec } : (means ?? ourWords(over.rows).get(line.theirs));
    const row = ours === undefined || ours.item === '' ? null : ourLine(over.rows, line, ours);
    if (row !== null) {
      rows.push(row);
      unknown.delete(line.theirs);
    } else if (ours === undefined || ours.item !== '') unknown.set(line.theirs, line);
  }
  for (const line of read.unknown) if (meaningOf(dictionary, line) === undefined) unknown.set(line.theirs, line);
  const isNothing = rows.length === 0 && read.rows.length === 0;
  const still = [...unknown.values()].slice(0, MOST_UNKNOWN);
  return {
    ...over,
    name: isNothing ? over.name : over.name.endsWith(INVENTED_LIST.name) ? `${name}, else ${INVENTED_LIST.name}` : name,
    rows: laid(over.rows, rows),
    ...(words.length > 0 && { words: [...dictionary.values()] }),
    ...(still.length > 0 && { unknown: still }),
    ...(read.quotes.length > 0 && { quotes: [...(over.quotes ?? []), ...read.quotes] }),
    ...(read.allowances.length > 0 && { allowances: [...(over.allowances ?? []), ...read.allowances] }),
    ...(read.exclusions.length > 0 && { exclusions: [...(over.exclusions ?? []), ...read.exclusions] }),
    ...(read.bidDay !== undefined && { bidDay: read.bidDay }),
  };
}
