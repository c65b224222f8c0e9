import type { Point2 } from '../../../../routing/site/site.ts';
import { type Area, MM } from './area.ts';
import { type Ink, rgb } from './ink.ts';
import { FONT_NAMES, type Weight } from './lettering/lettering.ts';
import { placeWords as num, type Operators } from './operators.ts';

interface State {
  stroke: string;
  fill: string;
  width: string;
  dash: string;
  /** The last font and its size: they outlive a text. */
  font: Weight | null;
  size: number;
  /** The ink and color set last: the same ones again write nothing. */
  ink: Ink | null;
  fillColour: string;
}

const UNKNOWN: State = { stroke: '', fill: '', width: '', dash: '', font: null, size: 0, ink: null, fillColour: '' };

const FONT_WORDS: Readonly<Record<Weight, string>> = {
  regular: `/${FONT_NAMES.regular} `,
  bold: `/${FONT_NAMES.bold} `,
};

/** Tells a page its inks and paths. What a page was told last it is not told again. */
export function strokesOn(out: Operators) {
  let state: State = { ...UNKNOWN };
  const set = (key: 'stroke' | 'fill' | 'width' | 'dash', words: string): void => {
    if (state[key] === words) return;
    state[key] = words;
    out.push(words);
  };
  return {
    setInk: (ink: Ink): void => {
      if (state.ink === ink) return;
      state.ink = ink;
      const { weight, colour, dash } = ink;
      set('stroke', `${rgb(colour)} RG`);
      set('width', `${num(weight * MM)} w`);
      set('dash', dash === undefined ? '[] 0 d' : `[${dash.map((mm) => num(mm * MM)).join(' ')}] 0 d`);
    },
    setFill: (colour: string): void => {
      if (state.fillColour === colour) return;
      state.fillColour = colour;
      set('fill', `${rgb(colour)} rg`);
    },
    trace: (points: readonly Point2[]): void => {
      for (let i = 0; i < points.length; i++) {
        if (i > 0) out.space();
        out.pair(points[i]![0], points[i]![1]);
        out.add(i === 0 ? ' m' : ' l');
      }
    },
    outline: ({ x, y, width, height }: Area): void => {
      out.pair(x, y);
      out.space();
      out.pair(width, height);
      out.add(' re');
    },
    /** The font of the words that follow: it outlives a text. */
    setFont: (weight: Weight, size: number): void => {
      if (state.font === weight && state.size === size) return;
      out.add(FONT_WORDS[weight]);
      out.number(size);
      out.add(' Tf ');
      state.font = weight;
      state.size = size;
    },
    /** Draws between two words of the page, after which it is as it was before them. */
    kept: (open: () => void, draw: () => void, close: string): void => {
      const before = { ...state };
      open();
      draw();
      out.push(close);
      state = before;
    },
  };
}

export type PageStrokes = ReturnType<typeof strokesOn>;
