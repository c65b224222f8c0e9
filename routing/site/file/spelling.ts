/**
 * How a file spelled what reading it loses: the order of keys that look like whole numbers, `9.0` for 9, `\u00bd` for
 * a half. Writing an object that was not changed since gives it back, so that only what was edited shows in a diff.
 */
export interface Spelling {
  /** Keys in the order of the file, where the object's own order differs. */
  readonly keys?: readonly string[];
  /** Keys whose text is not the plain one, by key: the text with its quotes. */
  readonly keyTexts?: ReadonlyMap<string, string>;
  /** Scalars whose text is not the plain one, by key or index. */
  readonly texts?: ReadonlyMap<string | number, string>;
}

// Of objects that came out of the reader alone; an edit makes a new object, which has none.
const spellings = new WeakMap<object, Spelling>();

export const spellingOf = (of: object): Spelling | undefined => spellings.get(of);

export function rememberSpelling(of: object, spelling: Spelling): void {
  spellings.set(of, spelling);
}
