import { MAX_LENGTH_FT } from '../schema/schema-parts.ts';
import type { Units } from '../schema/vocabulary.ts';
import { arithmeticReader, type Dialect, unexpected } from './arithmetic.ts';
import { DASH, literalAt, type Mistake, mistake } from './length-literal.ts';
import { plainText } from './length-unit.ts';
import { fromFeet, toFeet } from './units.ts';

export type LengthRead = { readonly ok: true; readonly feet: number } | Mistake;

/** Longer texts are not read: nobody types them, and nesting stays shallow. */
export const MAX_CHARACTERS = 200;

/**
 * A length as it is typed, in feet; a bare number is in `units`. Feet and inches (`12' 6 1/2"`, `12'-6`, `12-6`),
 * decimals (`12.5`, `150"`), metric (`3.81 m`, `381cm`), either system in a file of either, and arithmetic
 * (`9' * 3`, `(12' 6 + 3") / 2`). `12-6` is 12 ft 6 in and `12 - 6` a subtraction. What could be read in two ways, and
 * a length past 100,000 ft, is a mistake, never a guess. `at` counts the characters before the fault.
 */
export function parseLength(text: string, units: Units): LengthRead {
  if (text.length > MAX_CHARACTERS) return mistake(`at most ${MAX_CHARACTERS} characters`, MAX_CHARACTERS);
  const plain = plainText(text);
  const reader = arithmeticReader(plain, DIALECTS[units]);
  const result = reader.sum();
  if (!result.ok) return result;
  const end = reader.at();
  if (end < plain.length) return mistake(unexpected(text, end, A_LENGTH), end);
  const feet = result.isLength ? result.value : toFeet(result.value, units);
  if (!(Math.abs(feet) <= MAX_LENGTH_FT)) return mistake('a length of at most 100,000 ft (30,480 m)', 0);
  return { ok: true, feet: feet + 0 };
}

/** What is wanted where a length is. */
const A_LENGTH = 'a length such as 9\' 0" or 2.7 m';

const lengthDialect = (units: Units): Dialect => ({
  literalAt: (text, at) => literalAt(text, at, units),
  unitEnd: (_, at) => at,
  withUnit: (bare) => toFeet(bare, units),
  noMinus: (text, at) => (isLopsided(text, at) ? DASH : null),
  says: {
    missing: A_LENGTH,
    squared: 'a length times a length is no length',
    divisor: 'a length is divided by a number, not by a length',
  },
});
const DIALECTS: Readonly<Record<Units, Dialect>> = { ft: lengthDialect('ft'), m: lengthDialect('m') };

/** A space on one side only of a minus before a number: `12' -6"` may be meant as feet and inches. */
const isLopsided = (text: string, sign: number): boolean =>
  (text[sign - 1] === ' ') !== (text[sign + 1] === ' ') &&
  /^ *[\d.\u00bc-\u00be\u2153-\u215e]/.test(text.slice(sign + 1));

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
