import type { Units } from '../schema/vocabulary.ts';
import { fromFeet } from './units.ts';

/** How finely a length is printed. */
export interface LengthPrecision {
  /** Parts of an inch: 16 prints to a sixteenth. */
  readonly inchParts: number;
  /** Most decimals of a metre; zeros behind the second are left out. */
  readonly decimals: number;
}

const FINE: LengthPrecision = { inchParts: 16, decimals: 3 };

/**
 * A length as people read it in `units`, given in feet: `12' 6 1/2"` to the sixteenth of an inch, or `3.81 m` to the
 * millimetre. `parseLength` reads it back within half of the last part. Not a number gives an en dash.
 */
export function printLength(feet: number, units: Units, precision: LengthPrecision = FINE): string {
  if (!Number.isFinite(feet)) return '\u2013';
  return units === 'm' ? metres(fromFeet(feet, 'm'), precision.decimals) : feetAndInches(feet, precision.inchParts);
}

/**
 * A length added up of many, as it is bought: whole feet, or tenths of a meter; a tenth of a foot where it is less than
 * one. Not a number gives an en dash.
 */
export function printTotal(feet: number, units: Units): string {
  if (!Number.isFinite(feet)) return '\u2013';
  const value = fromFeet(feet, units);
  const decimals = units === 'm' || (value > 0 && value < 1) ? 1 : 0;
  const digits = value.toLocaleString('en-US', { minimumFractionDigits: decimals, maximumFractionDigits: decimals });
  return `${digits} ${units}`;
}

function metres(length: number, decimals: number): string {
  const digits = length.toFixed(decimals);
  const short = digits.replace(/(\.\d\d\d*?)0+$/, '$1');
  return `${unsignedZero(short)} m`;
}

function feetAndInches(feet: number, inchParts: number): string {
  const parts = Math.round(Math.abs(feet) * 12 * inchParts);
  const inches = Math.floor(parts / inchParts);
  const sign = feet < 0 && parts > 0 ? '-' : '';
  const fraction = lowestTerms(parts % inchParts, inchParts);
  return `${sign}${Math.floor(inches / 12)}' ${inches % 12}${fraction}"`;
}

function lowestTerms(over: number, under: number): string {
  if (over === 0) return '';
  let [a, b] = [over, under];
  while (b !== 0) [a, b] = [b, a % b];
  return ` ${over / a}/${under / a}`;
}

const unsignedZero = (digits: string): string => (/^-[0.]+$/.test(digits) ? digits.slice(1) : digits);
