/** Room for a page of a table, bytes; it doubles where there are more. */
const FIRST = 16 * 1024;

const LINE_END = 10;
const RETURN = 13;
const SPACE = 32;
const OPEN = 40;
const CLOSE = 41;
const MINUS = 45;
const POINT = 46;
const ZERO = 48;
const LETTER_R = 114;
const BACKSLASH = 92;

/**
 * Operators of a content stream as they are drawn: a line each, of ASCII but for the signs of texts. What is drawn goes into bytes at once: a sheet
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
    const bytes = this.#bytes;
    let at = this.#end;
    if (value < 0 && whole > 0) bytes[at++] = MINUS;
    // Whole numbers of 32 bits: figures come without a division of broken ones.
    const before = (whole / 1000) | 0;
    if (before >= 1000) {
      const thousands = (before / 1000) | 0;
      at = writeFigures(bytes, at, thousands, false);
      at = writeFigures(bytes, at, before - thousands * 1000, true);
    } else at = writeFigures(bytes, at, before, false);
    const after = whole - before * 1000;
    if (after > 0) {
      bytes[at++] = POINT;
      at = writeFigures(bytes, at, after, true);
      while (bytes[at - 1] === ZERO) at--;
    }
    this.#end = at;
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
   * A text as a string of bytes, two for each sign, half of what hexadecimal digits take; nothing is written, and the
   * answer is no, where one of its signs has no number.
   * @param glyphs the numbers of the signs of one byte in the font; 0 where it is not known
   */
  signs(text: string, glyphs: Uint16Array): boolean {
    const { length } = text;
    this.#reserve(length * MOST_OF_SIGN + 2);
    const bytes = this.#bytes;
    let at = this.#end;
    bytes[at++] = OPEN;
    for (let i = 0; i < length; i++) {
      const code = text.charCodeAt(i);
      const glyph = code < glyphs.length ? glyphs[code]! : 0;
      if (glyph === 0) return false;
      at = writeInString(bytes, at, glyph >> 8);
      at = writeInString(bytes, at, glyph & 0xff);
    }
    bytes[at++] = CLOSE;
    this.#end = at;
    return true;
  }

  /** Begins anew in the same room: what `bytes` gave before is written over. */
  clear(): void {
    this.#end = 0;
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

/** Bytes of a sign of which both have to be escaped. */
const MOST_OF_SIGN = 4;

/** A byte of a string (ISO 32000-1, 7.3.4.2): brackets and what escapes are escaped, and what would be read as the end of a line. */
function writeInString(bytes: Uint8Array, at: number, byte: number): number {
  const isEscaped = byte === OPEN || byte === CLOSE || byte === BACKSLASH || byte === RETURN;
  if (isEscaped) bytes[at++] = BACKSLASH;
  bytes[at++] = byte === RETURN ? LETTER_R : byte;
  return at;
}

/** The figures of a number under a thousand, where it says so all three. */
function writeFigures(bytes: Uint8Array, at: number, number: number, areAll: boolean): number {
  const hundreds = (number / 100) | 0;
  const tens = ((number - hundreds * 100) / 10) | 0;
  if (areAll || hundreds > 0) bytes[at++] = ZERO + hundreds;
  if (areAll || hundreds > 0 || tens > 0) bytes[at++] = ZERO + tens;
  bytes[at++] = ZERO + (number - hundreds * 100 - tens * 10);
  return at;
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

/** A text as hexadecimal digits of UTF-16. */
export const utf16 = (text: string): string =>
  Array.from({ length: text.length }, (_, i) => text.charCodeAt(i).toString(16).padStart(4, '0')).join('');
