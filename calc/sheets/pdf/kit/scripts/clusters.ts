/** Scripts whose letters join, stack or change places, so that a part of a text is not as wide as its signs one by one. */
const JOINS = /[\p{Script=Hebrew}\p{Script=Arabic}\p{Script=Devanagari}\p{Script=Thai}]/u;

/** What is not parted: a sign with its marks, consonants that are one letter in Devanagari, a vowel of Thai with its own. */
const CLUSTER = /(?:.[\p{M}\u200c\u200d]*\u094d\u200d?)*[\u0e40-\u0e44]?.(?:\u0e33|[\p{M}\u200c\u200d])*/gsu;

/** Whether the widths of a text's signs do not add up to its own. */
export const joins = (text: string): boolean => JOINS.test(text);

/** A text in the least parts at which a line may end within a word. */
export const clustersOf = (text: string): readonly string[] => (joins(text) ? (text.match(CLUSTER) ?? []) : [...text]);
