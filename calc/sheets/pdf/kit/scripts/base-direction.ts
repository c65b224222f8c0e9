const RIGHT = /[\p{Script=Hebrew}\p{Script=Arabic}]/u;
const STRONG = /\p{L}/gu;

/**
 * Whether a text is set from right to left. A sheet is English and its lines run from left to right, unless the first
 * letter of a text and most of them run from right to left: `For` stays before a name, a note in Hebrew or Arabic is set
 * as such.
 */
export function runsFromRight(text: string): boolean {
  if (!RIGHT.test(text)) return false;
  const isRight = (text.match(STRONG) ?? []).map((letter) => RIGHT.test(letter));
  return isRight[0] === true && 2 * isRight.filter(Boolean).length > isRight.length;
}
