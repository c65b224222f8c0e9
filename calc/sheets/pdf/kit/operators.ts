/** Room for a page of a table, bytes; it doubles where there are more. */
const FIRST = 16 * 1024;

/** Hexadecimal digits of a sign in a font of a content stream. */
export const SIGN_DIGITS = 4;

const LINE_END = 10;
const SPACE = 32;
const MINUS = 45;
const POINT = 46;
const ZERO = 48;

/**
 * Operators of a content stream as they are drawn: a line of ASCII each. What is drawn goes into bytes at once: a sheet
 * has operators by ten thousands, and none of their words lives longer than it takes to write it, or is made at all.
 */
export class Operators {
  #bytes = new Uint8Array(FIRST);
  #end = 0;

  /** A line, or the end of one that is begun. */
  push(words: string): void {
    this.add(words);
    this.#bytes[this.#end++] = LINE_END;
  }

  /** A part of a line. */
  add(words: string): void {
    const { length } = words;
    this.#reserve(length);
    const bytes = this.#bytes;
    const at = this.#end;
    for (let i = 0; i < length; i++) bytes[at + i] = words.charCodeAt(i);
    this.#end += length;
  }

  /** A place on a sheet as `placeWords` writes it. */
  number(value: number): void {
    const size = Math.abs(value);
    const whole = Math.round(size * 1000);
    if (!isSure(size, whole)) {
      this.add(placeWords(value));
      return;
    }
    this.#reserve(MOST_FIGURES);
    if (value < 0 && whole > 0) this.#bytes[this.#end++] = MINUS;
    const before = Math.trunc(whole / 1000);
    let share = 1;
    while (share * 10 <= before) share *= 10;
    for (let rest = before; share >= 1; share /= 10) {
      const figure = Math.trunc(rest / share);
      this.#bytes[this.#end++] = ZERO + figure;
      rest -= figure * share;
    }
    let after = whole - before * 1000;
    if (after > 0) this.#bytes[this.#end++] = POINT;
    for (share = 100; after > 0; share /= 10) {
      const figure = Math.trunc(after / share);
      this.#bytes[this.#end++] = ZERO + figure;
      after -= figure * share;
    }
  }

  /** Two places, parted by a space. */
  pair(x: number, y: number): void {
    this.number(x);
    this.space();
    this.number(y);
  }

  space(): void {
    this.#reserve(1);
    this.#bytes[this.#end++] = SPACE;
  }

  /**
   * A text as the digits of its signs, in brackets; nothing is written, and the answer is no, where one has none.
   * @param digits of each sign of ASCII `SIGN_DIGITS`, as bytes; 0 where it is not known
   */
  signs(text: string, digits: Uint8Array): boolean {
    const { length } = text;
    this.#reserve(length * SIGN_DIGITS + 2);
    const bytes = this.#bytes;
    let at = this.#end;
    bytes[at++] = 60;
    for (let i = 0; i < length; i++) {
      const of = text.charCodeAt(i) * SIGN_DIGITS;
      if (of >= digits.length || digits[of] === 0) return false;
      bytes[at] = digits[of]!;
      bytes[at + 1] = digits[of + 1]!;
      bytes[at + 2] = digits[of + 2]!;
      bytes[at + 3] = digits[of + 3]!;
      at += SIGN_DIGITS;
    }
    bytes[at++] = 62;
    this.#end = at;
    return true;
  }

  /** All so far. */
  bytes(): Uint8Array {
    return this.#bytes.subarray(0, this.#end);
  }

  /** Room for so many bytes, and the end of a line. */
  #reserve(more: number): void {
    if (this.#end + more < this.#bytes.length) return;
    const larger = new Uint8Array(Math.max(2 * this.#bytes.length, this.#end + more + 1));
    larger.set(this.#bytes);
    this.#bytes = larger;
  }
}

/** Three figures after a point, without zeros at their end: what is left of a thousandth. */
const THOUSANDTHS = Array.from({ length: 1000 }, (_, i) =>
  i === 0 ? '' : `.${String(i).padStart(3, '0').replace(/0+$/, '')}`,
);

/** Up to it a thousandfold is sure to far less than `NEAR`; what is larger is rounded by the language. */
const MOST = 1e6;
const NEAR = 1e-4;
/** Of what is smaller than that: a sign, six figures, a point, three. */
const MOST_FIGURES = 11;

/** Near the middle between two thousandths the rounding of the product could choose the other. */
const isSure = (size: number, whole: number): boolean =>
  size < MOST && Math.abs(Math.abs(size * 1000 - whole) - 0.5) >= NEAR;

/** A place on a sheet: to a thousandth, or whole. */
export const placeWords = (value: number): string => (Number.isInteger(value) ? String(value) : thousandths(value));

/** A place on a sheet to a thousandth, as `toFixed(3)` rounds it, without zeros at its end; what is no number throws. */
export function thousandths(value: number): string {
  const size = Math.abs(value);
  const whole = Math.round(size * 1000);
  if (!isSure(size, whole)) return fixed(value, 3);
  if (whole === 0) return '0';
  const before = Math.trunc(whole / 1000);
  const words = `${before}${THOUSANDTHS[whole - before * 1000]!}`;
  return value < 0 ? `-${words}` : words;
}

/** A number with at most so many decimals, without zeros at their end; what is no number throws. */
export function fixed(value: number, decimals: number): string {
  if (!Number.isFinite(value)) throw new RangeError('a place on a sheet is a finite number');
  const words = value.toFixed(decimals).replace(/\.?0+$/, '');
  return words === '-0' ? '0' : words;
}
