import type { PriceList } from './price-list.ts';
import { RATE_FACTS, RATES } from './rates.ts';

export const COLUMNS = ['item', 'spec', 'unit', 'material', 'hours'] as const;
/** Columns that a list may have besides. */
export const MORE_COLUMNS = ['covers', 'valid until'] as const;

type Row = readonly (string | number)[];

/**
 * A price list as rows of cells, as `readPrices` reads them. What is no price of an item stands in it under an item of its
 * own: `rate` (its name as the spec, its value as the material), `crew` (trade, wage, hands), `quote`, `allowance`,
 * `exclusion`, `bid day`.
 */
export function priceSheet(list: PriceList): readonly Row[] {
  const { rows, rates, crew = [], quotes = [], allowances = [], exclusions = [], bidDay } = list;
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
  const wide = quotes.length > 0 ? MORE_COLUMNS : [];
  return [
    [...COLUMNS, ...wide],
    ...besides,
    ...rows.map(({ item, spec, unit, material, hours }): Row => [item, spec, unit, material, hours]),
  ];
}
