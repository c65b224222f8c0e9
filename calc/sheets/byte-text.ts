/** Room to begin with, bytes; where there is more it goes on in another piece, as long as all so far up to the largest. */
const FIRST = 512;
const LARGEST_PIECE = 2 ** 20;
/** A text so long is taken into another as it lies, a shorter one is copied. */
const LONG = 4096;

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
 * million, and none of them is to outlive the writing of it. It lies in pieces, which are never copied as it grows.
 */
export class ByteText {
  /** Pieces that are done, in order, and their length. */
  #done: Uint8Array<ArrayBuffer>[] = [];
  #before = 0;
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
    else this.#addBytes(new TextEncoder().encode(words));
  }

  /** All that another has now. */
  addAll(other: ByteText): void {
    if (other.length < LONG) {
      this.#addBytes(other.bytes);
      return;
    }
    // What is shared ends here for both: whoever takes bytes back writes over none of them.
    this.#close();
    other.#close();
    for (const piece of other.#done) this.#done.push(piece);
    this.#before += other.#before;
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
    let left = count - this.#end;
    this.#end = Math.max(0, -left);
    while (left > 0) {
      const last = this.#done.pop()!;
      const kept = Math.max(0, last.length - left);
      if (kept > 0) this.#done.push(last.subarray(0, kept));
      this.#before -= last.length - kept;
      left -= last.length - kept;
    }
  }

  get length(): number {
    return this.#before + this.#end;
  }

  /** All so far in one piece, until more is added. */
  get bytes(): Uint8Array<ArrayBuffer> {
    if (this.#done.length === 0) return this.#bytes.subarray(0, this.#end);
    this.#close();
    if (this.#done.length > 1) this.#done = [joined(this.#done, this.#before)];
    return this.#done[0]!;
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

  #addBytes(bytes: Uint8Array): void {
    this.#reserve(bytes.length);
    this.#bytes.set(bytes, this.#end);
    this.#end += bytes.length;
  }

  #reserve(more: number): void {
    if (this.#end + more <= this.#bytes.length) return;
    this.#close();
    this.#bytes = new Uint8Array(Math.max(more, Math.min(LARGEST_PIECE, this.#before)));
  }

  /** Ends the piece at hand; what room it had left goes on as the next. */
  #close(): void {
    if (this.#end === 0) return;
    this.#done.push(this.#bytes.subarray(0, this.#end));
    this.#before += this.#end;
    this.#bytes = this.#bytes.subarray(this.#end);
    this.#end = 0;
  }
}

function joined(pieces: readonly Uint8Array[], length: number): Uint8Array<ArrayBuffer> {
  const whole = new Uint8Array(length);
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}
