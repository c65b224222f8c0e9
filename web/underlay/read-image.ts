import { imageSize, MAX_PIXELS } from './image-size.ts';
import { canvasFor, inverted, UnderlayFault, type UnderlayPicture } from './picture.ts';

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
  const longest = Math.max(size.width, size.height);
  const blob = new Blob([bytes], { type: `image/${kind}` });
  const less = MAX_HELD / longest;
  const options: ImageBitmapOptions =
    less < 1
      ? {
          resizeWidth: Math.round(size.width * less),
          resizeHeight: Math.round(size.height * less),
          resizeQuality: 'high',
        }
      : {};
  const bitmap = await createImageBitmap(blob, options).catch(() => {
    throw new UnderlayFault('it is damaged: the browser cannot decode it');
  });
  // A picture that says it is turned comes out turned; its pixels are counted as they are seen.
  const turned = bitmap.width > bitmap.height !== size.width > size.height;
  const [width, height] = turned ? [size.height, size.width] : [size.width, size.height];
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

const MAX_SVG_BYTES = 20_000_000;
const MAX_SVG_SIDE = 100_000;

/** An SVG, shown only as an image from a blob: no script of it runs and nothing it names is fetched. */
export async function readSvg(bytes: Uint8Array<ArrayBuffer>): Promise<UnderlayPicture> {
  if (bytes.byteLength > MAX_SVG_BYTES) throw new UnderlayFault(`it is over ${MAX_SVG_BYTES / 1e6} MB`);
  const url = URL.createObjectURL(new Blob([bytes], { type: 'image/svg+xml' }));
  const image = new Image();
  image.src = url;
  await image.decode().catch(() => {
    URL.revokeObjectURL(url);
    throw new UnderlayFault('it is damaged: the browser cannot draw it');
  });
  const [width, height] = [image.naturalWidth || 300, image.naturalHeight || 150];
  if (width > MAX_SVG_SIDE || height > MAX_SVG_SIDE) {
    URL.revokeObjectURL(url);
    throw new UnderlayFault(`it is ${width} x ${height} units; at most ${MAX_SVG_SIDE} to a side are drawn`);
  }
  return {
    box: { minX: 0, minY: 0, maxX: width, maxY: height },
    feetPerUnit: null,
    notes: [`${width} x ${height} units.`],
    render: async (part, perUnit, { dark }) => {
      const { canvas, pen } = canvasFor(part, perUnit);
      pen.fillStyle = '#fff';
      pen.fillRect(0, 0, canvas.width, canvas.height);
      pen.drawImage(image, -part.minX * perUnit, (part.maxY - height) * perUnit, width * perUnit, height * perUnit);
      if (dark) inverted(pen);
      return canvas;
    },
    close: () => URL.revokeObjectURL(url),
  };
}
