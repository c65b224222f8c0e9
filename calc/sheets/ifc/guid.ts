const DIGITS = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz_$';

/**
 * A global id of the IFC form (22 digits to the base 64) that the same words always get, so that two writings of a site
 * can be compared: four 32-bit FNV-1a sums (Fowler, Noll and Vo) of the words with four different beginnings.
 */
export function guidOf(words: string): string {
  const sums = STARTS.map((start) => {
    let sum = start;
    for (let i = 0; i < words.length; i++) sum = Math.imul(sum ^ words.charCodeAt(i), 0x01000193);
    return Math.imul(sum ^ (sum >>> 15), 0x2c1b3c6d);
  });
  // The first digit holds two bits only, for 22 of six are four more than there are.
  let digits = '';
  for (let bit = 126; bit >= 0; bit -= 6) {
    const place = 3 - (bit >> 5);
    const from = bit & 31;
    const above = from > 26 && place > 0 ? sums[place - 1]! << (32 - from) : 0;
    digits += DIGITS[((sums[place]! >>> from) | above) & 63];
  }
  return digits;
}

const STARTS = [0x811c9dc5, 0x01000193, 0x9e3779b9, 0x85ebca6b];
