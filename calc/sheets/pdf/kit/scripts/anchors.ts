import type { Font } from 'fontkit';

/** What of the package's inside is put right. */
interface Inside {
  readonly _layoutEngine?: {
    readonly engine?: {
      readonly GPOSProcessor?: { applyAnchor?: (mark: unknown, base: unknown, at: number) => void };
    };
  };
}

/** Where a letter has no place for a mark the package throws: of this font the mark stays where the pen is. */
export function withSafeAnchors(font: Font): Font {
  const places = (font as unknown as Inside)._layoutEngine?.engine?.GPOSProcessor;
  if (places?.applyAnchor) {
    const apply = places.applyAnchor.bind(places);
    places.applyAnchor = (mark, base, at) => {
      if (base) apply(mark, base, at);
    };
  }
  return font;
}
