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

const isWhole = (value: number, { name }: Pick<PriceList, 'name'>): boolean =>
  name.endsWith(INVENTED_NAME) && (value === 0 || Math.abs(value) >= 1);

/** A sum by a price list: `$1,234.50`, or `$1,235` where the prices, or some, are invented, whose cents mean nothing. */
export const priceWords = (value: number, list: Pick<PriceList, 'name'>): string =>
  (isWhole(value, list) ? WHOLE : CENTS).format(value);

/** What one sum is more than another as both are written: the words add up. */
export function priceMore(value: number, than: number, list: Pick<PriceList, 'name'>): number {
  const written = (sum: number): number => (isWhole(sum, list) ? Math.round(sum) : Math.round(sum * 100) / 100);
  return Math.round((written(value) - written(than)) * 100) / 100;
}
