import { printTotal } from '../../routing/site/numbers/feet-inches.ts';
import type { Units } from '../../routing/site/schema/vocabulary.ts';

/** A quantity with its unit, for a column of figures: lengths in whole feet or tenths of a meter, counts whole. */
export function quantityWords(quantity: number, unit: string, units: Units): string {
  if (unit === 'ft') return printTotal(quantity, units);
  const decimals = Number.isInteger(Number(quantity.toFixed(6))) ? 0 : 1;
  const digits = quantity.toLocaleString('en-US', { minimumFractionDigits: decimals, maximumFractionDigits: decimals });
  return `${digits} ${unit}`;
}

/** A force or weight: to the tenth under 100 lb, else to the pound. */
export const pounds = (value: number): string =>
  `${value.toLocaleString('en-US', { maximumFractionDigits: Math.abs(value) < 100 ? 1 : 0 })} lb`;
