import { MAX_LENGTH_FT } from '../schema/schema-parts.ts';
import type { Units } from '../schema/vocabulary.ts';
import { arithmeticReader, type Dialect, unexpected } from './arithmetic.ts';
import { DASH, literalAt, type Mistake, mistake } from './length-literal.ts';
import { plainText } from './length-unit.ts';
import { toFeet } from './units.ts';

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
