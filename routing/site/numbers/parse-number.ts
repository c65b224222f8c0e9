import { MAX_QUANTITY } from '../schema/schema-parts.ts';
import { arithmeticReader, type Dialect, unexpected } from './arithmetic.ts';
import { type Literal, type Mistake, mistake } from './length-literal.ts';
import { plainText } from './length-unit.ts';
import { MAX_CHARACTERS } from './parse-length.ts';
import { quantityAt } from './typed-number.ts';

export type NumberRead = { readonly ok: true; readonly value: number } | Mistake;

/** Other ways to write a unit. */
const SPELLINGS: Readonly<Record<string, readonly string[]>> = {
  degrees: ['degrees', 'degree', 'deg', '°'],
  '%': ['%', 'percent'],
  A: ['A', 'amps', 'amp'],
  V: ['V', 'volts', 'volt'],
  C: ['C', '°C'],
  '°C': ['°C', 'C'],
};

const EXPONENT = /\d+\.?\d*e[+-]?\d+/iy;

/**
 * A number that is no length, as it is typed: `12.5`, `6 1/2`, `80 A` where the unit is A, and plain arithmetic with
 * + - * / and brackets (`2*40`, `(100 + 25) * 1.25 A`). Commas, two units multiplied, a division by 0, and what is past
 * 1,000,000,000 are mistakes. `at` counts the characters before the fault. `unit` is '' for a plain count.
 */
export function parseNumber(text: string, unit: string): NumberRead {
  if (text.length > MAX_CHARACTERS) return mistake(`at most ${MAX_CHARACTERS} characters`, MAX_CHARACTERS);
  const plain = plainText(text);
  const reader = arithmeticReader(plain, dialectOf(unit));
  const result = reader.sum();
  if (!result.ok) return result;
  const end = reader.at();
  if (end < plain.length) return mistake(unexpected(text, end, aNumber(unit)), end);
  if (!(Math.abs(result.value) <= MAX_QUANTITY)) return mistake('a number of at most 1,000,000,000', 0);
  return { ok: true, value: result.value + 0 };
}

/** What is wanted where a number is. */
const aNumber = (unit: string): string => `a number such as ${unit === '' ? '12' : `12 ${unit}`}`;

function dialectOf(unit: string): Dialect {
  const spellings = unit === '' ? [] : (SPELLINGS[unit] ?? [unit]);
  const unitEnd = (text: string, at: number): number => {
    const start = at + (/^ */.exec(text.slice(at))?.[0].length ?? 0);
    for (const spelling of spellings) {
      const end = start + spelling.length;
      if (text.slice(start, end).toLowerCase() !== spelling.toLowerCase()) continue;
      // "amps" is not A and then something.
      if (!/[a-z]$/i.test(spelling) || !/[a-z]/i.test(text[end] ?? '')) return end;
    }
    return at;
  };
  return {
    literalAt: (text, at) => numberAt(text, at, unitEnd),
    unitEnd,
    withUnit: (bare) => bare,
    noMinus: () => null,
    says: {
      missing: aNumber(unit),
      squared: `only one of two that are multiplied is in ${unit}`,
      divisor: `the number to divide by is not in ${unit}`,
    },
  };
}

/** A number, with its unit or without. A slash is a division here, but for the fraction behind a whole number: 6 1/2. */
function numberAt(text: string, at: number, unitEnd: (text: string, at: number) => number): Literal | Mistake | null {
  const literal = (value: number, end: number): Literal => {
    const past = unitEnd(text, end);
    return { ok: true, value, isLength: past > end, isSlashed: false, end: past };
  };
  EXPONENT.lastIndex = at;
  const large = EXPONENT.exec(text);
  if (large !== null) return literal(Number(large[0]), at + large[0].length);
  const quantity = quantityAt(text, at);
  if (quantity === null) return null;
  if (quantity.form === 'mixed' && !quantity.proper) return mistake('a fraction below 1, such as 6 1/2', at);
  if (quantity.form !== 'dashed' && quantity.form !== 'slashed') return literal(quantity.value, quantity.end);
  const whole = /^\d+/.exec(text.slice(at))![0];
  return literal(Number(whole), at + whole.length);
}
