import {
  concatTransformationMatrix,
  drawObject,
  PDFArray,
  PDFDict,
  PDFName,
  PDFNumber,
  type PDFPage,
  PDFRef,
  PDFStream,
  popGraphicsState,
  pushGraphicsState,
} from '@cantoo/pdf-lib';
import { type Box, boxOf } from '../../../../routing/plane/box.ts';

/** More are hardly drawn on one page; what is over is left out, and counted. */
const MOST = 5_000;
/** Annotation flags (ISO 32000-1, table 165): hidden, and not shown on a screen. */
const HIDDEN = 2;
const NO_VIEW = 32;
/** Kinds that have no look of their own. */
const UNSEEN = ['Link', 'Popup'];

/**
 * Draws the mark-ups and the filled-in fields of a page onto it, each by its appearance stream where and as large as it
 * says (ISO 32000-1, 12.5.5): as a viewer shows them, under nothing. Returns how many that are shown have none.
 */
export function drawMarkUps(page: PDFPage): number {
  const annots = page.node.lookupMaybe(PDFName.of('Annots'), PDFArray);
  const count = annots?.size() ?? 0;
  let bare = Math.max(0, count - MOST);
  for (let i = 0; i < Math.min(count, MOST); i++) {
    const mark = annots!.lookup(i);
    if (!(mark instanceof PDFDict)) continue;
    const flags = numberOf(mark.lookup(PDFName.of('F'))) ?? 0;
    const kind = mark.lookup(PDFName.of('Subtype'));
    if (flags & (HIDDEN | NO_VIEW) || UNSEEN.some((unseen) => kind === PDFName.of(unseen))) continue;
    const look = lookOf(mark);
    if (look === 'none') continue;
    const matrix = look && placed(look.stream, mark);
    if (!look || !matrix) {
      bare += 1;
      continue;
    }
    page.node.set(PDFName.of('Contents'), page.node.get(PDFName.of('Contents')) ?? page.doc.context.obj([]));
    look.stream.dict.set(PDFName.of('Subtype'), PDFName.of('Form'));
    const name = page.node.newXObject('MarkUp', look.ref);
    page.pushOperators(
      pushGraphicsState(),
      concatTransformationMatrix(...matrix),
      drawObject(name),
      popGraphicsState(),
    );
  }
  return bare;
}

interface Look {
  readonly ref: PDFRef;
  readonly stream: PDFStream;
}

/** The normal appearance in the state that a mark is in; none where that state has no look, null where there is no look at all. */
function lookOf(mark: PDFDict): Look | 'none' | null {
  const normal = mark.lookupMaybe(PDFName.of('AP'), PDFDict)?.get(PDFName.of('N'));
  if (normal === undefined) return null;
  const found = mark.context.lookup(normal);
  if (found instanceof PDFStream && normal instanceof PDFRef) return { ref: normal, stream: found };
  if (!(found instanceof PDFDict)) return null;
  const state = mark.lookup(PDFName.of('AS'));
  const ref = state instanceof PDFName ? found.get(state) : undefined;
  const stream = ref instanceof PDFRef ? mark.context.lookup(ref) : undefined;
  return stream instanceof PDFStream && ref instanceof PDFRef ? { ref, stream } : 'none';
}

type Matrix = readonly [number, number, number, number, number, number];

/** What lays the box of a look, by its own matrix, over the rectangle of its mark; null where there is no such box. */
function placed({ dict }: PDFStream, mark: PDFDict): [number, number, number, number, number, number] | null {
  const box = numbersOf(dict.lookup(PDFName.of('BBox')), 4);
  const rect = numbersOf(mark.lookup(PDFName.of('Rect')), 4);
  const [a, b, c, d, e, f] = (numbersOf(dict.lookup(PDFName.of('Matrix')), 6) ?? [
    1, 0, 0, 1, 0, 0,
  ]) as unknown as Matrix;
  if (!box || !rect) return null;
  const [x0, y0, x1, y1] = box as unknown as readonly [number, number, number, number];
  const at = (x: number, y: number) => [a * x + c * y + e, b * x + d * y + f] as const;
  const from: Box = boxOf([at(x0, y0), at(x1, y0), at(x1, y1), at(x0, y1)]);
  const [rx0, ry0, rx1, ry1] = rect as unknown as readonly [number, number, number, number];
  const to: Box = boxOf([
    [rx0, ry0],
    [rx1, ry1],
  ]);
  const across = (to.maxX - to.minX) / (from.maxX - from.minX);
  const up = (to.maxY - to.minY) / (from.maxY - from.minY);
  const matrix: [number, number, number, number, number, number] = [
    across,
    0,
    0,
    up,
    to.minX - across * from.minX,
    to.minY - up * from.minY,
  ];
  return matrix.every(Number.isFinite) ? matrix : null;
}

const numberOf = (value: unknown): number | null => (value instanceof PDFNumber ? value.asNumber() : null);

function numbersOf(value: unknown, count: number): readonly number[] | null {
  if (!(value instanceof PDFArray) || value.size() !== count) return null;
  const numbers = Array.from({ length: count }, (_, i) => numberOf(value.lookup(i)));
  return numbers.every((one) => one !== null && Number.isFinite(one)) ? (numbers as readonly number[]) : null;
}
