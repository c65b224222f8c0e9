import { create, type Font, type Glyph } from 'fontkit';
import { unpacked } from './unpacked.ts';

/** What of the package's inside is put right. */
interface Inside {
  getGlyph: (id: number, codes?: readonly number[]) => Glyph;
  readonly _layoutEngine?: {
    readonly engine?: {
      readonly GPOSProcessor?: { applyAnchor?: (mark: unknown, base: unknown, at: number) => void };
    };
  };
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
  const places = inside._layoutEngine?.engine?.GPOSProcessor;
  if (places?.applyAnchor) {
    // Where a letter has no place for a mark the package throws: the mark stays where the pen is.
    const apply = places.applyAnchor.bind(places);
    places.applyAnchor = (mark, base, at) => {
      if (base) apply(mark, base, at);
    };
  }
  return font;
}
