import type { Site } from '../../routing/site/site.ts';
import { type DayFigures, dayFigures, dayFigureWords } from '../day/figures/day-figures.ts';
import { alternativeOf } from '../plan/compared/alternative.ts';
import type { PriceList } from '../prices/price-list.ts';

/** What a proposal comes to where the site has days of charging: they decide beside the price, in the list's money. */
export interface Outlook {
  readonly price: number;
  /** What the site comes to without it. */
  readonly before: number;
  readonly days: readonly DayFigures[];
}

/** Price and days of a site with what is proposed; null where no day of charging can be worked. */
export function outlookOf(before: Site, after: Site, prices: PriceList): Outlook | null {
  const days = dayFigures(after);
  if (days.length === 0) return null;
  return {
    price: alternativeOf('', after, prices).cost.price,
    before: alternativeOf('', before, prices).cost.price,
    days,
  };
}

/** A line for the price and one for each day. */
export const outlookWords = (
  { price, before, days }: Outlook,
  money: (amount: number) => string,
): readonly string[] => [
  `The lot comes to ${money(price)} with it, ${Math.abs(price - before) < 0.005 ? 'as before' : `${price < before ? 'less' : 'more'} by ${money(Math.abs(price - before))}`}.`,
  ...days.map((day) => `Charging ${dayFigureWords(day)}.`),
];
