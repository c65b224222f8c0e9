import { INVENTED_NAME, type PriceList } from '../../calc/prices/price-list.ts';

const form = (digits: number): Intl.NumberFormat =>
  new Intl.NumberFormat('en-US', {
    style: 'currency',
    currency: 'USD',
    minimumFractionDigits: digits,
    maximumFractionDigits: digits,
  });
const CENTS = form(2);
const WHOLE = form(0);

/** `$1,234.50`. */
export const dollars = (value: number): string => CENTS.format(value);

/** A sum by a price list: `$1,234.50`, or `$1,235` where the prices, or some, are invented, whose cents mean nothing. */
export const priceWords = (value: number, { name }: Pick<PriceList, 'name'>): string =>
  (name.endsWith(INVENTED_NAME) && (value === 0 || Math.abs(value) >= 1) ? WHOLE : CENTS).format(value);
