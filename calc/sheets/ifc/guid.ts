const DIGITS = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz_$';

/**
 * A global id of the IFC form (22 digits to the base 64) that the same words always get, so that two writings of a site
 * can be compared: four 32-bit FNV-1a sums (Fowler, Noll and Vo) of the words with four different beginnings.
 */
export function guidOf(words: string): string {
  const sums = [0x811c9dc5, 0x01000193, 0x9e3779b9, 0x85ebca6b].map((start) => {
    let sum = start;
    for (let i = 0; i < words.length; i++) sum = Math.imul(sum ^ words.charCodeAt(i), 0x01000193) >>> 0;
    return Math.imul(sum ^ (sum >>> 15), 0x2c1b3c6d) >>> 0;
  });
  let bits = sums.reduce((all, sum) => (all << 32n) | BigInt(sum), 0n);
  let digits = '';
  for (let i = 0; i < 22; i++) {
    digits = DIGITS[Number(bits & 63n)] + digits;
    bits >>= 6n;
  }
  // The first digit holds two bits only.
  return digits;
}
