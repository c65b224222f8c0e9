import { clustersOf, joins } from '../scripts/clusters.ts';
import { inert } from './inert.ts';
import type { Lettering, Weight } from './lettering.ts';

/** A text that goes into a width: itself, or its beginning and an ellipsis. */
export function shortened(
  text: string,
  width: number,
  size: number,
  lettering: Pick<Lettering, 'width'>,
  weight?: Weight,
): string {
  if (lettering.width(text, size, weight) <= width) return text;
  const letters = clustersOf(inert(text));
  if (joins(text)) {
    let most = letters.length - 1;
    const begins = (count: number): string => `${letters.slice(0, count).join('').trimEnd()}…`;
    while (most > 0 && lettering.width(begins(most), size, weight) > width) most--;
    return begins(most);
  }
  let used = lettering.width('…', size, weight);
  let count = 0;
  while (count < letters.length) {
    used += lettering.width(letters[count]!, size, weight);
    if (used > width) break;
    count++;
  }
  return `${letters.slice(0, count).join('').trimEnd()}…`;
}

/**
 * A text in lines of at most a width: parted at spaces, and inside a word only where the word alone is too long. At most
 * `most` lines; then the last one ends in an ellipsis.
 */
export function wrapped(
  text: string,
  width: number,
  size: number,
  lettering: Lettering,
  { most = Infinity, weight = 'regular' }: { readonly most?: number; readonly weight?: Weight } = {},
): readonly string[] {
  const space = lettering.width(' ', size, weight);
  // Most cells of a table are plainly one line, which shows without looking at their words; a text that is near the edge is wrapped.
  if (isPlainLine(text) && lettering.width(text, size, weight) < width - NEAR) return [text];
  const lines: string[] = [];
  let line = '';
  let used = 0;
  const push = (): void => {
    if (line !== '') lines.push(line);
    line = '';
    used = 0;
  };
  for (const whole of inert(text).split(' ')) {
    if (whole === '') continue;
    for (const word of broken(whole, width, size, lettering, weight)) {
      const wide = lettering.width(word, size, weight);
      if (line !== '' && used + space + wide > width) push();
      used += (line === '' ? 0 : space) + wide;
      line = line === '' ? word : `${line} ${word}`;
    }
  }
  push();
  if (lines.length <= most) return lines;
  const last = lines.slice(most - 1).join(' ');
  return [...lines.slice(0, most - 1), shortened(last, width, size, lettering, weight)];
}

/** Points by which a width as a whole and as the sum of its words surely differ less. */
const NEAR = 1e-6;

/** Words with one space between them each, and none at an end, that are printed as they are. */
function isPlainLine(text: string): boolean {
  let before = SPACE;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code > LAST_PLAIN) return isSpaced(text) && inert(text) === text;
    if (code < SPACE || (code === SPACE && before === SPACE)) return false;
    before = code;
  }
  return before !== SPACE;
}

const SPACE = 0x20;
const LAST_PLAIN = 0x7e;

const isSpaced = (text: string): boolean => !text.startsWith(' ') && !text.endsWith(' ') && !text.includes('  ');

/** A word in parts that each go into the width. */
function broken(word: string, width: number, size: number, lettering: Lettering, weight: Weight): readonly string[] {
  if (lettering.width(word, size, weight) <= width) return [word];
  const parts: string[] = [];
  let part = '';
  let used = 0;
  const isJoined = joins(word);
  for (const letter of clustersOf(word)) {
    const wide = isJoined ? lettering.width(part + letter, size, weight) - used : lettering.width(letter, size, weight);
    if (part !== '' && used + wide > width) {
      parts.push(part);
      part = '';
      used = 0;
    }
    part += letter;
    used += wide;
  }
  return [...parts, part];
}
