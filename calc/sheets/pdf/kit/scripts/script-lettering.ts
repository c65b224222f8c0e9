import type { PDFDocument, PDFRef } from '@cantoo/pdf-lib';
import type { Font } from 'fontkit';
import type { SetLettering, Weight } from '../lettering/lettering.ts';
import { utf16 } from '../operators.ts';
import { inSight } from './direction.ts';
import { FACES, type FaceName, facesInOrder, type ReadFace } from './faces.ts';
import { fontOf } from './font-of.ts';
import { facesFor, scriptPieces } from './pieces.ts';
import { type ShapedPiece, shaped } from './shape.ts';
import { faceHas } from './signs.ts';
import { type SubsetFont, subsetFont } from './subset-font.ts';

/** Letters what the typeface of the set has no signs for. */
export interface ScriptLettering {
  readonly has: (code: number) => boolean;
  /** Width of a text, as a share of the size. */
  readonly advance: (text: string, weight: Weight) => number;
  /** A text as operators of a content stream, between those that place it. */
  readonly shown: (text: string, weight: Weight, size: number) => string;
  /** The typefaces by their names in a page's resources. */
  readonly refs: Readonly<Record<string, PDFRef>>;
  /** Writes the typefaces into the document, when all is drawn. */
  readonly finish: () => void;
}

/** A piece of a text as it is set: in the typeface of the set sign by sign, else shaped. */
type SetPiece =
  | { readonly face: 'set'; readonly text: string; readonly advance: number }
  | { readonly face: FaceName; readonly text: string; readonly piece: ShapedPiece };

/** How much wider the strokes of a bold letter are, as a share of the size: the typefaces come in one weight. */
const BOLD = 0.035;

/**
 * Reads the typefaces that a text needs beside that of the set; null where it needs none.
 * @param printed the texts that it lacks signs for
 * @param set letters in the typeface of the set, sign by sign
 */
export async function scriptLettering(
  doc: PDFDocument,
  read: ReadFace,
  printed: readonly string[],
  set: SetLettering,
): Promise<ScriptLettering | null> {
  const { needed, files } = await facesRead(printed, read);
  if (needed.length === 0) return null;
  const fonts = new Map<FaceName, { readonly font: Font; readonly subset: SubsetFont }>();
  for (const name of needed) {
    const font = fontOf(files.get(name)!);
    fonts.set(name, { font, subset: subsetFont(doc, font, `OVRR${letterOf(name)}+${postScriptName(name)}`) });
  }
  const known = new Map<string, readonly SetPiece[]>();
  const piecesFor = (text: string, weight: Weight): readonly SetPiece[] => {
    const key = `${weight} ${text}`;
    const before = known.get(key);
    if (before) return before;
    const pieces = inSight(scriptPieces(text, needed)).map((piece): SetPiece => {
      const { face } = piece;
      if (face !== 'set') return { face, text: piece.text, piece: shaped(fonts.get(face)!.font, piece) };
      const inOrder = piece.level % 2 === 1 ? [...piece.text].reverse().join('') : piece.text;
      return { face, text: inOrder, advance: set.advance(inOrder, weight) };
    });
    known.set(key, pieces);
    return pieces;
  };
  return {
    has: (code) => needed.some((face) => faceHas(face, code)),
    advance: (text, weight) =>
      piecesFor(text, weight).reduce(
        (sum, piece) => sum + (piece.face === 'set' ? piece.advance : piece.piece.advance / 1000),
        0,
      ),
    shown: (text, weight, size) =>
      piecesFor(text, weight)
        .map((piece) => {
          if (piece.face === 'set')
            return `/${set.name(weight)} ${figure(size)} Tf 0 Tr ${set.shows(piece.text, weight, size)}`;
          const bold = weight === 'bold' ? `2 Tr ${figure(BOLD * size)} w` : '0 Tr';
          const { piece: glyphs, face } = piece;
          return `/${nameOf(face)} ${figure(size)} Tf ${bold} ${drawn(glyphs, fonts.get(face)!.subset, size)}`;
        })
        .join(' '),
    refs: Object.fromEntries([...fonts].map(([name, { subset }]) => [nameOf(name), subset.ref])),
    finish: () => {
      for (const { subset } of fonts.values()) subset.finish();
    },
  };
}

/** The typefaces that texts need, read; where one cannot be had, what else has its signs stands in for it. */
async function facesRead(
  printed: readonly string[],
  read: ReadFace,
): Promise<{ readonly needed: readonly FaceName[]; readonly files: ReadonlyMap<FaceName, Uint8Array> }> {
  const files = new Map<FaceName, Uint8Array | null>();
  let order = facesInOrder(printed.join(' '));
  for (;;) {
    const needed = facesFor(printed, order);
    for (const name of needed) if (!files.has(name)) files.set(name, await read(name));
    if (needed.every((name) => files.get(name))) return { needed, files: files as Map<FaceName, Uint8Array> };
    order = order.filter((name) => files.get(name) !== null);
  }
}

const letterOf = (name: FaceName): string => String.fromCharCode(65 + FACES.indexOf(name)).padStart(2, 'S');
const postScriptName = (name: FaceName): string => `Lettering-${name.replaceAll('-', '')}`;
/** The name of a typeface in a page's resources. */
const nameOf = (name: FaceName): string => `S${FACES.indexOf(name) + 1}`;

/** Shaped glyphs as operators: each where it belongs, from the pen on. */
function drawn({ glyphs, advance, reads }: ShapedPiece, { code }: SubsetFont, size: number): string {
  const out: string[] = [];
  let row: string[] = [];
  let up = 0;
  const flush = (): void => {
    if (row.length > 0) out.push(`[${row.join(' ')}] TJ`);
    row = [];
  };
  // Where the pen of the page stands, and where that of the typeface does.
  let at = 0;
  let pen = 0;
  const moveTo = (place: number): void => {
    if (place !== at) row.push(String(at - place));
    at = place;
  };
  for (const glyph of glyphs) {
    if (glyph.up !== up) {
      flush();
      up = glyph.up;
      out.push(`${figure((up * size) / 1000)} Ts`);
    }
    moveTo(pen + glyph.right);
    row.push(`<${code(glyph)}>`);
    at += glyph.width;
    pen += glyph.advance;
  }
  moveTo(advance);
  flush();
  if (up !== 0) out.push('0 Ts');
  const words = out.join(' ');
  return reads === null ? words : `/Span <</ActualText <feff${utf16(reads)}>>> BDC ${words} EMC`;
}

const figure = (value: number): string => String(Math.round(value * 1000) / 1000);
