/** Code words of an alphabet, by sign: how many bits each has (0: it does not occur), and the bits, the first one lowest. */
export interface Code {
  readonly lengths: Uint8Array;
  readonly words: Uint16Array;
}

/**
 * The code of least total length for signs that occur so often, none longer than so many bits: Huffman's, with codes that
 * came out too long cut and paid for by the longest of the others. Of one sign alone the code has one bit.
 */
export function huffmanCode(counts: Uint32Array, signs: number, most: number): Code {
  const lengths = lengthsOf(counts, signs, most);
  return { lengths, words: huffmanWords(lengths) };
}

/** Room of the largest alphabet: its signs, and the nodes over them. */
const weights = new Float64Array(2 * 288);
const over = new Uint16Array(2 * 288);
const depths = new Uint8Array(2 * 288);
/** A count and its sign as one number, so that they are sorted by both. */
const order = new Float64Array(288);

function lengthsOf(counts: Uint32Array, signs: number, most: number): Uint8Array {
  const lengths = new Uint8Array(signs);
  let used = 0;
  for (let sign = 0; sign < signs; sign++) if (counts[sign]! > 0) order[used++] = counts[sign]! * 512 + sign;
  const sorted = order.subarray(0, used).sort();
  if (used === 1) lengths[sorted[0]! % 512] = 1;
  if (used < 2) return lengths;
  for (let i = 0; i < used; i++) weights[i] = Math.floor(sorted[i]! / 512);
  // The two lightest are joined, of leaves and of what was joined before: both lie in order of their weight.
  let leaf = 0;
  let joint = used;
  const last = 2 * used - 2;
  for (let at = used; at <= last; at++) {
    const first = leaf < used && (joint >= at || weights[leaf]! <= weights[joint]!) ? leaf++ : joint++;
    const second = leaf < used && (joint >= at || weights[leaf]! <= weights[joint]!) ? leaf++ : joint++;
    weights[at] = weights[first]! + weights[second]!;
    over[first] = at;
    over[second] = at;
  }
  const ofLength = new Int32Array(most + 1);
  depths[last] = 0;
  // Shares of all code words that are taken, as counts of the longest.
  let taken = 0;
  for (let at = last - 1; at >= 0; at--) {
    depths[at] = depths[over[at]!]! + 1;
    if (at >= used) continue;
    const length = Math.min(depths[at]!, most);
    ofLength[length]!++;
    taken += 1 << (most - length);
  }
  while (taken > 1 << most) {
    // A word that is not of the longest gets longer by one, and with it one of the longest finds its place.
    let length = most - 1;
    while (ofLength[length] === 0) length--;
    ofLength[length]!--;
    ofLength[length + 1]! += 2;
    ofLength[most]!--;
    taken--;
  }
  // The rarest have the longest.
  let at = 0;
  for (let length = most; length > 0; length--)
    for (let k = ofLength[length]!; k > 0; k--) lengths[sorted[at++]! % 512] = length;
  return lengths;
}

/** Code words in order of length, then of sign (RFC 1951, 3.2.2), turned round: they are sent from their first bit. */
export function huffmanWords(lengths: Uint8Array): Uint16Array {
  const next = new Uint16Array(17);
  const ofLength = new Uint16Array(16);
  for (const length of lengths) if (length > 0) ofLength[length]!++;
  for (let length = 1; length < 16; length++) next[length + 1] = (next[length]! + ofLength[length]!) << 1;
  const words = new Uint16Array(lengths.length);
  lengths.forEach((length, sign) => {
    if (length === 0) return;
    let word = next[length]!++;
    let turned = 0;
    for (let i = 0; i < length; i++) {
      turned = (turned << 1) | (word & 1);
      word >>= 1;
    }
    words[sign] = turned;
  });
  return words;
}
