import { fromFeet } from '../../../routing/site/numbers/units.ts';
import type { Site } from '../../../routing/site/site.ts';
import { counted } from '../../../routing/words/counted.ts';
import { bidLines } from '../../takeoff/bid/bid-lines.ts';
import { type CostSheet, doubtOf, type StandingQuote, SYSTEMS } from '../../takeoff/bid/cost.ts';
import { CAUTIONS } from '../../words/cautions.ts';
import type { Cell } from '../csv.ts';

/** A priced row for each item with the line that prices it, what has no price, then the sums down to the price. */
export function costSheet({ units }: Pick<Site, 'units'>, cost: CostSheet): readonly (readonly Cell[])[] {
  const amount = (quantity: number, unit: string): [Cell, Cell] =>
    unit === 'ft' ? [Number(fromFeet(quantity, units).toFixed(4)), units] : [quantity, unit];
  const blank = (words: string, dollars: Cell): Cell[] => [words, null, null, null, null, null, null, null, dollars];
  const head = [
    'item',
    'spec',
    'quantity',
    'unit',
    'system',
    'material ($)',
    'hours',
    'labor ($)',
    'cost ($)',
    'price line used',
    'in doubt',
    'bought',
  ];
  return [
    head,
    ...cost.rows.map((row): Cell[] => [
      row.item,
      row.spec,
      ...amount(row.quantity, row.unit),
      row.system,
      row.material,
      Number(row.hours.toFixed(3)),
      row.labor,
      row.cost,
      row.line,
      doubtOf(row),
      amount(row.bought, row.unit)[0],
    ]),
    ...cost.missing.map(({ item, spec, quantity, unit }): Cell[] => [
      item,
      spec,
      ...amount(quantity, unit),
      null,
      null,
      null,
      null,
      'no price',
    ]),
    [],
    ...SYSTEMS.map((system) => blank(`sum, ${system}`, cost.bySystem[system])),
    ...bidLines(cost).map(({ name, dollars }) => blank(name, dollars)),
    blank('price per stall served', cost.pricePerStall),
    [],
    ...priceStanding(cost).map((words): Cell[] => [words]),
    [CAUTIONS],
  ];
}

/** What a price stands on, in sentences: the list, what it lacks, what is a guess, until when quotes hold, what is out. */
export function priceStanding(cost: CostSheet): readonly string[] {
  const { prices, missing, guesses, quotes, exclusions, expired, bidDay, list } = cost;
  const { unknown = [] } = list;
  return [
    `Prices: ${prices}.`,
    ...(missing.length > 0
      ? [
          `${counted(missing.length, 'item has', 'items have')} no price and ${missing.length === 1 ? 'is' : 'are'} in no sum.`,
        ]
      : []),
    ...(guesses > 0
      ? [`${counted(guesses, 'row stands', 'rows stand')} on a line for any size or beyond a curve.`]
      : []),
    ...(bidDay === null ? [] : [`Day of the bid: ${bidDay}.`]),
    ...quotes.map((quote) => quoteWords(quote, bidDay)),
    ...(expired > 0
      ? [`${counted(expired, 'row stands', 'rows stand')} on a quote that ran out before the day of the bid.`]
      : []),
    ...(unknown.length > 0
      ? [
          `${counted(unknown.length, 'line', 'lines')} of the price list ${unknown.length === 1 ? 'is' : 'are'} in words that are not known here and price nothing: say what they mean.`,
        ]
      : []),
    ...(exclusions.length > 0 ? [`Not in the price: ${exclusions.join('; ')}.`] : []),
  ];
}

/** How a quote stands on the day of the bid, in a sentence. */
export function quoteWords({ name, validUntil, standing }: StandingQuote, bidDay: string | null): string {
  switch (standing) {
    case 'holds':
      return `Quote ${name}: valid until ${validUntil}.`;
    case 'ran out':
      return `Quote ${name} RAN OUT: it was valid until ${validUntil}, and the bid is of ${bidDay}.`;
    case 'no date of validity':
      return `Quote ${name}: no date of validity.`;
    case 'no day of the bid':
      return `Quote ${name}: valid until ${validUntil}; no day of the bid is given to hold that against.`;
  }
}
