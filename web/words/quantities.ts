import { fromFeet } from '../../routing/site/units.ts';
import type { Units } from '../../routing/site/vocabulary.ts';

/** A quantity with its unit, for a column of figures: lengths to a tenth of the site's unit, counts whole. */
export function quantityWords(quantity: number, unit: string, units: Units): string {
  const isLength = unit === 'ft';
  const value = isLength ? fromFeet(quantity, units) : quantity;
  const decimals = isLength || !Number.isInteger(Number(value.toFixed(6))) ? 1 : 0;
  const digits = value.toLocaleString('en-US', { minimumFractionDigits: decimals, maximumFractionDigits: decimals });
  return `${digits} ${isLength ? units : unit}`;
}
