/** Bits in a row, the lowest of each byte first, as DEFLATE has them. */
export class Bits {
  #bytes: Uint8Array;
  #end: number;
  #held = 0;
  #count = 0;

  /** @param head bytes that come first */
  constructor(head: readonly number[], room: number) {
    this.#bytes = new Uint8Array(Math.max(room, 64));
    this.#bytes.set(head);
    this.#end = head.length;
  }

  /** Room for so many bytes more. */
  reserve(more: number): void {
    if (this.#end + more + 8 <= this.#bytes.length) return;
    const larger = new Uint8Array(Math.max(2 * this.#bytes.length, this.#end + more + 8));
    larger.set(this.#bytes);
    this.#bytes = larger;
  }

  /** At most 16 bits; there must be room. */
  add(value: number, count: number): void {
    this.#held |= value << this.#count;
    this.#count += count;
    if (this.#count < 16) return;
    this.#bytes[this.#end] = this.#held;
    this.#bytes[this.#end + 1] = this.#held >>> 8;
    this.#end += 2;
    this.#held >>>= 16;
    this.#count -= 16;
  }

  /** Fills the byte that is begun. */
  align(): void {
    while (this.#count > 0) {
      this.#bytes[this.#end++] = this.#held;
      this.#held >>>= 8;
      this.#count -= 8;
    }
    this.#held = 0;
    this.#count = 0;
  }

  /** Whole bytes; the last byte must be filled. */
  addBytes(bytes: Uint8Array): void {
    this.reserve(bytes.length);
    this.#bytes.set(bytes, this.#end);
    this.#end += bytes.length;
  }

  /** All of them in an array of their own length. */
  done(): Uint8Array {
    this.align();
    return this.#bytes.slice(0, this.#end);
  }
}
