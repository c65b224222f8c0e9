/** No lighter than this on a light ground, no darker on a dark one; of 1. */
const LIGHTEST = 0.6;
const DARKEST = 0.45;

/** A color of a drawing (0xRRGGBB) as it can be seen on the board's ground: yellow on white is made darker, blue on black lighter. */
export function legible(color: number, dark: boolean): string {
  const parts = [(color >> 16) & 255, (color >> 8) & 255, color & 255];
  const [r = 0, g = 0, b = 0] = parts;
  const light = (0.3 * r + 0.6 * g + 0.1 * b) / 255;
  const seen = (part: number): number => {
    if (!dark) return light > LIGHTEST ? part * (LIGHTEST / light) : part;
    return light < DARKEST ? part + (255 - part) * ((DARKEST - light) / (1 - light)) : part;
  };
  return `rgb(${parts.map((part) => Math.round(seen(part))).join(' ')})`;
}
