import { direction } from '../../../../routing/plane/direction.ts';
import type { Point2 } from '../../../../routing/site/site.ts';
import type { LayerName } from '../../drawing/layers.ts';
import type { Area } from './area.ts';
import { BLACK, type Ink, rgb } from './ink.ts';
import type { DimensionString, StringFigure } from './labels/dimension.ts';
import type { Lettering, Weight } from './lettering/lettering.ts';
import { CAP } from './lettering/letters.ts';
import { fixed, Operators } from './operators.ts';
import { type PageStrokes, strokesOn } from './strokes.ts';

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

/** Four Bezier curves make a circle to 0.03 % of its radius. */
const ROUND = 0.5522847498;

const linesOn = (
  out: Operators,
  { setInk, trace, outline }: PageStrokes,
): Pick<Pen, 'line' | 'lines' | 'rectangle' | 'arc'> => {
  const line: Pen['line'] = (points, ink, closed = false) => {
    if (points.length < 2) return;
    setInk(ink);
    trace(points);
    out.push(closed ? ' s' : ' S');
  };
  return {
    line,
    lines: (many, ink) => {
      if (many.length === 0) return;
      setInk(ink);
      for (let i = 0; i < many.length; i++) {
        if (i > 0) out.push('');
        trace(many[i]!);
      }
      out.push(' S');
    },
    rectangle: (area, ink) => {
      setInk(ink);
      outline(area);
      out.push(' S');
    },
    arc: (at, radius, from, to, ink) => line(arcPoints(at, radius, from, to), ink),
  };
};

function circlesOn(out: Operators, { setInk, setFill }: PageStrokes): Pen['circle'] {
  return ([x, y], radius, ink, fill) => {
    if (ink !== null) setInk(ink);
    if (fill !== undefined) setFill(fill);
    const c = radius * ROUND;
    const curve = (ax: number, ay: number, bx: number, by: number, ex: number, ey: number): void => {
      out.pair(x + ax, y + ay);
      out.space();
      out.pair(x + bx, y + by);
      out.space();
      out.pair(x + ex, y + ey);
      out.add(' c ');
    };
    out.pair(x + radius, y);
    out.add(' m ');
    curve(radius, c, c, radius, 0, radius);
    curve(-c, radius, -radius, c, -radius, 0);
    curve(-radius, -c, -c, -radius, 0, -radius);
    curve(c, -radius, radius, -c, radius, 0);
    out.push(fill === undefined ? 's' : ink === null ? 'f' : 'b');
  };
}

const fillsOn = (
  out: Operators,
  { setFill, trace, outline }: PageStrokes,
): Pick<Pen, 'fill' | 'fillArea' | 'fillAreas'> => {
  const fillAreas: Pen['fillAreas'] = (areas, colour) => {
    if (areas.length === 0) return;
    setFill(colour);
    areas.forEach((area, i) => {
      if (i > 0) out.push('');
      outline(area);
    });
    out.push(' f');
  };
  return {
    fill: (points, colour) => {
      if (points.length < 3) return;
      setFill(colour);
      trace(points);
      out.push(' f');
    },
    fillArea: (area, colour) => fillAreas([area], colour),
    fillAreas,
  };
};

function textOn(out: Operators, { setFill, setFont, kept }: PageStrokes, lettering: Lettering): Pen['text'] {
  return (words, at, { size, weight = 'regular', colour = BLACK, anchor = 'left', turn = 0 }) => {
    if (words === '') return;
    setFill(colour);
    const back = anchor === 'left' ? 0 : lettering.width(words, size, weight) * (anchor === 'middle' ? 0.5 : 1);
    const other = lettering.shown?.(words, size, weight) ?? null;
    if (other !== null) {
      kept(
        () => out.push('q'),
        () => {
          out.add(`${rgb(colour)} RG [] 0 d BT `);
          placeText(out, at, back, turn);
          out.push(`${other} ET`);
        },
        'Q',
      );
      return;
    }
    out.add('BT ');
    setFont(weight, size);
    placeText(out, at, back, turn);
    if (!out.signs(words, lettering.glyphs?.(weight) ?? NO_GLYPHS)) out.add(lettering.encoded(words, weight));
    out.push(' Tj ET');
  };
}

/** Puts a text so far back from a place; nearly all are level. */
function placeText(out: Operators, at: Point2, back: number, turn: number): void {
  if (turn === 0) {
    out.pair(at[0] - back, at[1]);
    out.add(' Td ');
    return;
  }
  const [ux, uy] = direction(turn);
  out.add(`${[ux, uy, -uy, ux].map(ratio).join(' ')} `);
  out.pair(at[0] - back * ux, at[1] - back * uy);
  out.add(' Tm ');
}

/** A pen on a sheet of its own, which letters with `lettering`; `out` is where it writes, for one sheet after another. */
export function penWith(lettering: Lettering, out: Operators = new Operators()): Pen {
  out.clear();
  out.push('1 J 1 j');
  const strokes = strokesOn(out);
  const { outline, kept } = strokes;
  return {
    lettering,
    ...linesOn(out, strokes),
    circle: circlesOn(out, strokes),
    ...fillsOn(out, strokes),
    text: textOn(out, strokes, lettering),
    clipped: (area, draw) =>
      kept(
        () => {
          out.add('q ');
          outline(area);
          out.push(' W n');
        },
        draw,
        'Q',
      ),
    onLayer: (layer, draw) => {
      out.push(`/OC /${layer} BDC`);
      draw();
      out.push('EMC');
    },
    form: (name, matrix) =>
      kept(
        () => out.push('q'),
        () => out.push(`/${fadedName(name)} gs ${matrix.map(ratio).join(' ')} cm /${name} Do`),
        'Q',
      ),
    content: () => new TextDecoder('latin1').decode(out.bytes()),
    bytes: () => out.bytes(),
  };
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

const NO_GLYPHS = new Uint16Array(0);

const ratio = (value: number): string => (Number.isInteger(value) ? String(value) : fixed(value, 6));
