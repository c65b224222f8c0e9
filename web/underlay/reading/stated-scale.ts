/** Feet and inches on the ground: `20'-0"`, `20'`, `1'-0"`. */
const GROUND = String.raw`(\d{1,4}(?:\.\d+)?)\s*['’′](?:\s*-?\s*(\d{1,2})\s*["”″])?`;
/** Inches on paper: `1"`, `1/8"`, `1 1/2"`. */
const PAPER = String.raw`(?:(\d{1,2})\s+)?(\d{1,2})(?:/(\d{1,2}))?\s*["”″]`;
const IN_FEET = new RegExp(String.raw`${PAPER}\s*=\s*${GROUND}`, 'g');
const RATIO = /\bscale\s*:?\s*1\s*:\s*(\d{2,5})\b/gi;

/**
 * Feet on the ground for an inch of paper, as the words of a sheet say it: `1" = 20'-0"`, `1/8" = 1'-0"`, `scale 1:200`.
 * Null where they say none, or several that differ.
 */
export function statedScale(words: string): number | null {
  const found: number[] = [];
  for (const [, whole = '0', over = '', under = '1', feet = '', inches = '0'] of words.matchAll(IN_FEET)) {
    const paper = Number(whole) + Number(over) / Number(under);
    found.push((Number(feet) + Number(inches) / 12) / paper);
  }
  for (const [, ratio = ''] of words.matchAll(RATIO)) found.push(Number(ratio) / 12);
  const [first, ...others] = found.filter((scale) => Number.isFinite(scale) && scale > 0);
  return first !== undefined && others.every((scale) => Math.abs(scale / first - 1) < 1e-6) ? first : null;
}
