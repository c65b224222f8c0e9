import { PDFDocument, PDFName, PDFObjectCopier, type PDFPage, PDFPageEmbedder, type PDFRef } from '@cantoo/pdf-lib';
import { direction } from '../../../routing/plane/direction.ts';
import type { Pen } from './pen.ts';
import type { View } from './view.ts';

/** A page of a PDF file that lies under the plan. */
export interface Underlay {
  readonly bytes: Uint8Array;
  /** 1 is the first. */
  readonly page: number;
  readonly placement: UnderlayPlacement;
}

export interface UnderlayPlacement {
  /** Where the lower left corner of the page lies on the site, feet. */
  readonly x: number;
  readonly y: number;
  /** Feet of the site for a point (1/72 in) of the page. */
  readonly scale: number;
  /** Degrees counter-clockwise about that corner. */
  readonly rotation: number;
}

/** An underlay that is part of the document. */
export interface PlacedUnderlay {
  readonly placement: UnderlayPlacement;
  readonly ref: PDFRef;
}

/** Name of the underlay in a page's resources. */
export const UNDERLAY = 'Underlay';

/** What hangs on a page beside its drawing: links, forms, scripts, thumbnails, notes of the program that wrote it. */
const LEFT_BEHIND = ['Annots', 'AA', 'B', 'Thumb', 'PieceInfo', 'Metadata', 'StructParents', 'Tabs', 'Group'];

/**
 * Puts the page of an underlay into the document as it is seen, cropped and turned as its file says: its lines stay lines
 * and its text text; annotations, forms and scripts stay behind. Null where the bytes are no PDF that can be placed
 * (damaged, locked, empty, no such page): the set is drawn without it, and its cover says so. A placement that is not
 * finite is a RangeError.
 */
export async function embedUnderlay(doc: PDFDocument, underlay: Underlay): Promise<PlacedUnderlay | null> {
  const { bytes, page, placement } = underlay;
  if (![placement.x, placement.y, placement.scale, placement.rotation].every(Number.isFinite) || placement.scale <= 0)
    throw new RangeError('an underlay is placed by finite numbers and a scale over 0');
  try {
    const source = await PDFDocument.load(bytes, { updateMetadata: false });
    const from = source.getPages()[page - 1];
    if (from === undefined) return null;
    for (const key of LEFT_BEHIND) from.node.delete(PDFName.of(key));
    const { box, matrix } = asSeen(from);
    const copy = PDFObjectCopier.for(source.context, doc.context).copy(from.node);
    const embedder = await PDFPageEmbedder.for(copy, box, matrix);
    return { placement, ref: await embedder.embedIntoContext(doc.context) };
  } catch {
    return null;
  }
}

/** The part of a page that a viewer shows, and the matrix that lays its lower left corner, as shown, at the origin. */
function asSeen(page: PDFPage) {
  const { x, y, width, height } = page.getCropBox();
  const box = { left: x, bottom: y, right: x + width, top: y + height };
  const turned = ((page.getRotation().angle % 360) + 360) % 360;
  const matrix: [number, number, number, number, number, number] =
    turned === 90
      ? [0, -1, 1, 0, -box.bottom, box.right]
      : turned === 180
        ? [-1, 0, 0, -1, box.right, box.top]
        : turned === 270
          ? [0, 1, -1, 0, box.top, -box.left]
          : [1, 0, 0, 1, -box.left, -box.bottom];
  return { box, matrix };
}

/** Draws the underlay, faded, where it lies in the view. */
export function drawUnderlay(pen: Pen, { placement: { x, y, scale, rotation } }: PlacedUnderlay, view: View): void {
  const [ux, uy] = direction(rotation);
  const size = scale * view.perFoot;
  const [px, py] = view.at([x, y]);
  pen.clipped(view.area, () => pen.form(UNDERLAY, [size * ux, size * uy, -size * uy, size * ux, px, py]));
}
