import type { Gridline } from '../../site/site.ts';

/** I and O are read as 1 and 0 on a drawing, so no line is called that. By custom of the trade, no source. */
const LETTERS = 'ABCDEFGHJKLMNPQRSTUVWXYZ';

/** The letter of the n-th line across, from 0: A to Z without I and O, then AA, AB. */
export function lineLetter(n: number): string {
  const own = LETTERS[n % LETTERS.length]!;
  return n < LETTERS.length ? own : lineLetter(Math.floor(n / LETTERS.length) - 1) + own;
}

/** The number of the n-th line along, from 0. */
export const lineNumber = (n: number): string => String(n + 1);

/** Two lines nearer than this are one, feet. */
const SAME = 0.05;

/**
 * Reference lines with new ones among them, in order. Where a line stands already it keeps its name; a new one takes
 * the next name that no line of the same kind has. Lengths in feet.
 */
export function withLines(lines: readonly Gridline[], at: readonly number[], name: (n: number) => string): Gridline[] {
  const all = [...lines];
  let n = 0;
  for (const place of [...at].sort((a, b) => a - b)) {
    if (all.some((line) => Math.abs(line.at - place) < SAME)) continue;
    while (all.some(({ label }) => label === name(n))) n++;
    all.push({ label: name(n), at: place });
  }
  return all.sort((a, b) => a.at - b.at);
}
