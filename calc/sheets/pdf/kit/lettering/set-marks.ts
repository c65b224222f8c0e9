import { create, type Font } from 'fontkit';
import { fixed, utf16 } from '../operators.ts';
import { withSafeAnchors } from '../scripts/anchors.ts';

/** A mark that stands over or under the letter before it: such as are left once a text is composed. */
export const HAS_MARK = /\p{M}/u;
const LETTER_WITH_MARKS = /.\p{M}*/gsu;

/** Where a mark stands beside the pen after its letter, thousandths of the size. */
export interface MarkPlace {
  readonly right: number;
  readonly up: number;
}

/** The places of the marks of a letter, in their order. */
export type PlaceOfMark = (letter: string, marks: readonly string[]) => readonly MarkPlace[];

/** Places of marks by the tables of a typeface, which is read once a text has any. */
export function placesOfMarks(bytes: Uint8Array): PlaceOfMark {
  let font: Font | null = null;
  const known = new Map<string, readonly MarkPlace[]>();
  return (letter, marks) => {
    const key = letter + marks.join('');
    const before = known.get(key);
    if (before !== undefined) return before;
    font ??= withSafeAnchors(create(bytes as Buffer) as Font);
    const places = placesIn(font, letter, marks);
    known.set(key, places);
    return places;
  };
}

function placesIn(font: Font, letter: string, marks: readonly string[]): readonly MarkPlace[] {
  const thousandths = (units: number): number => Math.round((units * 1000) / font.unitsPerEm);
  const { glyphs, positions } = font.layout(letter + marks.join(''), { kern: false });
  return marks.map((mark, i): MarkPlace => {
    const own = font.glyphForCodePoint(mark.codePointAt(0)!);
    const [glyph, at] = [glyphs[i + 1], positions[i + 1]];
    // A typeface that makes one glyph of several says no place of each.
    if (glyphs.length !== marks.length + 1 || !glyph || !at) return { right: 0, up: 0 };
    if (at.xOffset === 0 && at.yOffset === 0) {
      const { advanceWidth } = font.glyphForCodePoint(letter.codePointAt(0)!);
      return { right: thousandths(-(advanceWidth + own.bbox.minX + own.bbox.maxX) / 2), up: 0 };
    }
    // Over a capital the typeface has a mark of its own, which is higher.
    return { right: thousandths(at.xOffset), up: thousandths(at.yOffset + glyph.bbox.minY - own.bbox.minY) };
  });
}

/**
 * Operators that show a text of one typeface with its marks where they belong.
 * @param codes hexadecimal digits of letters
 */
export function withMarksOver(
  text: string,
  size: number,
  codes: (letters: string) => string,
  placesOf: PlaceOfMark,
): string {
  const out: string[] = [];
  for (const cluster of text.match(LETTER_WITH_MARKS) ?? []) {
    const [letter = '', ...marks] = [...cluster];
    if (marks.length === 0) {
      out.push(`<${codes(letter)}> Tj`);
      continue;
    }
    // What is copied out has them in the order in which they are written, wherever they are drawn.
    out.push(`/Span <</ActualText <feff${utf16(cluster)}>>> BDC <${codes(letter)}> Tj`);
    for (const [i, { right, up }] of placesOf(letter, marks).entries()) {
      if (up !== 0) out.push(`${fixed((up * size) / 1000, 3)} Ts`);
      out.push(`[${-right} <${codes(marks[i]!)}> ${right}] TJ`);
      if (up !== 0) out.push('0 Ts');
    }
    out.push('EMC');
  }
  return out.join(' ');
}
