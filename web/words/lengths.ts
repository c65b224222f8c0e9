import { printLength } from '../../routing/site/numbers/feet-inches.ts';
import type { Units } from '../../routing/site/schema/vocabulary.ts';

const INCH = { inchParts: 1, decimals: 2 } as const;

/** A worked-out length to the nearest inch or centimeter; what is drawn or typed is printed to the full by `printLength`. */
export const nearestInch = (feet: number, units: Units): string => printLength(feet, units, INCH);

/** A long length to the nearest foot or centimeter. */
export const nearestFoot = (feet: number, units: Units): string =>
  units === 'm' ? nearestInch(feet, 'm') : `${Math.round(feet).toLocaleString('en-US')}'`;

/** What is left or missing: to the inch, finer where it is little, and never rounded to nothing. */
export function leftLength(feet: number, units: Units): string {
  const size = Math.abs(feet);
  if (size >= 1) return nearestInch(size, units);
  return printLength(size, units, size >= 1 / 12 ? { inchParts: 4, decimals: 2 } : { inchParts: 16, decimals: 3 });
}

/** "3' 10" spare", "1' 4" short"; a length of nothing left is "none spare". */
export function spareOrShort(feet: number, units: Units): string {
  if (feet === Number.NEGATIVE_INFINITY) return 'no way there';
  if (feet === 0) return 'none spare';
  return `${leftLength(feet, units)} ${feet < 0 ? 'short' : 'spare'}`;
}
