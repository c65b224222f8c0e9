import { Bits } from './bits.ts';
import { MOST_TOKENS, repeatOf, type Tokens, writeBlock } from './block.ts';

/*
 * DEFLATE (RFC 1951) in a ZLIB wrapper (RFC 1950), for text of a sheet: digits and letters of which any three stand
 * everywhere, so that a search by three bytes tries far more places than help. Here they are sought by five.
 */

/** Bytes by which repeats are sought; shorter ones are not. */
const LEAST = 5;
const WINDOW = 32_768;
const LONGEST = 258;
const HASH_BITS = 15;

/** Places that are tried for a repeat, one after the other, the nearest first. */
const TRIES = 6;
/** From this length on no longer one is sought. */
const ENOUGH = 64;
/** From this length on the next place is not tried for a longer one. */
const LAZY = 24;
/** Of a repeat so many places apart are remembered. */
const STEP = 2;

/** The last place of each hash, and of each place the one before with the same; places go on from text to text. */
const heads = new Int32Array(1 << HASH_BITS);
const befores = new Int32Array(WINDOW);
const FAR = 2 ** 30;
let base = WINDOW;

const tokens: Tokens = { list: new Int32Array(MOST_TOKENS), count: 0 };

/** Bytes as a ZLIB stream: the same on every machine, and read back by any inflate. */
export function zlibOf(bytes: Uint8Array): Uint8Array {
  const out = new Bits([0x78, 0x5e], bytes.length >> 2);
  deflate(bytes, out);
  out.align();
  const sum = adler(bytes);
  out.addBytes(Uint8Array.of(sum >>> 24, sum >>> 16, sum >>> 8, sum));
  return out.done();
}

/** Bytes as a DEFLATE stream without a wrapper, as a ZIP holds them. */
export function deflated(bytes: Uint8Array): Uint8Array {
  const out = new Bits([], bytes.length >> 2);
  deflate(bytes, out);
  return out.done();
}

function deflate(bytes: Uint8Array, out: Bits): void {
  const { length } = bytes;
  if (base + length > FAR) {
    heads.fill(0);
    base = WINDOW;
  }
  const start = base;
  base += length + WINDOW;
  const last = length - LEAST;
  let begun = 0;
  tokens.count = 0;
  const put = (token: number, until: number): void => {
    tokens.list[tokens.count++] = token;
    if (tokens.count < MOST_TOKENS) return;
    writeBlock(out, tokens, bytes.subarray(begun, until), false);
    begun = until;
    tokens.count = 0;
  };
  for (let at = 0; at < length; ) {
    const found = at <= last ? longestAt(bytes, at, start, LEAST - 1) : 0;
    if (found === 0) {
      put(bytes[at]!, at + 1);
      at++;
      continue;
    }
    let repeat = found;
    let from = at;
    // A longer one that begins at the next place is worth a letter.
    while (repeat >> 16 < LAZY && from < last) {
      const next = longestAt(bytes, from + 1, start, repeat >> 16);
      if (next === 0) break;
      put(bytes[from]!, from + 1);
      from++;
      repeat = next;
    }
    const until = from + (repeat >> 16);
    put(repeat, until);
    // The place after may have been sought at already.
    const to = Math.min(until, last + 1);
    rememberAll(bytes, from + (repeat >> 16 < LAZY && from < last ? 2 : 1), to, start);
    at = until;
  }
  writeBlock(out, tokens, bytes.subarray(begun), true);
}

const hashAt = (bytes: Uint8Array, at: number): number => {
  const four = bytes[at]! | (bytes[at + 1]! << 8) | (bytes[at + 2]! << 16) | (bytes[at + 3]! << 24);
  return (Math.imul(four, 0x9e3779b1) + Math.imul(bytes[at + 4]!, 0x3d4d51cb)) >>> (32 - HASH_BITS);
};

/** Remembers places of a repeat: every second is enough to find it again. */
function rememberAll(bytes: Uint8Array, from: number, to: number, start: number): void {
  for (let at = from; at < to; at += STEP) {
    const hash = hashAt(bytes, at);
    const place = start + at;
    befores[place & (WINDOW - 1)] = heads[hash]!;
    heads[hash] = place;
  }
}

/** The longest repeat at a place that is longer than so many bytes, and remembers the place; 0 where there is none. */
function longestAt(bytes: Uint8Array, at: number, start: number, least: number): number {
  const hash = hashAt(bytes, at);
  const place = start + at;
  let before = heads[hash]!;
  befores[place & (WINDOW - 1)] = before;
  heads[hash] = place;
  const low = Math.max(start, place - WINDOW + 1);
  const most = Math.min(LONGEST, bytes.length - at);
  let best = least;
  let found = 0;
  if (best >= most) return 0;
  for (let tries = TRIES; before >= low && tries > 0; tries--) {
    const there = before - start;
    if (bytes[there + best] === bytes[at + best] && bytes[there] === bytes[at]) {
      let same = 1;
      while (same < most && bytes[there + same] === bytes[at + same]) same++;
      if (same > best) {
        best = same;
        found = repeatOf(same, at - there);
        if (same >= ENOUGH || same === most) break;
      }
    }
    before = befores[before & (WINDOW - 1)]!;
  }
  return found;
}

/** Adler's sum of RFC 1950. */
function adler(bytes: Uint8Array): number {
  let low = 1;
  let high = 0;
  for (let at = 0; at < bytes.length; ) {
    // So many bytes cannot reach 2^32.
    const until = Math.min(at + 3800, bytes.length);
    for (; at < until; at++) {
      low += bytes[at]!;
      high += low;
    }
    low %= 65_521;
    high %= 65_521;
  }
  return ((high << 16) | low) >>> 0;
}
