import { DASH, type Literal, literalAt, type Mistake, mistake } from './length-literal.ts';
import { plainText } from './length-unit.ts';
import { MAX_LENGTH_FT } from './schema-parts.ts';
import { fromFeet, toFeet } from './units.ts';
import type { Units } from './vocabulary.ts';

export type LengthRead = { readonly ok: true; readonly feet: number } | Mistake;

/** Longer texts are not read: nobody types them, and nesting stays shallow. */
const MAX_CHARACTERS = 200;

/** A value on the way: a length in feet, or a number that may yet turn out to be a factor. */
interface Value {
  readonly ok: true;
  readonly value: number;
  readonly isLength: boolean;
}

/**
 * A length as it is typed, in feet; a bare number is in `units`. Feet and inches (`12' 6 1/2"`, `12'-6`, `12-6`),
 * decimals (`12.5`, `150"`), metric (`3.81 m`, `381cm`), either system in a file of either, and arithmetic
 * (`9' * 3`, `(12' 6 + 3") / 2`). `12-6` is 12 ft 6 in and `12 - 6` a subtraction. What could be read in two ways, and
 * a length past 100,000 ft, is a mistake, never a guess. `at` counts the characters before the fault.
 */
export function parseLength(text: string, units: Units): LengthRead {
  if (text.length > MAX_CHARACTERS) return mistake(`expected at most ${MAX_CHARACTERS} characters`, MAX_CHARACTERS);
  const plain = plainText(text);
  const reader = lengthReader(plain, units);
  const result = reader.sum();
  if (!result.ok) return result;
  const end = reader.at();
  if (end < plain.length) return mistake(unexpected(text, end), end);
  const feet = result.isLength ? result.value : toFeet(result.value, units);
  if (!(Math.abs(feet) <= MAX_LENGTH_FT)) return mistake('expected a length of at most 100,000 ft (30,480 m)', 0);
  return { ok: true, feet: feet + 0 };
}

function unexpected(text: string, at: number): string {
  const c = String.fromCodePoint(text.codePointAt(at) ?? 0);
  if (c === ',') return 'commas are not read: write 1250, and 3.8 with a point';
  return `did not expect ${JSON.stringify(c)} here`;
}

/** Reads sums of products of signed literals and brackets, left to right. */
function lengthReader(text: string, units: Units) {
  let at = 0;
  const skip = (): void => {
    while (text[at] === ' ') at++;
  };

  const primary = (): Value | Literal | Mistake => {
    skip();
    const sign = text[at];
    if (sign === '-' || sign === '+') {
      at++;
      const value = primary();
      return value.ok && sign === '-' ? { ...value, value: -value.value } : value;
    }
    if (sign === '(') {
      const open = at++;
      const value = sum();
      if (!value.ok) return value;
      if (text[at] !== ')')
        return mistake(
          at < text.length ? unexpected(text, at) : 'this bracket is not closed',
          at < text.length ? at : open,
        );
      at++;
      return value;
    }
    const literal = literalAt(text, at, units);
    if (literal === null) return mistake(at < text.length ? unexpected(text, at) : 'expected a length', at);
    if (literal.ok) at = literal.end;
    return literal;
  };

  const product = (): Value | Mistake => {
    let left: Value | Mistake = primary();
    for (skip(); left.ok && /[*xX/]/.test(text[at] ?? ''); skip()) {
      const sign = at++;
      const right = primary();
      if (!right.ok) return right;
      left = text[sign] === '/' ? quotient(left, right, sign) : times(left, right, sign);
    }
    return left;
  };

  const sum = (): Value | Mistake => {
    let left = product();
    for (skip(); left.ok && (text[at] === '+' || text[at] === '-'); skip()) {
      const sign = at++;
      if (text[sign] === '-' && isLopsided(text, sign)) return mistake(DASH, sign);
      const right = product();
      if (!right.ok) return right;
      const isLength = left.isLength || right.isLength;
      const of = (value: Value): number => (isLength && !value.isLength ? toFeet(value.value, units) : value.value);
      left = { ok: true, value: of(left) + (text[sign] === '-' ? -1 : 1) * of(right), isLength };
    }
    return left;
  };
  return { sum, at: () => at };
}

/** A space on one side only of a minus before a number: `12' -6"` may be meant as feet and inches. */
const isLopsided = (text: string, sign: number): boolean =>
  (text[sign - 1] === ' ') !== (text[sign + 1] === ' ') &&
  /^ *[\d.\u00bc-\u00be\u2153-\u215e]/.test(text.slice(sign + 1));

function times(left: Value, right: Value, at: number): Value | Mistake {
  if (left.isLength && right.isLength) return mistake('a length times a length is no length', at);
  return { ok: true, value: left.value * right.value, isLength: left.isLength || right.isLength };
}

function quotient(left: Value, right: Value | Literal, at: number): Value | Mistake {
  if (right.isLength) return mistake('a length is divided by a number, not by a length', at);
  if (right.value === 0) return mistake('expected a number other than 0 to divide by', at);
  if ('isSlashed' in right && right.isSlashed) return mistake('put the fraction to divide by in brackets', at);
  return { ok: true, value: left.value / right.value, isLength: left.isLength };
}

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

/** A length as a decimal of its unit, for columns of figures: `12.5 ft`, `3.8 m`. Not a number gives an en dash. */
export function printDecimal(feet: number, units: Units, decimals: number): string {
  if (!Number.isFinite(feet)) return '\u2013';
  return `${unsignedZero(fromFeet(feet, units).toFixed(decimals))} ${units}`;
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
