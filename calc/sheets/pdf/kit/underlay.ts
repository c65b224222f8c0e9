import {
  PDFDocument,
  PDFName,
  PDFObjectCopier,
  type PDFPage,
  PDFPageEmbedder,
  type PDFRef,
  PDFStream,
} from '@cantoo/pdf-lib';
import { direction } from '../../../../routing/plane/direction.ts';
import { counted } from '../../../../routing/words/counted.ts';
import { drawMarkUps } from './mark-ups.ts';
import type { Pen } from './pen.ts';
import type { View } from './view/view.ts';

/** What lies under the plan: a page of a PDF file, or a picture. */
export type Underlay = UnderlayPage | UnderlayPicture;

interface UnderlayLaid {
  readonly bytes: Uint8Array;
  readonly placement: UnderlayPlacement;
  /** How far it is faded, as the site file says: 0 not at all, 1 out of sight; 0.5 where absent. */
  readonly dim?: number;
  /** Name of the file, for saying that it is left out. */
  readonly file?: string;
}

interface UnderlayPage extends UnderlayLaid {
  readonly kind: 'pdf';
  /** 1 is the first. */
  readonly page: number;
}

interface UnderlayPicture extends UnderlayLaid {
  readonly kind: 'png' | 'jpeg';
  /** Width and height in units of the file, whatever the pixels of this picture of it; its pixels where absent. */
  readonly size?: readonly [width: number, height: number];
}

export interface UnderlayPlacement {
  /** Where the lower left corner of the page or picture lies on the site, feet. */
  readonly x: number;
  readonly y: number;
  /** Feet of the site for a unit of the file: of a page a point (1/72 in). */
  readonly scale: number;
  /** Degrees counter-clockwise about that corner. */
  readonly rotation: number;
}

/** An underlay that is part of the document. */
export interface PlacedUnderlay {
  readonly placement: UnderlayPlacement;
  /** Units of the file to a unit of what is placed, across and up: a picture is placed as a square of one. */
  readonly size: readonly [number, number];
  readonly dim: number;
  readonly ref: PDFRef;
}

/** How far an underlay is faded where its site does not say. */
const DIM = 0.5;

/** Name in a page's resources of an underlay, by its place from the lowest up. */
export const underlayName = (place: number): string => `Underlay${place + 1}`;

/** What hangs on a page beside its drawing: links, forms, scripts, thumbnails, notes of the program that wrote it. */
const LEFT_BEHIND = ['Annots', 'AA', 'B', 'Thumb', 'PieceInfo', 'Metadata', 'StructParents', 'Tabs', 'Group', 'VP'];

/** What can be placed of some underlays, from the lowest up, and what is to be said of the others. */
export interface PlacedUnderlays {
  readonly placed: readonly PlacedUnderlay[];
  readonly remarks: readonly string[];
}

/**
 * Puts underlays into the document. A page as it is seen, cropped and turned as its file says: its lines stay lines and its
 * text text, and so do its mark-ups and what is filled in; links, notes that open, and scripts stay behind. Where the bytes are nothing that can be placed (damaged, locked,
 * empty, no such page) the set is drawn without it, and its cover says so. One that is dimmed out of sight is left out. A
 * placement or a size that is not finite and over 0, or a dim outside 0 to 1, is a RangeError.
 */
export async function embedUnderlays(doc: PDFDocument, underlays: readonly Underlay[]): Promise<PlacedUnderlays> {
  const placed: PlacedUnderlay[] = [];
  const remarks: string[] = [];
  for (const underlay of underlays) {
    const { placement, dim = DIM, file } = underlay;
    const given = underlay.kind === 'pdf' ? ([1, 1] as const) : underlay.size;
    const { x, y, scale, rotation } = placement;
    if (
      ![x, y, rotation].every(Number.isFinite) ||
      ![scale, ...(given ?? [])].every((one) => Number.isFinite(one) && one > 0)
    )
      throw new RangeError('an underlay is placed by finite numbers and a scale and size over 0');
    if (!(dim >= 0 && dim <= 1)) throw new RangeError('an underlay is dimmed by a share from 0 to 1');
    if (dim === 1) continue;
    const found = await embedded(doc, underlay).catch(() => null);
    if (found !== null) {
      placed.push({ placement, size: given ?? found.pixels, dim, ref: found.ref });
      if (found.bare > 0)
        remarks.push(
          `Of the underlay ${file ?? ''} ${counted(found.bare, 'mark-up')} without a look of ${found.bare === 1 ? 'its' : 'their'} own ${found.bare === 1 ? 'is' : 'are'} left out.`,
        );
    } else
      remarks.push(
        `The underlay is left out: ${file ?? 'its file'} is missing, or no ${underlay.kind === 'pdf' ? 'PDF' : 'picture'} that can be placed.`,
      );
  }
  return { placed, remarks };
}

interface Embedded {
  readonly ref: PDFRef;
  readonly bare: number;
  /** Of a picture, its own. */
  readonly pixels: readonly [number, number];
}

/**
 * The reference to a page or picture in the document, and how many mark-ups it lacks; null where the file has no such page.
 * Rejects where it is damaged.
 */
async function embedded(doc: PDFDocument, underlay: Underlay): Promise<Embedded | null> {
  const { bytes, kind } = underlay;
  if (kind !== 'pdf') {
    const image = await (kind === 'png' ? doc.embedPng(bytes) : doc.embedJpg(bytes));
    await image.embed();
    return { ref: image.ref, bare: 0, pixels: [image.width, image.height] };
  }
  const source = await PDFDocument.load(bytes, { updateMetadata: false });
  const from = source.getPages()[underlay.page - 1];
  if (from === undefined) return null;
  const bare = drawMarkUps(from);
  for (const key of LEFT_BEHIND) from.node.delete(PDFName.of(key));
  const { box, matrix } = asSeen(from);
  const copy = PDFObjectCopier.for(source.context, doc.context).copy(from.node);
  const embedder = await PDFPageEmbedder.for(copy, box, matrix);
  const ref = await embedder.embedIntoContext(doc.context);
  // As one: where its lines lie over one another they are no darker for it.
  doc.context
    .lookup(ref, PDFStream)
    .dict.set(PDFName.of('Group'), doc.context.obj({ Type: 'Group', S: 'Transparency', I: true }));
  return { ref, bare, pixels: [1, 1] };
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

/** Draws the underlays from the lowest up, each faded, where they lie in the view. */
export function drawUnderlays(pen: Pen, underlays: readonly PlacedUnderlay[], view: View): void {
  underlays.forEach(({ placement: { x, y, scale, rotation }, size: [across, up] }, i) => {
    const [ux, uy] = direction(rotation);
    const unit = scale * view.perFoot;
    const [w, h] = [unit * across, unit * up];
    const [px, py] = view.at([x, y]);
    pen.clipped(view.area, () => pen.form(underlayName(i), [w * ux, w * uy, -h * uy, h * ux, px, py]));
  });
}
