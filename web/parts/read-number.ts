import { parseNumber } from '../../routing/site/numbers/parse-number.ts';
import { type TypedText, typedLetters } from './typed-text.ts';

/** What a number typed into a field must be. */
export interface NumberLimits {
  /** As it is said after the number; '' for a plain count. */
  readonly unit: string;
  /** It must be more than this. */
  readonly over?: number;
  readonly least?: number;
  readonly most?: number;
  readonly whole?: boolean;
}

export type ReadNumber = { readonly ok: true; readonly value: number } | { readonly ok: false; readonly says: string };

/** The number that a text comes to, arithmetic and its unit read, or what is wrong with it. */
export function readNumber(
  text: TypedText,
  { unit, over = Number.NEGATIVE_INFINITY, least = over, most = Number.POSITIVE_INFINITY, whole = false }: NumberLimits,
): ReadNumber {
  const read = parseNumber(typedLetters(text), unit);
  if (!read.ok) return { ok: false, says: read.says };
  // Arithmetic leaves tails of rounding, which no field means.
  const value = Number(read.value.toPrecision(14));
  const inUnit = unit && ` ${unit}`;
  if (whole && !Number.isInteger(value)) return { ok: false, says: 'a whole number, such as 12' };
  if (value <= over)
    return { ok: false, says: whole ? `${Math.floor(over) + 1}${inUnit} or more` : `more than ${over}${inUnit}` };
  if (value < least) return { ok: false, says: `${least}${inUnit} or more` };
  if (value > most) return { ok: false, says: `${most}${inUnit} or less` };
  return { ok: true, value };
}

/** The limits of a field that takes what is over 0, or with a `least` of its own from there up. */
export const atLeast = (least: number): Pick<NumberLimits, 'over' | 'least'> => (least === 0 ? { over: 0 } : { least });
