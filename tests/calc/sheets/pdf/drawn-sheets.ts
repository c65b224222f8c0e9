import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { PDFDocument } from '@cantoo/pdf-lib';
import { plan } from '../../../../calc/plan/plan.ts';
import type { LayerName } from '../../../../calc/sheets/drawing/layers.ts';
import type { Area } from '../../../../calc/sheets/pdf/kit/area.ts';
import type { Ink } from '../../../../calc/sheets/pdf/kit/ink.ts';
import { letteringIn } from '../../../../calc/sheets/pdf/kit/lettering/lettering.ts';
import { CAP, LETTERS } from '../../../../calc/sheets/pdf/kit/lettering/letters.ts';
import type { Paper } from '../../../../calc/sheets/pdf/kit/paper.ts';
import { type Pen, penWith } from '../../../../calc/sheets/pdf/kit/pen.ts';
import { jobOf, setSheets } from '../../../../calc/sheets/pdf/set/set-sheets.ts';
import { direction } from '../../../../routing/plane/direction.ts';
import type { Point2, Site } from '../../../../routing/site/site.ts';

/** A text of a sheet: the corners of the box of its capitals, and where in the order of drawing it comes. */
export interface DrawnText {
  readonly text: string;
  readonly layer: LayerName | null;
  readonly corners: readonly Point2[];
  readonly order: number;
}

/** A stroke of a sheet, as far as what it is clipped to lets it show. */
export interface Stroke {
  readonly points: readonly Point2[];
  readonly ink: Ink;
  readonly layer: LayerName | null;
  readonly clip: Area | null;
  readonly order: number;
}

export interface DrawnSheet {
  readonly number: string;
  readonly key: string;
  readonly title: string;
  readonly texts: readonly DrawnText[];
  readonly strokes: readonly Stroke[];
  /** White or colored areas, which hide what was drawn before them. */
  readonly fills: readonly { readonly points: readonly Point2[]; readonly order: number }[];
}

const font = (name: string): Uint8Array =>
  readFileSync(join(import.meta.dirname, '../../../../calc/sheets/fonts', `overpass-${name}.ttf`));

const areaPoints = ({ x, y, width, height }: Area): readonly Point2[] => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
];

const roundPoints = ([x, y]: Point2, radius: number, from = 0, to = 360): readonly Point2[] =>
  Array.from({ length: 17 }, (_, i) => {
    const [ux, uy] = direction(from + ((to - from) * i) / 16);
    return [x + radius * ux, y + radius * uy];
  });

/** A pen that keeps what it is told to draw. */
function keepingPen(plain: Pen): {
  readonly pen: Pen;
  readonly sheet: Pick<DrawnSheet, 'texts' | 'strokes' | 'fills'>;
} {
  const texts: DrawnText[] = [];
  const strokes: Stroke[] = [];
  const fills: { points: readonly Point2[]; order: number }[] = [];
  let order = 0;
  let layer: LayerName | null = null;
  let clip: Area | null = null;
  const stroke = (points: readonly Point2[], ink: Ink): void => {
    strokes.push({ points, ink, layer, clip, order: order++ });
  };
  const pen: Pen = {
    ...plain,
    line: (points, ink, closed) => {
      if (points.length > 1) stroke(closed ? [...points, points[0]!] : points, ink);
    },
    lines: (many, ink) => {
      for (const points of many) stroke(points, ink);
    },
    rectangle: (area, ink) => {
      const points = areaPoints(area);
      stroke([...points, points[0]!], ink);
    },
    circle: (at, radius, ink, fill) => {
      if (fill !== undefined) fills.push({ points: roundPoints(at, radius), order: order++ });
      if (ink !== null) stroke(roundPoints(at, radius), ink);
    },
    arc: (at, radius, from, to, ink) => stroke(roundPoints(at, radius, from, to), ink),
    fill: (points) => {
      fills.push({ points, order: order++ });
    },
    fillArea: (area) => {
      fills.push({ points: areaPoints(area), order: order++ });
    },
    text: (text, [x, y], { size, weight, anchor = 'left', turn = 0 }) => {
      if (text.trim() === '') return;
      const width = plain.lettering.width(text, size, weight);
      const start = anchor === 'left' ? 0 : anchor === 'right' ? -width : -width / 2;
      const [ux, uy] = direction(turn);
      const at = (along: number, up: number): Point2 => [x + along * ux - up * uy, y + along * uy + up * ux];
      const corners = [at(start, 0), at(start + width, 0), at(start + width, size * CAP), at(start, size * CAP)];
      texts.push({ text, layer, corners, order: order++ });
    },
    clipped: (area, draw) => {
      const before = clip;
      clip = area;
      draw();
      clip = before;
    },
    onLayer: (name, draw) => {
      const before = layer;
      layer = name;
      draw();
      layer = before;
    },
  };
  return { pen, sheet: { texts, strokes, fills } };
}

/** Every sheet of the set of a site as its pen was told to draw it, in the set's own letters. */
export async function drawnSheets(
  site: Site,
  paper: Paper,
  wanted: (key: string) => boolean = () => true,
): Promise<readonly DrawnSheet[]> {
  const doc = await PDFDocument.create({ updateMetadata: false });
  const fonts = { regular: font('regular'), bold: font('semibold') };
  const lettering = await letteringIn(doc, fonts, LETTERS[paper]);
  const job = jobOf(site, plan(site), {
    lettering,
    date: '2026-11-25',
    paper,
    file: 'lot.site.json',
    underlays: [],
    remarks: [],
  });
  const { sheets, draw } = setSheets(job);
  return sheets.flatMap(({ number, draft }, i) => {
    if (!wanted(draft.key)) return [];
    const { pen, sheet } = keepingPen(penWith(lettering));
    draw(pen, i);
    return [{ number, key: draft.key, title: draft.title, ...sheet }];
  });
}
