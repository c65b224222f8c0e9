import { LAYERS, type LayerName } from '../../drawing/layers.ts';
import { fixed } from './operators.ts';

/** How a line is drawn: weight and dashes in millimetres of the plotted sheet. */
export interface Ink {
  readonly weight: number;
  readonly colour: string;
  readonly dash?: readonly number[];
}

export const BLACK = '#20242c';
export const GREY = '#8a8478';
export const PALE = '#e9e6df';
export const WHITE = '#ffffff';

/** Pens of the sheets themselves. Heavier is nearer to what the sheet is about. */
export const PENS = {
  hair: { weight: 0.13, colour: BLACK },
  thin: { weight: 0.18, colour: BLACK },
  plain: { weight: 0.25, colour: BLACK },
  medium: { weight: 0.35, colour: BLACK },
  heavy: { weight: 0.5, colour: BLACK },
  border: { weight: 0.9, colour: BLACK },
  existing: { weight: 0.18, colour: GREY },
  existingHair: { weight: 0.13, colour: GREY },
  match: { weight: 0.7, colour: BLACK, dash: [9, 1.5, 1.5, 1.5, 1.5, 1.5] },
} as const satisfies Record<string, Ink>;

/** The ink of a layer of the drawing. */
export const inkOf = (layer: LayerName): Ink => LAYERS[layer];

const COLOURS = new Map<string, string>();

/** A color as the shares of red, green and blue that a content stream has. */
export function rgb(colour: string): string {
  let words = COLOURS.get(colour);
  if (words === undefined) {
    words = [1, 3, 5].map((at) => fixed(Number.parseInt(colour.slice(at, at + 2), 16) / 255, 3)).join(' ');
    COLOURS.set(colour, words);
  }
  return words;
}
