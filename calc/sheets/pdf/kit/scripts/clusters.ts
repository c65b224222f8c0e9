/** Scripts whose letters join, stack or change places, so that a part of a text is not as wide as its signs one by one. */
const JOINS =
  /[\p{Script=Hebrew}\p{Script=Arabic}\p{Script=Devanagari}\p{Script=Bengali}\p{Script=Gurmukhi}\p{Script=Gujarati}\p{Script=Tamil}\p{Script=Telugu}\p{Script=Kannada}\p{Script=Malayalam}\p{Script=Thai}\p{Emoji_Modifier}\p{Regional_Indicator}]|\u200d|\u20e3|\ufe0f/u;

/** Emoji of several signs: flags, keys, pictures with a skin tone or joined to others (UTS 51). */
const EMOJI =
  '\\p{RI}\\p{RI}|[0-9#*]\\ufe0f?\\u20e3|\\p{ExtPict}(?:\\p{EMod}|\\ufe0f?)(?:\\u200d\\p{ExtPict}(?:\\p{EMod}|\\ufe0f?))*';

/** Each emoji of a text whole, and every other sign. */
export const EMOJI_OR_SIGN = new RegExp(`${EMOJI}|.`, 'gsu');

/** What is not parted: a sign with its marks, consonants that are one letter in scripts of India, a vowel of Thai with its own. */
const CLUSTER = new RegExp(
  `${EMOJI}|(?:.[\\p{M}\\u200c\\u200d]*[\\u094d\\u09cd\\u0a4d\\u0acd\\u0bcd\\u0c4d\\u0ccd\\u0d4d]\\u200d?)*[\\u0e40-\\u0e44]?.(?:\\u0e33|[\\p{M}\\u200c\\u200d])*`,
  'gsu',
);

/** Whether the widths of a text's signs do not add up to its own. */
export const joins = (text: string): boolean => JOINS.test(text);

/** A text in the least parts at which a line may end within a word. */
export const clustersOf = (text: string): readonly string[] => (joins(text) ? (text.match(CLUSTER) ?? []) : [...text]);
