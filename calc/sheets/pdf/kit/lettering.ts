import type { PDFDocument, PDFFont, PDFRef } from '@cantoo/pdf-lib';
import * as fontkit from 'fontkit';
import { inert } from './inert.ts';
import type { LetterSizes } from './letters.ts';
import { printable } from './printable.ts';

/** The bytes of the two TrueType or OpenType fonts that a set is lettered in. */
export interface FontBytes {
  readonly regular: Uint8Array;
  /** For names and headings. */
  readonly bold: Uint8Array;
}

export type Weight = keyof FontBytes;

/** Measures text and turns it into the codes of the embedded fonts. */
export interface Lettering {
  readonly sizes: LetterSizes;
  /** Width of a text as it is printed, points. */
  readonly width: (text: string, size: number, weight?: Weight) => number;
  /** The text as a hexadecimal string of the content stream; every sign in it stays text that can be searched. */
  readonly encoded: (text: string, weight?: Weight) => string;
  /** Signs of a text that the font does not have, each once; they are printed as `printable` writes them. */
  readonly missing: (text: string) => readonly string[];
  readonly refs: Readonly<Record<Weight, PDFRef>>;
}

interface Sign {
  readonly code: string;
  /** Advance, as a share of the size of the font. */
  readonly advance: number;
}

/**
 * Embeds the fonts, cut down to the signs that are used, with figures of one width where the font has them. Text is set
 * sign by sign, without ligatures, so that what is copied out of the sheet is what went in.
 */
export async function letteringIn(doc: PDFDocument, fonts: FontBytes, sizes: LetterSizes): Promise<Lettering> {
  doc.registerFontkit(fontkit as Parameters<PDFDocument['registerFontkit']>[0]);
  const embed = (bytes: Uint8Array, customName: string): Promise<PDFFont> =>
    doc.embedFont(bytes, { subset: true, customName, features: { tnum: true } });
  const faces: Readonly<Record<Weight, PDFFont>> = {
    regular: await embed(fonts.regular, 'OVRRWA+Lettering'),
    bold: await embed(fonts.bold, 'OVRRWB+Lettering-Bold'),
  };
  const signs = { regular: signsOf(faces.regular), bold: signsOf(faces.bold) };
  const has = new Set(faces.regular.getCharacterSet());
  const shown = (text: string): string => printable(inert(text), (code) => has.has(code));
  // The same words stand on many sheets, and are measured again for each place that is tried.
  const advances: Readonly<Record<Weight, Map<string, number>>> = { regular: new Map(), bold: new Map() };
  const advanceOf = (text: string, weight: Weight): number => {
    const known = advances[weight].get(text);
    if (known !== undefined) return known;
    let sum = 0;
    for (const letter of shown(text)) sum += signs[weight](letter).advance;
    advances[weight].set(text, sum);
    return sum;
  };
  return {
    sizes,
    width: (text, size, weight = 'regular') => advanceOf(text, weight) * size,
    encoded: (text, weight = 'regular') => {
      let codes = '';
      for (const letter of shown(text)) codes += signs[weight](letter).code;
      return `<${codes}>`;
    },
    missing: (text) =>
      [...new Set(inert(text))].filter((letter) => !has.has(letter.codePointAt(0)!) && !isSpace(letter)),
    refs: { regular: faces.regular.ref, bold: faces.bold.ref },
  };
}

/** The names under which the fonts stand in a page's resources. */
export const FONT_NAMES: Readonly<Record<Weight, string>> = { regular: 'F1', bold: 'F2' };

const QUESTION = 0x3f;

const isSpace = (letter: string): boolean => /^\p{Zs}$/u.test(letter);

function signsOf(face: PDFFont): (letter: string) => Sign {
  const has = new Set(face.getCharacterSet());
  const signs = new Map<string, Sign>();
  return (letter) => {
    const known = signs.get(letter);
    if (known !== undefined) return known;
    const isThere = has.has(letter.codePointAt(0)!);
    // The bold face may lack what the regular one has.
    const printed = isThere ? letter : isSpace(letter) || !has.has(QUESTION) ? ' ' : '?';
    const code = face.encodeText(printed).toString().slice(1, -1);
    const sign = { code, advance: face.widthOfTextAtSize(printed, 1000) / 1000 };
    signs.set(letter, sign);
    return sign;
  };
}
