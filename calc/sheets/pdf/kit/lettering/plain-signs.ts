import { SIGN_DIGITS } from '../operators.ts';

/** What is known of the signs of ASCII in a font, by their codes. */
export interface PlainSigns {
  /** As a share of the size; no number where a sign was not met. */
  readonly advances: Float64Array;
  /** `SIGN_DIGITS` for each sign, as bytes; 0 where it was not met. */
  readonly digits: Uint8Array;
}

const SIGNS = 128;

/** Nothing is met yet. */
export const noSigns = (): PlainSigns => ({
  advances: new Float64Array(SIGNS).fill(Number.NaN),
  digits: new Uint8Array(SIGNS * SIGN_DIGITS),
});

/** Keeps a sign of ASCII that was met. */
export function keepSign(
  { advances, digits }: PlainSigns,
  letter: string,
  { code, advance }: { readonly code: string; readonly advance: number },
): void {
  const at = letter.charCodeAt(0);
  if (at >= SIGNS || code.length !== SIGN_DIGITS) return;
  advances[at] = advance;
  for (let i = 0; i < SIGN_DIGITS; i++) digits[at * SIGN_DIGITS + i] = code.charCodeAt(i);
}

/** The advances of a text, added from its begin on; no number where one of its signs is not known. */
export function plainAdvance({ advances }: PlainSigns, text: string): number {
  let sum = 0;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code >= SIGNS) return Number.NaN;
    sum += advances[code]!;
  }
  return sum;
}
