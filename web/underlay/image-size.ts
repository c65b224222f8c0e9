import type { UnderlayKind } from '../../routing/site/schema/vocabulary.ts';

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
