declare const typed: unique symbol;

/**
 * What a person typed, not read yet. `12' 6`, `2*40 A` and `3,8 m` are numbers to a person and none to JavaScript:
 * `readLength` and `readNumber` know what they mean, and the compiler lets nothing else take this for a number or a text.
 */
export interface TypedText {
  readonly [typed]: 'typed text';
}

/** A text as it comes out of a field that is typed into. */
export const typedText = (text: string): TypedText => text as unknown as TypedText;

/** What was typed letter by letter: to be shown again, or where words are meant. */
export const typedLetters = (typed: TypedText): string => typed as unknown as string;

interface NoNumber {
  readonly 'typed text is read by readLength or readNumber': never;
}

declare global {
  interface NumberConstructor {
    (typed: TypedText): NoNumber;
    // The one that there is, again: it is by the last that `map(Number)` is understood.
    // biome-ignore lint/suspicious/noExplicitAny: as the language has it
    (value?: any): number;
  }
}
