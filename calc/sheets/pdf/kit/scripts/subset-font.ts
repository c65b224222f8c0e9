import { PDFArray, type PDFDocument, PDFName, type PDFRef, PDFString } from '@cantoo/pdf-lib';
import type { Font } from 'fontkit';
import { utf16 } from '../operators.ts';
import type { ShapedGlyph } from './shape.ts';

/** A typeface in a document, cut down to the glyphs that are drawn. */
export interface SubsetFont {
  readonly ref: PDFRef;
  /** The code of a glyph in a content stream, four hexadecimal digits. */
  readonly code: (glyph: ShapedGlyph) => string;
  /** Writes the typeface into the document, once all that is drawn in it is known. */
  readonly finish: () => void;
}

/** As the package has it; its types say otherwise. */
interface Subset {
  readonly includeGlyph: (glyph: number) => number;
  readonly encode: () => Uint8Array;
}

interface Coded extends ShapedGlyph {
  readonly inSubset: number;
}

/**
 * Embeds a typeface of TrueType outlines. A glyph has a code for each text that it stands for: one of Arabic is that of
 * several letters, and what is copied out of the sheet is what went in.
 */
export function subsetFont(doc: PDFDocument, font: Font, name: string): SubsetFont {
  const { context } = doc;
  const ref = context.nextRef();
  const subset = font.createSubset() as unknown as Subset;
  const codes = new Map<string, string>();
  const coded: Coded[] = [];
  return {
    ref,
    code: (glyph) => {
      const key = `${glyph.id} ${glyph.says}`;
      let code = codes.get(key);
      if (code === undefined) {
        coded.push({ ...glyph, inSubset: subset.includeGlyph(glyph.id) });
        code = hex(coded.length);
        codes.set(key, code);
      }
      return code;
    },
    finish: () => {
      const scale = 1000 / font.unitsPerEm;
      const { minX, minY, maxX, maxY } = font.bbox;
      const descriptor = context.register(
        context.obj({
          Type: 'FontDescriptor',
          FontName: name,
          Flags: SYMBOLIC,
          FontBBox: [minX, minY, maxX, maxY].map((units) => units * scale),
          ItalicAngle: 0,
          Ascent: font.ascent * scale,
          Descent: font.descent * scale,
          CapHeight: (font.capHeight || font.ascent) * scale,
          StemV: 0,
          FontFile2: context.register(context.flateStream(subset.encode())),
        }),
      );
      const widths = PDFArray.withContext(context);
      widths.push(context.obj(1));
      widths.push(context.obj(coded.map(({ width }) => width)));
      const descendant = context.register(
        context.obj({
          Type: 'Font',
          Subtype: 'CIDFontType2',
          BaseFont: name,
          CIDSystemInfo: { Registry: PDFString.of('Adobe'), Ordering: PDFString.of('Identity'), Supplement: 0 },
          FontDescriptor: descriptor,
          W: widths,
          CIDToGIDMap: context.register(context.flateStream(glyphNumbers(coded))),
        }),
      );
      context.assign(
        ref,
        context.obj({
          Type: 'Font',
          Subtype: 'Type0',
          BaseFont: PDFName.of(name),
          Encoding: 'Identity-H',
          DescendantFonts: [descendant],
          ToUnicode: context.register(context.flateStream(toUnicode(coded))),
        }),
      );
    },
  };
}

/** Flag of a font whose signs are not those of the standard Latin set. */
const SYMBOLIC = 4;

const hex = (value: number): string => value.toString(16).padStart(4, '0');

/** The glyph of each code from 0 on, two bytes each. */
function glyphNumbers(coded: readonly Coded[]): Uint8Array {
  const bytes = new Uint8Array(2 * (coded.length + 1));
  coded.forEach(({ inSubset }, i) => {
    bytes[2 * i + 2] = inSubset >> 8;
    bytes[2 * i + 3] = inSubset & 0xff;
  });
  return bytes;
}

/** What each code stands for; at most 100 to a block, as the format has it. */
function toUnicode(coded: readonly Coded[]): string {
  const lines = coded.flatMap(({ says }, i) => (says === '' ? [] : [`<${hex(i + 1)}> <${utf16(says)}>`]));
  const blocks: string[] = [];
  for (let from = 0; from < lines.length; from += 100) {
    const block = lines.slice(from, from + 100);
    blocks.push(`${block.length} beginbfchar\n${block.join('\n')}\nendbfchar`);
  }
  return `/CIDInit /ProcSet findresource begin
12 dict begin
begincmap
/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def
/CMapName /Adobe-Identity-UCS def
/CMapType 2 def
1 begincodespacerange
<0000> <ffff>
endcodespacerange
${blocks.join('\n')}
endcmap
CMapName currentdict /CMap defineresource pop
end
end`;
}
