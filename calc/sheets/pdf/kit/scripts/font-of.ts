import { create, type Font, type Glyph } from 'fontkit';
import { withSafeAnchors } from './anchors.ts';
import { unpacked } from './unpacked.ts';

/** What of the package's inside is put right. */
interface Inside {
  getGlyph: (id: number, codes?: readonly number[]) => Glyph;
}

/** Reads a typeface (WOFF) to shape texts in it. */
export function fontOf(woff: Uint8Array): Font {
  const font = create(unpacked(woff) as Buffer) as Font;
  const inside = font as unknown as Inside;
  // The package keeps one glyph object for each number, with the letter that it first stood for: here it has its own.
  const plain = inside.getGlyph.bind(font);
  inside.getGlyph = (id, codes) => {
    const glyph = plain(id, codes);
    return codes === undefined ? glyph : (Object.create(glyph, { codePoints: { value: codes } }) as Glyph);
  };
  return withSafeAnchors(font);
}
