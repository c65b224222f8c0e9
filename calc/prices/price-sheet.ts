import type { PriceList, SupplierWord } from './price-list.ts';
import { RATE_FACTS } from './rate-facts.ts';
import { RATES } from './rates.ts';

export const PRICE_COLUMNS = ['item', 'spec', 'unit', 'material', 'hours'] as const;
/** Columns that a list may have besides. */
export const MORE_COLUMNS = ['covers', 'valid until', 'means', 'part', 'called'] as const;

type Row = readonly (string | number)[];

/**
 * A price list as rows of cells, as `readPrices` reads them. What is no price of an item stands in it under an item of its
 * own: `rate` (its name as the spec, its value as the material), `crew` (trade, wage, hands), `quote`, `allowance`,
 * `exclusion`, `bid day`, `called` (what a supplier's words mean), `not known` (a line whose words nobody has matched).
 */
export function priceSheet(list: PriceList): readonly Row[] {
  const {
    rows,
    rates,
    crew = [],
    quotes = [],
    allowances = [],
    exclusions = [],
    bidDay,
    words = [],
    unknown = [],
  } = list;
  const ownRates = RATES.filter((rate) => rates[rate] !== undefined && !(rate === 'labor' && crew.length > 0));
  const besides: readonly Row[] = [
    ...ownRates.map((rate): Row => ['rate', RATE_FACTS[rate].words, '', rates[rate]!, 0]),
    ...crew.map(({ trade, wage, count }): Row => ['crew', trade, 'hour', wage, count]),
    ...quotes.map(
      ({ name, material, covers, validUntil = '' }): Row => [
        'quote',
        name,
        'lump',
        material,
        0,
        covers.join('; '),
        validUntil,
      ],
    ),
    ...allowances.map(({ name, dollars }): Row => ['allowance', name, 'lump', dollars, 0]),
    ...exclusions.map((words): Row => ['exclusion', words, '', 0, 0]),
    ...(bidDay === undefined ? [] : [['bid day', bidDay, '', 0, 0] as const]),
  ];
  const wide: readonly string[] =
    words.length + unknown.length > 0
      ? MORE_COLUMNS.filter((column) => column !== 'called')
      : quotes.length > 0
        ? ['covers', 'valid until']
        : [];
  return [
    [...PRICE_COLUMNS, ...wide],
    ...besides,
    ...words.map((word): Row => ['called', word.theirs, '', 0, 0, '', '', meansOf(word)]),
    ...unknown.map(
      ({ theirs, part = '', unit, material, hours }): Row => [
        'not known',
        theirs,
        unit ?? '',
        material,
        hours ?? '',
        '',
        '',
        '',
        part,
      ],
    ),
    ...rows.map(({ item, spec, unit, material, hours }): Row => [item, spec, unit, material, hours]),
  ];
}

/** What words mean that are nothing here. */
export const NOTHING = 'nothing';

/** `conductor, 8 AWG copper THWN-2`; what is nothing here is `nothing`. */
export const meansOf = ({ item, spec }: SupplierWord): string => (item === '' ? NOTHING : `${item}, ${spec}`);
