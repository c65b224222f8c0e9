import type { PDFDocument, PDFFont, PDFRef } from '@cantoo/pdf-lib';
import * as fontkit from 'fontkit';
import type { ReadFace } from '../scripts/faces.ts';
import type { ScriptLettering } from '../scripts/script-lettering.ts';
import { inert } from './inert.ts';
import type { LetterSizes } from './letters.ts';
import { keepSign, noSigns, type PlainSigns, plainAdvance } from './plain-signs.ts';
import { printable } from './printable.ts';
import { HAS_MARK, type PlaceOfMark, placesOfMarks, withMarksOver } from './set-marks.ts';
import { textsIn } from './texts-in.ts';

/** The bytes of the two TrueType or OpenType fonts that a set is lettered in. */
export interface FontBytes {
  readonly regular: Uint8Array;
  /** For names and headings. */
  readonly bold: Uint8Array;
  /** Reads a typeface for signs that these lack; without it they are written as `printable` does. */
  readonly scripts?: ReadFace;
}

export type Weight = 'regular' | 'bold';

/** Letters in the typeface of the set, sign by sign. */
export interface SetLettering {
  /** Width as a share of the size. */
  readonly advance: (text: string, weight: Weight) => number;
  /** Hexadecimal digits of a content stream. */
  readonly codes: (text: string, weight: Weight) => string;
  readonly name: (weight: Weight) => string;
  /** Operators that show a text, after those that place it and choose the font; marks stand over their letters. */
  readonly shows: (text: string, weight: Weight, size: number) => string;
}

/** Measures text and turns it into the codes of the embedded fonts. */
export interface Lettering {
  readonly sizes: LetterSizes;
  /** Width of a text as it is printed, points. */
  readonly width: (text: string, size: number, weight?: Weight) => number;
  /** The text as a hexadecimal string of the content stream; every sign in it stays text that can be searched. */
  readonly encoded: (text: string, weight?: Weight) => string;
  /** The numbers of the signs of one byte that were met already (`Operators.signs`): a text of no others needs no words. */
  readonly glyphs?: (weight: Weight) => Uint16Array;
  /** Whether a sign is printed as it is; others are as `printable` writes them. */
  readonly has: (code: number) => boolean;
  readonly refs: Readonly<Record<Weight, PDFRef>>;
  /** What letters the signs that the fonts do not have; only where something that is printed has such. */
  readonly scripts?: ScriptLettering;
  /** A text as operators of a content stream where the fonts lack signs of it or marks stand over its letters; null elsewhere. */
  readonly shown?: (text: string, size: number, weight?: Weight) => string | null;
}

interface Sign {
  readonly code: string;
  /** Advance, as a share of the size of the font. */
  readonly advance: number;
}

/**
 * Embeds the fonts, cut down to the signs that are used, with figures of one width where the font has them. Text is set
 * sign by sign, without ligatures, so that what is copied out of the sheet is what went in. Other scripts are shaped by
 * typefaces of their own, which are read where something that is printed needs them.
 * @param printed what holds all texts of a person's own that are to be printed: a site, names
 */
export async function letteringIn(
  doc: PDFDocument,
  fonts: FontBytes,
  sizes: LetterSizes,
  printed: readonly unknown[] = [],
): Promise<Lettering> {
  doc.registerFontkit(fontkit as Parameters<PDFDocument['registerFontkit']>[0]);
  const embed = (bytes: Uint8Array, customName: string): Promise<PDFFont> =>
    doc.embedFont(bytes, { subset: true, customName, features: { tnum: true } });
  const faces: Readonly<Record<Weight, PDFFont>> = {
    regular: await embed(fonts.regular, 'OVRRWA+Lettering'),
    bold: await embed(fonts.bold, 'OVRRWB+Lettering-Bold'),
  };
  const signs = { regular: signsOf(faces.regular), bold: signsOf(faces.bold) };
  const has = new Set(faces.regular.getCharacterSet());
  const placesOf: Readonly<Record<Weight, PlaceOfMark>> = {
    regular: placesOfMarks(fonts.regular),
    bold: placesOfMarks(fonts.bold),
  };
  const set: SetLettering = {
    advance: (text, weight) => {
      let sum = 0;
      for (const letter of text) sum += signs[weight](letter).advance;
      return sum;
    },
    codes: (text, weight) => {
      let codes = '';
      for (const letter of text) codes += signs[weight](letter).code;
      return codes;
    },
    name: (weight) => FONT_NAMES[weight],
    shows: (text, weight, size) =>
      HAS_MARK.test(text)
        ? withMarksOver(text, size, (letters) => set.codes(letters, weight), placesOf[weight])
        : `<${set.codes(text, weight)}> Tj`,
  };
  const lacking = fonts.scripts ? textsIn(printed, (code) => has.has(code)) : [];
  const scripts =
    fonts.scripts && lacking.length > 0
      ? await (await import('../scripts/script-lettering.ts')).scriptLettering(
          doc,
          fonts.scripts,
          lacking.map(inert),
          set,
        )
      : null;
  const isThere = (code: number): boolean => has.has(code) || (scripts?.has(code) ?? false);
  const shown = (text: string): string => (isPlain(text, has) ? text : printable(inert(text), isThere));
  const isOfSet = (text: string): boolean => {
    for (const letter of text) if (!has.has(letter.codePointAt(0)!)) return false;
    return true;
  };
  const plain: Readonly<Record<Weight, PlainSigns>> = { regular: noSigns(), bold: noSigns() };
  // The order in which signs are met is that of their numbers in the font: what is not plain is met as it is printed.
  const learn = (text: string, weight: Weight): void => {
    if (!isPlain(text, has)) return;
    for (const letter of text) keepSign(plain[weight], letter, signs[weight](letter));
  };
  // The same words stand on many sheets, and are measured again for each place that is tried.
  const advances: Readonly<Record<Weight, Map<string, number>>> = { regular: new Map(), bold: new Map() };
  const advanceOf = (text: string, weight: Weight): number => {
    const sum = plainAdvance(plain[weight], text);
    if (!Number.isNaN(sum)) return sum;
    const known = advances[weight].get(text);
    if (known !== undefined) return known;
    const words = shown(text);
    const other = scripts === null || isOfSet(words) ? set.advance(words, weight) : scripts.advance(words, weight);
    advances[weight].set(text, other);
    learn(text, weight);
    return other;
  };
  return {
    sizes,
    width: (text, size, weight = 'regular') => advanceOf(text, weight) * size,
    encoded: (text, weight = 'regular') => {
      const codes = set.codes(shown(text), weight);
      learn(text, weight);
      return `<${codes}>`;
    },
    glyphs: (weight) => plain[weight].glyphs,
    has: isThere,
    refs: { regular: faces.regular.ref, bold: faces.bold.ref },
    ...(scripts && { scripts }),
    shown: (text, size, weight = 'regular') => {
      if (isPlain(text, has)) return null;
      const words = shown(text);
      if (scripts !== null && !isOfSet(words)) return scripts.shown(words, weight, size);
      return HAS_MARK.test(words) ? `/${FONT_NAMES[weight]} ${size} Tf 0 Tr ${set.shows(words, weight, size)}` : null;
    },
  };
}

/** The names under which the fonts stand in a page's resources. */
export const FONT_NAMES: Readonly<Record<Weight, string>> = { regular: 'F1', bold: 'F2' };

const QUESTION = 0x3f;

/** Nearly every text is: printed as it is, in signs that the font has. */
function isPlain(text: string, has: ReadonlySet<number>): boolean {
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (!isOfOneByte(code) || !has.has(code)) return false;
  }
  return true;
}

/** Signs of Latin 1 that are printed as they are, whatever stands beside them: no control, no soft hyphen, no space but the one. */
const isOfOneByte = (code: number): boolean =>
  (code >= 0x20 && code <= 0x7e) || (code > 0xa0 && code <= 0xff && code !== 0xad);

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
