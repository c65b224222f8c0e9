import type { Units } from '../schema/vocabulary.ts';
import { UNITS_PER_FOOT, unitAt } from './length-unit.ts';
import { type Quantity, quantityAt } from './typed-number.ts';

/** Why a text is no length, and at which of its characters. */
export interface Mistake {
  readonly ok: false;
  readonly says: string;
  readonly at: number;
}

/** One literal of a length text: a length in feet, or a bare number that has no unit yet. */
export interface Literal {
  readonly ok: true;
  readonly value: number;
  readonly isLength: boolean;
  /** A fraction with a slash, which after a division sign could be read two ways. */
  readonly isSlashed: boolean;
  readonly end: number;
}

export const mistake = (says: string, at: number): Mistake => ({ ok: false, says, at });

const INCHES_MARKED = `write feet and inches as 12' 6 1/2"`;
export const DASH = 'put a space on both sides of a minus to subtract, or none to join feet and inches';

/** The literal that begins at a character, null where none does. A text of plain marks, see `plainText`. */
export function literalAt(text: string, at: number, units: Units): Literal | Mistake | null {
  const quantity = quantityAt(text, at);
  if (quantity === null) return null;
  if (!quantity.proper) return mistake(improper(quantity), at);
  const unit = unitAt(text, quantity.end);
  if (unit === null) return bareAt(text, at, quantity, units);
  const feet = quantity.value / UNITS_PER_FOOT[unit.unit];
  if (unit.unit !== 'foot') return length(feet, unit.end);
  return withInches(text, quantity, unit.end);
}

/** Feet are read: inches may follow, after spaces or one dash. */
function withInches(text: string, feet: Quantity, end: number): Literal | Mistake {
  const dashed = text[end] === '-';
  const start = dashed ? end + 1 : end + (/^ */.exec(text.slice(end))?.[0].length ?? 0);
  const inches = quantityAt(text, start);
  if (inches === null) return length(feet.value, end);
  if (feet.form !== 'whole') return mistake('feet before inches are a whole number', start);
  return joined(text, feet.value, inches, start);
}

/** A number without a unit: a bare number, or the feet of `12-6`. */
function bareAt(text: string, at: number, quantity: Quantity, units: Units): Literal | Mistake {
  const { end } = quantity;
  if (quantity.form === 'dashed') return mistake(INCHES_MARKED, at);
  const inches = text[end] === '-' ? quantityAt(text, end + 1) : null;
  if (inches === null || quantity.form !== 'whole') {
    const next = /^ +/.exec(text.slice(end));
    if (next !== null && quantityAt(text, end + next[0].length) !== null) return mistake(INCHES_MARKED, end);
    return { ok: true, value: quantity.value, isLength: false, isSlashed: quantity.form === 'slashed', end };
  }
  if (units === 'm') return mistake(`${INCHES_MARKED}; ${DASH}`, end);
  return joined(text, quantity.value, inches, end + 1);
}

function joined(text: string, feet: number, inches: Quantity, start: number): Literal | Mistake {
  if (!inches.proper) return mistake(improper(inches), start);
  if (inches.form === 'slashed' && inches.value >= 1) return mistake('put what is divided in brackets', start);
  const unit = unitAt(text, inches.end);
  if (unit !== null && unit.unit !== 'inch') return mistake(`inches after the feet; ${DASH}`, start);
  if (inches.value >= 12) return mistake(`inches below 12 after the feet; ${DASH}`, start);
  const end = unit?.end ?? inches.end;
  if (unit === null && text[end] === '-' && quantityAt(text, end + 1) !== null) return mistake(DASH, end);
  return length(feet + inches.value / 12, end);
}

const improper = (quantity: Quantity): string =>
  quantity.form === 'slashed' ? 'a fraction over 0 is no number' : 'a fraction below 1, such as 6 1/2';

const length = (feet: number, end: number): Literal => ({
  ok: true,
  value: feet,
  isLength: true,
  isSlashed: false,
  end,
});
