import type { UnderlayKind } from '../../routing/site/vocabulary.ts';
import type { UnderlayPicture } from './picture.ts';
import { readImage, readSvg } from './read-image.ts';
import { readLines } from './read-lines.ts';

/** Reads a file that is to lie under the drawing. Rejects with an UnderlayFault in words where it cannot. */
export async function readUnderlay(
  kind: UnderlayKind,
  bytes: Uint8Array<ArrayBuffer>,
  page: number,
): Promise<UnderlayPicture> {
  switch (kind) {
    case 'png':
    case 'jpeg':
      return readImage(kind, bytes);
    case 'svg':
      return readSvg(bytes);
    case 'pdf':
      // Much the largest of the readers: fetched when the first PDF is.
      return (await import('./read-pdf.ts')).readPdf(bytes, page);
    case 'dxf':
    case 'geojson':
      return readLines(kind, bytes);
  }
}
