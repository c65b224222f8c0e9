/** A title that goes on after another. */
export const lowered = (words: string): string => `${words[0]!.toLowerCase()}${words.slice(1)}`;
