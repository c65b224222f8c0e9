import type { UnderlayKind } from '../../../routing/site/schema/vocabulary.ts';

export interface PixelSize {
  readonly width: number;
  readonly height: number;
}

/** A picture with more pixels is not decoded: a small file may claim any number of them. */
export const MAX_PIXELS = 150_000_000;

/** The pixel size that a picture's header claims, before anything is decoded; null where the header is damaged. */
export function imageSize(kind: Extract<UnderlayKind, 'png' | 'jpeg'>, bytes: Uint8Array): PixelSize | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  return kind === 'png' ? pngSize(view) : jpegSize(view);
}

/** Width and height stand first in the first chunk, IHDR. */
function pngSize(view: DataView): PixelSize | null {
  if (view.byteLength < 24 || view.getUint32(12) !== 0x49484452) return null;
  return { width: view.getUint32(16), height: view.getUint32(20) };
}

/** The frame header, SOF0 to SOF15, stands somewhere among the segments; C4, C8 and CC are other tables. */
function jpegSize(view: DataView): PixelSize | null {
  let at = 2;
  while (at + 9 < view.byteLength) {
    if (view.getUint8(at) !== 0xff) return null;
    const marker = view.getUint8(at + 1);
    if (marker === 0xff) at += 1;
    else if (marker === 0x01 || (marker >= 0xd0 && marker <= 0xd8)) at += 2;
    else if (marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc)
      return { height: view.getUint16(at + 5), width: view.getUint16(at + 7) };
    else at += 2 + Math.max(2, view.getUint16(at + 2));
  }
  return null;
}

const JPEG_APP1 = 0xe1;
const EXIF = 0x45786966;
const ORIENTATION = 0x0112;

/**
 * Whether a JPEG says that it is to be seen lying on its side (Exif 2.3, orientation 5 to 8), so that its width and
 * height change places. False where it says nothing or its words are damaged.
 */
export function isTurned(bytes: Uint8Array): boolean {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  for (
    let at = 2;
    at + 18 < view.byteLength && view.getUint8(at) === 0xff;
    at += 2 + Math.max(2, view.getUint16(at + 2))
  ) {
    const marker = view.getUint8(at + 1);
    if (marker === 0xda) return false;
    if (marker === JPEG_APP1 && view.getUint32(at + 4) === EXIF) return orientationIn(view, at + 10) >= 5;
  }
  return false;
}

/** The orientation in a directory of tags (TIFF 6.0, section 2); 1 where it has none. */
function orientationIn(view: DataView, start: number): number {
  const little = view.getUint16(start) === 0x4949;
  const end = view.byteLength;
  if (start + 8 > end) return 1;
  const directory = start + view.getUint32(start + 4, little);
  if (directory + 2 > end) return 1;
  const count = view.getUint16(directory, little);
  for (let i = 0; i < count && directory + 2 + 12 * (i + 1) <= end; i++) {
    const entry = directory + 2 + 12 * i;
    if (view.getUint16(entry, little) === ORIENTATION) return view.getUint16(entry + 8, little);
  }
  return 1;
}
