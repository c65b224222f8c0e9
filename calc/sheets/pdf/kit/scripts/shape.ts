import type { Font, Glyph } from 'fontkit';
import type { FaceName } from './faces.ts';
import type { TextPiece } from './pieces.ts';
import type { AnyFace } from './signs.ts';

/** A glyph of a shaped text. */
export interface ShapedGlyph {
  /** Its number in the typeface. */
  readonly id: number;
  /** What it stands for in the text; empty for the dots and marks of a letter that stands for them too. */
  readonly says: string;
  /** Thousandths of the size: how wide it is, how far the pen goes on, and where it stands beside the pen. */
  readonly width: number;
  readonly advance: number;
  readonly right: number;
  readonly up: number;
}

/** A piece of text as its typeface shapes it, its glyphs from left to right. */
export interface ShapedPiece {
  readonly glyphs: readonly ShapedGlyph[];
  /** Thousandths of the size. */
  readonly advance: number;
  /** What the glyphs do not say by themselves in the order in which it is read; null where they do. */
  readonly reads: string | null;
}

/** Widths add up sign by sign where letters do not join, so that lines can be broken anywhere. */
const FEATURES = { kern: false };

/** A tone mark before SARA AM stands over the ring that it is made of: that comes first, as Thai shapers have it. */
const SARA_AM = /([\u0e48-\u0e4b]*)\u0e33/g;

/** Typefaces whose letters stand one beside the other as they are: nothing in their tables is asked. */
const BY_SIGN: ReadonlySet<AnyFace> = new Set<FaceName>([
  'greek',
  'greek-extended',
  'armenian',
  'georgian',
  'chinese-simplified',
  'chinese-traditional',
  'japanese',
  'korean',
  'han-rest',
  'symbols',
]);

/** Shapes a piece by the tables of its typeface: joined, stacked and reordered letters, marks where they belong. */
export function shaped(font: Font, { face, text, level }: TextPiece): ShapedPiece {
  const thousandths = (units: number): number => Math.round((units * 1000) / font.unitsPerEm);
  const isRight = level % 2 === 1;
  const glyphs = BY_SIGN.has(face)
    ? [...text].map((letter): ShapedGlyph => {
        const { id, advanceWidth } = font.glyphForCodePoint(letter.codePointAt(0)!);
        const advance = thousandths(advanceWidth);
        return { id, says: letter, width: advance, advance, right: 0, up: 0 };
      })
    : laidOut(font, text, isRight, thousandths);
  const said = glyphs.map(({ says }) => says);
  const read = (isRight ? said.reverse() : said).join('');
  return {
    glyphs,
    advance: glyphs.reduce((sum, { advance }) => sum + advance, 0),
    reads: read === text ? null : text,
  };
}

function laidOut(
  font: Font,
  text: string,
  isRight: boolean,
  thousandths: (units: number) => number,
): readonly ShapedGlyph[] {
  const set = text.replace(SARA_AM, '\u0e4d$1\u0e32');
  const run = font.layout(set, FEATURES, undefined, undefined, isRight ? 'rtl' : 'ltr');
  return run.glyphs.map((glyph: Glyph, i): ShapedGlyph => {
    const { xAdvance, xOffset, yOffset } = run.positions[i]!;
    return {
      id: glyph.id,
      says: String.fromCodePoint(...glyph.codePoints),
      width: thousandths(glyph.advanceWidth),
      advance: thousandths(xAdvance),
      right: thousandths(xOffset),
      up: thousandths(yOffset),
    };
  });
}
