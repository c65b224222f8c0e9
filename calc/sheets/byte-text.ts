/** Room to begin with, bytes; it doubles where there is more. */
const FIRST = 512;

const MINUS = 45;
const POINT = 46;
const ZERO = 48;
const LAST_OF_ASCII = 0x7f;

const BILLION = 1e9;
/** Up to it a billionth is sure, and every decimal to a billionth is the shortest that says its number. */
const MOST = 1e6;
/** What is smaller is written with an exponent. */
const LEAST = 1e-6;
const LARGEST_WHOLE = 0x7fff_ffff;
/** A sign, seven figures, a point, nine. */
const MOST_FIGURES = 18;

/**
 * A long text as it is written, in UTF-8: what is added goes into bytes at once, for a file has words and numbers by the
 * million, and none of them is to outlive the writing of it.
 */
export class ByteText {
  #bytes: Uint8Array<ArrayBuffer> = new Uint8Array(FIRST);
  #end = 0;

  add(words: string): void {
    const { length } = words;
    this.#reserve(length);
    const bytes = this.#bytes;
    const at = this.#end;
    let seen = 0;
    for (let i = 0; i < length; i++) {
      const code = words.charCodeAt(i);
      seen |= code;
      bytes[at + i] = code;
    }
    if (seen <= LAST_OF_ASCII) this.#end += length;
    else this.addAll({ bytes: new TextEncoder().encode(words) });
  }

  /** All of another. */
  addAll({ bytes }: { readonly bytes: Uint8Array }): void {
    this.#reserve(bytes.length);
    this.#bytes.set(bytes, this.#end);
    this.#end += bytes.length;
  }

  /** A whole number, as the language writes it. */
  whole(value: number): void {
    if (value >= 0 && value <= LARGEST_WHOLE) {
      this.#reserve(MOST_FIGURES);
      this.#figures(value);
    } else this.add(String(value));
  }

  /**
   * A number to a billionth as the language writes it, and `end` behind one that is whole; nothing is written, and the
   * answer is no, where the language would write it otherwise than as a plain decimal, or this would not be sure of it.
   */
  decimal(value: number, end: string): boolean {
    const size = Math.abs(value);
    if (!(size < MOST)) return false;
    const billionths = Math.round(size * BILLION);
    if (billionths > 0 && billionths < LEAST * BILLION) return false;
    this.#reserve(MOST_FIGURES);
    if (value < 0 && billionths > 0) this.#bytes[this.#end++] = MINUS;
    const before = Math.floor(billionths / BILLION);
    this.#figures(before);
    let after = billionths - before * BILLION;
    if (after === 0) {
      this.add(end);
      return true;
    }
    const bytes = this.#bytes;
    bytes[this.#end++] = POINT;
    let places = 9;
    while (after % 10 === 0) {
      after /= 10;
      places--;
    }
    for (let i = places - 1; i >= 0; i--) {
      const rest = Math.trunc(after / 10);
      bytes[this.#end + i] = ZERO + after - 10 * rest;
      after = rest;
    }
    this.#end += places;
    return true;
  }

  /** Takes back so many bytes from the end. */
  takeBack(count: number): void {
    this.#end -= count;
  }

  get length(): number {
    return this.#end;
  }

  /** All so far, until more is added. */
  get bytes(): Uint8Array<ArrayBuffer> {
    return this.#bytes.subarray(0, this.#end);
  }

  text(): string {
    return new TextDecoder().decode(this.bytes);
  }

  #figures(value: number): void {
    let share = 1;
    while (share * 10 <= value) share *= 10;
    let rest = value;
    for (; share >= 1; share /= 10) {
      const figure = Math.trunc(rest / share);
      this.#bytes[this.#end++] = ZERO + figure;
      rest -= figure * share;
    }
  }

  #reserve(more: number): void {
    if (this.#end + more <= this.#bytes.length) return;
    const larger = new Uint8Array(Math.max(2 * this.#bytes.length, this.#end + more));
    larger.set(this.#bytes.subarray(0, this.#end));
    this.#bytes = larger;
  }
}
