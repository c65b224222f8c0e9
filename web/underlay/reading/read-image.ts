import { canvasFor, UnderlayFault, type UnderlayPicture } from '../painting/picture.ts';
import { imageSize, isTurned, MAX_PIXELS } from './image-size.ts';

/** Longest side of a picture as it is held, pixels; a larger one is made smaller as it is decoded. */
const MAX_HELD = 8192;

/** A PNG or JPEG: its unit is a pixel of the file. */
export async function readImage(kind: 'png' | 'jpeg', bytes: Uint8Array<ArrayBuffer>): Promise<UnderlayPicture> {
  const size = imageSize(kind, bytes);
  if (!size || size.width === 0 || size.height === 0) throw new UnderlayFault('its header is damaged');
  if (size.width * size.height > MAX_PIXELS)
    throw new UnderlayFault(
      `it has ${size.width} x ${size.height} pixels; at most ${MAX_PIXELS / 1e6} million are read`,
    );
  // A picture that says it is turned comes out turned; its pixels are counted as they are seen.
  const [width, height] = kind === 'jpeg' && isTurned(bytes) ? [size.height, size.width] : [size.width, size.height];
  const blob = new Blob([bytes], { type: `image/${kind}` });
  // One side alone is named: the browser keeps the other in proportion, turned or not.
  const options: ImageBitmapOptions =
    Math.max(width, height) <= MAX_HELD
      ? {}
      : { ...(width >= height ? { resizeWidth: MAX_HELD } : { resizeHeight: MAX_HELD }), resizeQuality: 'high' };
  const bitmap = await createImageBitmap(blob, options).catch(() => {
    throw new UnderlayFault('it is damaged: the browser cannot decode it');
  });
  return {
    box: { minX: 0, minY: 0, maxX: width, maxY: height },
    feetPerUnit: null,
    notes: [`${width} x ${height} pixels.`],
    render: async (part, perUnit) => {
      const { canvas, pen } = canvasFor(part, perUnit);
      pen.fillStyle = '#fff';
      pen.fillRect(0, 0, canvas.width, canvas.height);
      pen.imageSmoothingQuality = 'high';
      pen.drawImage(bitmap, -part.minX * perUnit, (part.maxY - height) * perUnit, width * perUnit, height * perUnit);
      return canvas;
    },
    close: () => bitmap.close(),
  };
}
