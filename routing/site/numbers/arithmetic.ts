import { type Literal, type Mistake, mistake } from './length-literal.ts';

/** A value on the way: one that has its unit, or a bare number that may yet turn out to be a factor. */
interface Value {
  readonly ok: true;
  readonly value: number;
  readonly isLength: boolean;
}

/** What the arithmetic of lengths and that of plain numbers do not share. */
export interface Dialect {
  /** The literal that begins at a character of the plain text, null where none does. */
  readonly literalAt: (text: string, at: number) => Literal | Mistake | null;
  /** Where a unit behind a closing bracket ends; the place itself where there is none. */
  readonly unitEnd: (text: string, at: number) => number;
  /** A bare number beside one that has its unit, in that unit. */
  readonly withUnit: (bare: number) => number;
  /** Why a minus at a character may not be a subtraction; null where it is one. */
  readonly noMinus: (text: string, at: number) => string | null;
  readonly says: {
    readonly missing: string;
    readonly squared: string;
    readonly divisor: string;
  };
}

/** What is wrong with a character of a typed text in which something else was wanted, such as "a number". */
export function unexpected(text: string, at: number, wanted: string): string {
  const c = String.fromCodePoint(text.codePointAt(at) ?? 0);
  if (c === ',') return 'commas are not read: write 1250, and 3.8 with a point';
  return `${JSON.stringify(c)} is not read: ${wanted}`;
}

/** Reads sums of products of signed literals and brackets, left to right: `sum` reads, `at` tells how far it came. */
export function arithmeticReader(text: string, { literalAt, unitEnd, withUnit, noMinus, says }: Dialect) {
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
          at < text.length ? unexpected(text, at, says.missing) : 'this bracket is not closed',
          at < text.length ? at : open,
        );
      at++;
      const end = unitEnd(text, at);
      if (end === at) return value;
      at = end;
      return { ok: true, value: value.isLength ? value.value : withUnit(value.value), isLength: true };
    }
    const literal = literalAt(text, at);
    if (literal === null) return mistake(at < text.length ? unexpected(text, at, says.missing) : says.missing, at);
    if (literal.ok) at = literal.end;
    return literal;
  };

  const times = (left: Value, right: Value, sign: number): Value | Mistake => {
    if (left.isLength && right.isLength) return mistake(says.squared, sign);
    return { ok: true, value: left.value * right.value, isLength: left.isLength || right.isLength };
  };

  const quotient = (left: Value, right: Value | Literal, sign: number): Value | Mistake => {
    if (right.isLength) return mistake(says.divisor, sign);
    if (right.value === 0) return mistake('a number other than 0 to divide by', sign);
    if ('isSlashed' in right && right.isSlashed) return mistake('put the fraction to divide by in brackets', sign);
    return { ok: true, value: left.value / right.value, isLength: left.isLength };
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
      const not = text[sign] === '-' ? noMinus(text, sign) : null;
      if (not !== null) return mistake(not, sign);
      const right = product();
      if (!right.ok) return right;
      const isLength = left.isLength || right.isLength;
      const of = (value: Value): number => (isLength && !value.isLength ? withUnit(value.value) : value.value);
      left = { ok: true, value: of(left) + (text[sign] === '-' ? -1 : 1) * of(right), isLength };
    }
    return left;
  };
  return { sum, at: () => at };
}
