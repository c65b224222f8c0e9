/** The nine basic colors by their index; 7 is the color of ink. */
const BASIC = [null, 0xff0000, 0xffff00, 0x00ff00, 0x00ffff, 0x0000ff, 0xff00ff, null, 0x808080, 0xc0c0c0] as const;
/** Light of the five shades of a hue, in 255ths. */
const SHADES = [255, 165, 127, 76, 38] as const;
const GREYS = [0x000000, 0x656565, 0x666666, 0x999999, 0xcccccc, 0xffffff] as const;

/**
 * The color of an index as 0xRRGGBB; null for ink and for an index that there is not. From 10 on there are 24 hues 15
 * degrees apart, each in five shades, full and half (palette of the index, checked against ezdxf).
 */
export function indexColor(index: number): number | null {
  if (!(index >= 1 && index <= 255)) return null;
  if (index < 10) return BASIC[index] ?? null;
  if (index >= 250) return GREYS[index - 250] ?? null;
  const sixths = Math.floor((index - 10) / 10) / 4;
  const light = SHADES[Math.floor((index % 10) / 2)]!;
  const depth = index % 2 === 1 ? 0.5 : 1;
  // From hue, saturation and value to red, green and blue.
  const channel = (offset: number): number => {
    const k = (offset + sixths) % 6;
    return Math.floor(light - light * depth * Math.max(0, Math.min(k, 4 - k, 1)));
  };
  return (channel(5) << 16) | (channel(3) << 8) | channel(1);
}
