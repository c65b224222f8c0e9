/** What is known of the signs of one byte, those of Latin 1, in a font, by their codes. */
export interface PlainSigns {
  /** As a share of the size; no number where a sign was not met. */
  readonly advances: Float64Array;
  /** Their numbers in the font; 0 where a sign was not met. */
  readonly glyphs: Uint16Array;
}

const SIGNS = 256;
/** Hexadecimal digits of a sign in a font of a content stream. */
const DIGITS = 4;

/** Nothing is met yet. */
export const noSigns = (): PlainSigns => ({
  advances: new Float64Array(SIGNS).fill(Number.NaN),
  glyphs: new Uint16Array(SIGNS),
});

/** Keeps a sign of one byte that was met. */
export function keepSign(
  { advances, glyphs }: PlainSigns,
  letter: string,
  { code, advance }: { readonly code: string; readonly advance: number },
): void {
  const at = letter.charCodeAt(0);
  if (at >= SIGNS || code.length !== DIGITS) return;
  advances[at] = advance;
  glyphs[at] = Number.parseInt(code, 16);
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
