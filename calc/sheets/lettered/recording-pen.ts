import { direction } from '../../../routing/plane/direction.ts';
import type { Point2 } from '../../../routing/site/site.ts';
import type { Extent } from '../drawing/drawing.ts';
import type { LayerName } from '../drawing/layers.ts';
import type { Area } from '../pdf/kit/area.ts';
import { BLACK, type Ink, WHITE } from '../pdf/kit/ink.ts';
import type { Lettering } from '../pdf/kit/lettering/lettering.ts';
import { CAP } from '../pdf/kit/lettering/letters.ts';
import type { Pen } from '../pdf/kit/pen.ts';
import { arcPoints } from '../pdf/kit/pen.ts';
import { partIn } from '../pdf/kit/view/view.ts';
import { dimensionMarks } from './dimension-marks.ts';
import type { SheetMark } from './mark.ts';

/** A pen that keeps what it is asked to draw. */
export interface RecordingPen extends Pen {
  readonly marks: readonly SheetMark[];
}

/**
 * A pen with which the drawing set is drawn as it is for the PDF, so that other formats have the same words in the same
 * places. `standing` is what they draw themselves.
 */
export function recordingPen(lettering: Lettering, standing: NonNullable<Pen['standing']>): RecordingPen {
  const marks: SheetMark[] = [];
  let layer: LayerName | null = null;
  let window: Extent | null = null;
  let of: string | null = null;
  const addLine = (points: readonly Point2[], ink: Ink, closed: boolean): void => {
    if (points.length < 2) return;
    for (const part of window === null ? [{ points, closed }] : clipped(points, closed, window))
      marks.push({ kind: 'line', layer, ink, ...part });
  };
  const addFill = (points: readonly Point2[], colour: string): void => {
    if (points.length > 2) marks.push({ kind: 'fill', layer, points, colour });
  };
  return {
    marks,
    lettering,
    standing,
    line: (points, ink, closed = false) => addLine(points, ink, closed),
    lines: (many, ink) => {
      for (const points of many) addLine(points, ink, false);
    },
    rectangle: (area, ink) => addLine(cornersOf(area), ink, true),
    circle: (at, radius, ink, fill) =>
      marks.push({ kind: 'circle', layer, at, radius, ink, ...(fill !== undefined && fill !== WHITE && { fill }) }),
    arc: (at, radius, from, to, ink) => addLine(arcPoints(at, radius, from, to), ink, false),
    fill: addFill,
    fillArea: (area, colour) => addFill(cornersOf(area), colour),
    fillAreas: (areas, colour) => {
      for (const area of areas) addFill(cornersOf(area), colour);
    },
    text: (words, at, { size, weight = 'regular', colour = BLACK, anchor = 'left', turn = 0 }) => {
      if (words === '') return;
      const width = lettering.width(words, size, weight);
      const back = anchor === 'left' ? 0 : width * (anchor === 'middle' ? 0.5 : 1);
      const [ux, uy] = direction(turn);
      const left: Point2 = [at[0] - back * ux, at[1] - back * uy];
      const named = of === null ? {} : { of };
      marks.push({ kind: 'text', layer, words, at: left, width, height: size * CAP, turn, weight, colour, ...named });
    },
    about: (element) => {
      of = element;
    },
    dimensions: (string, figures) => {
      marks.push(...dimensionMarks(string, figures, layer, lettering.sizes.small * CAP));
    },
    clipped: ({ x, y, width, height }, draw) => {
      const before = window;
      window = { minX: x, minY: y, maxX: x + width, maxY: y + height };
      draw();
      window = before;
    },
    onLayer: (name, draw) => {
      const before = layer;
      layer = name;
      draw();
      layer = before;
    },
    form: () => {},
    content: () => '',
    bytes: () => new Uint8Array(),
  };
}

const cornersOf = ({ x, y, width, height }: Area): readonly Point2[] => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
];

/** What of a line lies in a window: itself where all of it does, else its pieces. */
function clipped(
  points: readonly Point2[],
  closed: boolean,
  window: Extent,
): readonly { readonly points: readonly Point2[]; readonly closed: boolean }[] {
  const { minX, minY, maxX, maxY } = window;
  if (points.every(([x, y]) => x >= minX && x <= maxX && y >= minY && y <= maxY)) return [{ points, closed }];
  const pieces: Point2[][] = [];
  const all = closed ? [...points, points[0]!] : points;
  for (let i = 1; i < all.length; i++) {
    const part = partIn(window, all[i - 1]!, all[i]!);
    if (part === null) continue;
    const last = pieces.at(-1);
    const end = last?.at(-1);
    if (last && end && end[0] === part[0][0] && end[1] === part[0][1]) last.push(part[1]);
    else pieces.push([...part]);
  }
  return pieces.map((piece) => ({ points: piece, closed: false }));
}
