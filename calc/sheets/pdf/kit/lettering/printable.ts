/**
 * A text in signs that a typeface has, so that a name can still be told from others: a sign that it lacks is written in
 * plainer ones where it is made of them (a full-width letter, a ligature, a figure in a ring), else by its number in
 * Unicode between brackets, neighbors in one pair: `[U+5145 U+7535] 2`.
 */
export function printable(text: string, has: (code: number) => boolean): string {
  if (hasAll(text, has)) return text;
  const isThere = (letter: string): boolean => has(letter.codePointAt(0)!) || SPACE.test(letter);
  let out = '';
  let lacking: string[] = [];
  const close = (): void => {
    if (lacking.length > 0) out += `[${lacking.join(' ')}]`;
    lacking = [];
  };
  for (const letter of text) {
    // What joins or varies the sign before it, skin tones and accents that stand alone, prints as nothing.
    if (!isThere(letter) && JOINS.test(letter)) continue;
    const plain = isThere(letter) ? letter : plainly(letter, isThere);
    if (plain === null) lacking.push(codeOf(letter));
    else {
      close();
      out += plain;
    }
  }
  close();
  return out;
}

/** Nearly every text is: it is found out without taking it apart. */
function hasAll(text: string, has: (code: number) => boolean): boolean {
  for (const letter of text) if (!has(letter.codePointAt(0)!)) return false;
  return true;
}

/** `U+5145`. */
export const codeOf = (letter: string): string =>
  `U+${letter.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')}`;

const SPACE = /^\p{Zs}$/u;
/** Marks (variation selectors among them), the joiner of emoji, skin tones. */
const JOINS = /^(?:\p{M}|\u200d|\p{Emoji_Modifier})$/u;

/** A sign in the signs that it is made of; null where the typeface lacks one of these too. */
function plainly(letter: string, isThere: (letter: string) => boolean): string | null {
  const parts = [...letter.normalize('NFKD')].filter((part) => isThere(part) || !JOINS.test(part));
  return parts.length > 0 && parts.join('') !== letter && parts.every(isThere) ? parts.join('') : null;
}
