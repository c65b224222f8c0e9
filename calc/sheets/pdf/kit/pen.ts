import { direction } from '../../../../routing/plane/direction.ts';
import type { Point2 } from '../../../../routing/site/site.ts';
import type { LayerName } from '../../drawing/layers.ts';
import { type Area, MM } from './area.ts';
import type { DimensionString, StringFigure } from './dimension.ts';
import { BLACK, type Ink } from './ink.ts';
import { FONT_NAMES, type Lettering, type Weight } from './lettering.ts';
import { CAP } from './letters.ts';
import { fixed, operators, thousandths } from './operators.ts';

export interface TextStyle {
  /** Size of the font, points. */
  readonly size: number;
  readonly weight?: Weight;
  readonly colour?: string;
  readonly anchor?: 'left' | 'middle' | 'right';
  /** Degrees counter-clockwise about the anchor. */
  readonly turn?: number;
}

/** Name in a page's resources of how far a form is faded. */
export const fadedName = (form: string): string => `${form}Faded`;

/** Draws on one sheet, in points from its lower left corner. What is drawn later lies on top. */
export interface Pen {
  readonly lettering: Lettering;
  /** What its sheet has already, and is not drawn on it again: lines and symbols of the plan, gridlines. */
  readonly standing?: { readonly plan: boolean; readonly gridlines: boolean };
  /** Hears which element the words that follow name or tell of; null where none. */
  readonly about?: (element: string | null) => void;
  /** Takes a string of dimensions whole, in place of its lines and letters. */
  readonly dimensions?: (string: DimensionString, figures: readonly (StringFigure | null)[]) => void;
  line(points: readonly Point2[], ink: Ink, closed?: boolean): void;
  /** Lines that do not touch, as one stroke. */
  lines(many: readonly (readonly Point2[])[], ink: Ink): void;
  rectangle(area: Area, ink: Ink): void;
  circle(at: Point2, radius: number, ink: Ink | null, fill?: string): void;
  /** An arc counter-clockwise from one angle to another, degrees. */
  arc(at: Point2, radius: number, from: number, to: number, ink: Ink): void;
  fill(points: readonly Point2[], colour: string): void;
  fillArea(area: Area, colour: string): void;
  /** Many areas as one shape, without seams where they touch. */
  fillAreas(areas: readonly Area[], colour: string): void;
  /** One line of text; `at` is on its base line. */
  text(words: string, at: Point2, style: TextStyle): void;
  /** Draws something of which only what lies in the area shows. */
  clipped(area: Area, draw: () => void): void;
  /** What is drawn can be switched on and off in a viewer with the other things of its layer. */
  onLayer(layer: LayerName, draw: () => void): void;
  /** Places a form or picture of the page's resources by a matrix, as faded as they say. */
  form(name: string, matrix: readonly number[]): void;
  /** The operators so far, as the text of a content stream, and as its bytes. */
  content(): string;
  bytes(): Uint8Array;
}

interface State {
  stroke: string;
  fill: string;
  width: string;
  dash: string;
}

const UNKNOWN: State = { stroke: '', fill: '', width: '', dash: '' };

const LEVEL = '1 0 0 1';

/** Four Bezier curves make a circle to 0.03 % of its radius. */
const ROUND = 0.5522847498;

export function penWith(lettering: Lettering): Pen {
  const out = operators();
  out.push('1 J 1 j');
  let state: State = { ...UNKNOWN };

  const set = (key: keyof State, words: string): void => {
    if (state[key] === words) return;
    state[key] = words;
    out.push(words);
  };
  const setInk = ({ weight, colour, dash }: Ink): void => {
    set('stroke', `${rgb(colour)} RG`);
    set('width', `${num(weight * MM)} w`);
    set('dash', dash === undefined ? '[] 0 d' : `[${dash.map((mm) => num(mm * MM)).join(' ')}] 0 d`);
  };
  const setFill = (colour: string): void => set('fill', `${rgb(colour)} rg`);
  const trace = (points: readonly Point2[]): string =>
    points.map(([x, y], i) => `${num(x)} ${num(y)} ${i === 0 ? 'm' : 'l'}`).join(' ');
  const kept = (open: string, draw: () => void, close: string): void => {
    const before = { ...state };
    out.push(open);
    draw();
    out.push(close);
    state = before;
  };

  const pen: Pen = {
    lettering,
    line: (points, ink, closed = false) => {
      if (points.length < 2) return;
      setInk(ink);
      out.push(`${trace(points)} ${closed ? 's' : 'S'}`);
    },
    lines: (many, ink) => {
      if (many.length === 0) return;
      setInk(ink);
      out.push(`${many.map(trace).join('\n')} S`);
    },
    rectangle: ({ x, y, width, height }, ink) => {
      setInk(ink);
      out.push(`${num(x)} ${num(y)} ${num(width)} ${num(height)} re S`);
    },
    circle: ([x, y], radius, ink, fill) => {
      if (ink !== null) setInk(ink);
      if (fill !== undefined) setFill(fill);
      const c = radius * ROUND;
      const curve = (ax: number, ay: number, bx: number, by: number, ex: number, ey: number): string =>
        `${num(x + ax)} ${num(y + ay)} ${num(x + bx)} ${num(y + by)} ${num(x + ex)} ${num(y + ey)} c`;
      out.push(
        [
          `${num(x + radius)} ${num(y)} m`,
          curve(radius, c, c, radius, 0, radius),
          curve(-c, radius, -radius, c, -radius, 0),
          curve(-radius, -c, -c, -radius, 0, -radius),
          curve(c, -radius, radius, -c, radius, 0),
          fill === undefined ? 's' : ink === null ? 'f' : 'b',
        ].join(' '),
      );
    },
    arc: (at, radius, from, to, ink) => pen.line(arcPoints(at, radius, from, to), ink),
    fill: (points, colour) => {
      if (points.length < 3) return;
      setFill(colour);
      out.push(`${trace(points)} f`);
    },
    fillArea: (area, colour) => pen.fillAreas([area], colour),
    fillAreas: (areas, colour) => {
      if (areas.length === 0) return;
      setFill(colour);
      const all = areas.map(({ x, y, width, height }) => `${num(x)} ${num(y)} ${num(width)} ${num(height)} re`);
      out.push(`${all.join('\n')} f`);
    },
    text: (words, at, { size, weight = 'regular', colour = BLACK, anchor = 'left', turn = 0 }) => {
      if (words === '') return;
      setFill(colour);
      const back = anchor === 'left' ? 0 : lettering.width(words, size, weight) * (anchor === 'middle' ? 0.5 : 1);
      const [ux, uy] = direction(turn);
      const matrix = turn === 0 ? LEVEL : [ux, uy, -uy, ux].map(ratio).join(' ');
      const place = `${matrix} ${num(at[0] - back * ux)} ${num(at[1] - back * uy)} Tm`;
      const other = lettering.shown?.(words, size, weight) ?? null;
      if (other !== null) {
        kept('q', () => out.push(`${rgb(colour)} RG [] 0 d BT ${place} ${other} ET`), 'Q');
        return;
      }
      out.push(`BT /${FONT_NAMES[weight]} ${num(size)} Tf ${place} ` + `${lettering.encoded(words, weight)} Tj ET`);
    },
    clipped: ({ x, y, width, height }, draw) =>
      kept(`q ${num(x)} ${num(y)} ${num(width)} ${num(height)} re W n`, draw, 'Q'),
    onLayer: (layer, draw) => {
      out.push(`/OC /${layer} BDC`);
      draw();
      out.push('EMC');
    },
    form: (name, matrix) =>
      kept('q', () => out.push(`/${fadedName(name)} gs ${matrix.map(ratio).join(' ')} cm /${name} Do`), 'Q'),
    content: () => new TextDecoder().decode(out.bytes()),
    bytes: out.bytes,
  };
  return pen;
}

/** Where the base line lies so that capitals of a size stand centred about a height. */
export const centred = (middle: number, size: number): number => middle - (size * CAP) / 2;

export function arcPoints([x, y]: Point2, radius: number, from: number, to: number): Point2[] {
  const steps = Math.max(2, Math.ceil(Math.abs(to - from) / 10));
  return Array.from({ length: steps + 1 }, (_, i) => {
    const [ux, uy] = direction(from + ((to - from) * i) / steps);
    return [x + radius * ux, y + radius * uy];
  });
}

/** To a thousandth of a point. */
const num = (value: number): string => (Number.isInteger(value) ? String(value) : thousandths(value));
const ratio = (value: number): string => (Number.isInteger(value) ? String(value) : fixed(value, 6));

const COLOURS = new Map<string, string>();

function rgb(colour: string): string {
  let words = COLOURS.get(colour);
  if (words === undefined) {
    words = [1, 3, 5].map((at) => fixed(Number.parseInt(colour.slice(at, at + 2), 16) / 255, 3)).join(' ');
    COLOURS.set(colour, words);
  }
  return words;
}
