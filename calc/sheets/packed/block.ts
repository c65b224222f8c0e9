import type { Bits } from './bits.ts';
import { type Code, huffmanCode, huffmanWords } from './huffman.ts';

/** How many of what a block holds at most: letters, and repeats. */
export const MOST_TOKENS = 16_384;

/** What a block is written of: a letter, or a repeat as its length and its distance back (`repeatOf`). */
export interface Tokens {
  readonly list: Int32Array;
  count: number;
}

/** A repeat of 3 to 258 bytes from so far back, at most 32,768. */
export const repeatOf = (length: number, distance: number): number => (length << 16) | (distance - 1);

/** Bits that follow the sign of a length or a distance, and the least that the sign stands for (RFC 1951, 3.2.5). */
const LENGTH_EXTRA = [0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 2, 2, 2, 2, 3, 3, 3, 3, 4, 4, 4, 4, 5, 5, 5, 5, 0];
const DISTANCE_EXTRA = Array.from({ length: 30 }, (_, i) => Math.max(0, (i >> 1) - 1));
const basesOf = (extra: readonly number[], first: number): number[] => {
  let base = first;
  return extra.map((bits) => {
    const own = base;
    base += 1 << bits;
    return own;
  });
};
// The last length has a sign of its own.
const LENGTH_BASE = basesOf(LENGTH_EXTRA, 3).map((base, i) => (i === 28 ? 258 : base));
const DISTANCE_BASE = basesOf(DISTANCE_EXTRA, 0);

/** The sign of each length, less 257. */
const LENGTH_SIGN = new Uint8Array(259);
LENGTH_BASE.forEach((base, sign) => {
  LENGTH_SIGN.fill(sign, base);
});
/** The sign of each distance less one: of those under 256, and of those from there on by their 128ths. */
const DISTANCE_SIGN = new Uint8Array(512);
DISTANCE_BASE.forEach((base, sign) => {
  if (base < 256) DISTANCE_SIGN.fill(sign, base, 256);
  else DISTANCE_SIGN.fill(sign, 256 + (base >> 7));
});
const distanceSign = (less: number): number => DISTANCE_SIGN[less < 256 ? less : 256 + (less >> 7)]!;

const END = 256;
const SIGNS = 286;
const DISTANCES = 30;

const fixedCode = (lengths: Uint8Array): Code => ({ lengths, words: huffmanWords(lengths) });
const FIXED: Code = fixedCode(
  Uint8Array.from({ length: 288 }, (_, i) => (i < 144 ? 8 : i < 256 ? 9 : i < 280 ? 7 : 8)),
);
const FIXED_DISTANCES: Code = fixedCode(new Uint8Array(DISTANCES).fill(5));

const counts = new Uint32Array(SIGNS);
const distanceCounts = new Uint32Array(DISTANCES);

/** Writes what a block holds by the shortest of the three ways of RFC 1951; `raw` is the same as it was. */
export function writeBlock(out: Bits, tokens: Tokens, raw: Uint8Array, isLast: boolean): void {
  const extra = count(tokens);
  const own = huffmanCode(counts, SIGNS, 15);
  const ownDistances = huffmanCode(distanceCounts, DISTANCES, 15);
  const table = tableOf(own.lengths, ownDistances.lengths);
  const ownBits = table.bits + bitsOf(counts, own) + bitsOf(distanceCounts, ownDistances);
  const fixedBits = bitsOf(counts, FIXED) + bitsOf(distanceCounts, FIXED_DISTANCES);
  const least = Math.min(ownBits, fixedBits) + extra;
  const last = isLast ? 1 : 0;
  if (raw.length * 8 + 40 < least) {
    writeStored(out, raw, last);
    return;
  }
  out.reserve(Math.ceil(least / 8) + 8);
  if (fixedBits <= ownBits) {
    out.add(last | 2, 3);
    writeTokens(out, tokens, FIXED, FIXED_DISTANCES);
    return;
  }
  out.add(last | 4, 3);
  writeTable(out, table);
  writeTokens(out, tokens, own, ownDistances);
}

/** Counts the signs of a block, and the bits that follow them. */
function count({ list, count: all }: Tokens): number {
  counts.fill(0);
  distanceCounts.fill(0);
  counts[END] = 1;
  let extra = 0;
  for (let i = 0; i < all; i++) {
    const token = list[i]!;
    if (token < 256) {
      counts[token]!++;
      continue;
    }
    const length = LENGTH_SIGN[token >> 16]!;
    const distance = distanceSign(token & 0x7fff);
    counts[257 + length]!++;
    distanceCounts[distance]!++;
    extra += LENGTH_EXTRA[length]! + DISTANCE_EXTRA[distance]!;
  }
  return extra;
}

function bitsOf(of: Uint32Array, { lengths }: Code): number {
  let sum = 0;
  for (let i = 0; i < of.length; i++) sum += of[i]! * lengths[i]!;
  return sum;
}

function writeStored(out: Bits, raw: Uint8Array, last: number): void {
  for (let from = 0; from < raw.length; from += 0xffff) {
    const part = raw.subarray(from, from + 0xffff);
    out.reserve(8);
    out.add(from + part.length === raw.length ? last : 0, 3);
    out.align();
    out.addBytes(Uint8Array.of(part.length, part.length >> 8, ~part.length, ~part.length >> 8));
    out.addBytes(part);
  }
}

function writeTokens(out: Bits, { list, count: all }: Tokens, code: Code, distances: Code): void {
  const { lengths, words } = code;
  for (let i = 0; i < all; i++) {
    const token = list[i]!;
    if (token < 256) {
      out.add(words[token]!, lengths[token]!);
      continue;
    }
    const length = LENGTH_SIGN[token >> 16]!;
    out.add(words[257 + length]!, lengths[257 + length]!);
    if (length > 7) out.add((token >> 16) - LENGTH_BASE[length]!, LENGTH_EXTRA[length]!);
    const less = token & 0x7fff;
    const distance = distanceSign(less);
    out.add(distances.words[distance]!, distances.lengths[distance]!);
    if (distance > 3) out.add(less - DISTANCE_BASE[distance]!, DISTANCE_EXTRA[distance]!);
  }
  out.add(words[END]!, lengths[END]!);
}

/** How the two codes of a block are told: their lengths in runs, by a third code. */
interface CodeTable {
  readonly signs: number;
  readonly distances: number;
  /** Signs of the third code with the bits that follow them: pairs. */
  readonly runs: readonly number[];
  readonly code: Code;
  readonly told: number;
  readonly bits: number;
}

const TOLD_ORDER = [16, 17, 18, 0, 8, 7, 9, 6, 10, 5, 11, 4, 12, 3, 13, 2, 14, 1, 15];
const runExtra = (sign: number): number => (sign === 16 ? 2 : sign === 17 ? 3 : sign === 18 ? 7 : 0);

function tableOf(lengths: Uint8Array, distanceLengths: Uint8Array): CodeTable {
  let signs = SIGNS;
  while (signs > 257 && lengths[signs - 1] === 0) signs--;
  let distances = DISTANCES;
  while (distances > 1 && distanceLengths[distances - 1] === 0) distances--;
  const runs = runsOf([...lengths.subarray(0, signs), ...distanceLengths.subarray(0, distances)]);
  const ofRuns = new Uint32Array(19);
  for (let i = 0; i < runs.length; i += 2) ofRuns[runs[i]!]!++;
  const code = huffmanCode(ofRuns, 19, 7);
  let told = 19;
  while (told > 4 && code.lengths[TOLD_ORDER[told - 1]!] === 0) told--;
  let bits = 14 + 3 * told + bitsOf(ofRuns, code);
  for (let i = 0; i < runs.length; i += 2) bits += runExtra(runs[i]!);
  return { signs, distances, runs, code, told, bits };
}

/** Lengths as signs: themselves, the last again 3 to 6 times, none 3 to 10 or 11 to 138 times. */
function runsOf(lengths: readonly number[]): number[] {
  const runs: number[] = [];
  for (let at = 0; at < lengths.length; ) {
    const length = lengths[at]!;
    let same = 1;
    while (lengths[at + same] === length) same++;
    at += same;
    if (length > 0) {
      runs.push(length, 0);
      same--;
    }
    const [least, most] = length > 0 ? [3, 6] : [3, 138];
    while (same >= least) {
      const run = Math.min(same, most);
      if (length > 0) runs.push(16, run - 3);
      else if (run < 11) runs.push(17, run - 3);
      else runs.push(18, run - 11);
      same -= run;
    }
    for (; same > 0; same--) runs.push(length, 0);
  }
  return runs;
}

function writeTable(out: Bits, { signs, distances, runs, code, told }: CodeTable): void {
  out.reserve(2 * runs.length + 80);
  out.add(signs - 257, 5);
  out.add(distances - 1, 5);
  out.add(told - 4, 4);
  for (let i = 0; i < told; i++) out.add(code.lengths[TOLD_ORDER[i]!]!, 3);
  for (let i = 0; i < runs.length; i += 2) {
    const sign = runs[i]!;
    out.add(code.words[sign]!, code.lengths[sign]!);
    const extra = runExtra(sign);
    if (extra > 0) out.add(runs[i + 1]!, extra);
  }
}
