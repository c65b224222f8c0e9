import type { UnderlayKind } from '../../../routing/site/schema/vocabulary.ts';
import type { ReadingTold, UnderlayPicture } from '../painting/picture.ts';

/**
 * Reads a file that is to lie under the drawing. Rejects with an UnderlayFault in words where it cannot. Each reader is
 * fetched with the first file of its kind.
 */
export async function readUnderlay(
  kind: UnderlayKind,
  bytes: Uint8Array<ArrayBuffer>,
  page: number,
  reading: ReadingTold = {},
): Promise<UnderlayPicture> {
  switch (kind) {
    case 'png':
    case 'jpeg':
      return (await import('./read-image.ts')).readImage(kind, bytes);
    case 'svg':
      return (await import('./read-svg.ts')).readSvg(bytes);
    case 'pdf':
      return (await import('./read-pdf.ts')).readPdf(bytes, page);
    case 'dxf':
    case 'geojson':
      return (await import('./read-lines.ts')).readLines(kind, bytes, reading);
  }
}
