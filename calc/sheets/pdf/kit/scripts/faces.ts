/** Typefaces beside the one of the set, for signs that it lacks; the order in which they are asked where it does not matter. */
export const FACES = [
  'greek',
  'greek-extended',
  'cyrillic-extended',
  'latin-extended',
  'hebrew',
  'arabic',
  'devanagari',
  'thai',
  'armenian',
  'georgian',
  'bengali',
  'gurmukhi',
  'gujarati',
  'tamil',
  'telugu',
  'kannada',
  'malayalam',
  'chinese-simplified',
  'chinese-traditional',
  'japanese',
  'korean',
  // Han signs that none of those before has.
  'han-rest',
  'emoji',
  'symbols',
] as const;

export type FaceName = (typeof FACES)[number];

/** Typefaces that a page fetches and keeps once a site needs them: most lots never do, and they are large, or of one script each. */
export const FETCHED_LATER = [
  'armenian',
  'georgian',
  'bengali',
  'gurmukhi',
  'gujarati',
  'tamil',
  'telugu',
  'kannada',
  'malayalam',
  'chinese-simplified',
  'chinese-traditional',
  'japanese',
  'korean',
  'han-rest',
  'emoji',
  'symbols',
] as const satisfies readonly FaceName[];

/** Gives the bytes of a typeface (WOFF, TrueType outlines) when it is asked for; null where it cannot be had now. */
export type ReadFace = (name: FaceName) => Promise<Uint8Array | null>;

const KANA = /[\u3041-\u3096\u309d-\u309f\u30a1-\u30fa\u30fd-\u30ff]/u;

/**
 * The typefaces in the order in which the signs of a text look for one. Han signs are drawn otherwise in Japan: where kana
 * stand in all that is printed, its typeface comes before those of China.
 */
export const facesInOrder = (printed: string): readonly FaceName[] =>
  KANA.test(printed) ? [...FACES].sort((a, b) => Number(b === 'japanese') - Number(a === 'japanese')) : FACES;
