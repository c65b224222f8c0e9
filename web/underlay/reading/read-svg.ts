import { canvasFor, inverted, UnderlayFault, type UnderlayPicture } from '../painting/picture.ts';
import { svgPlace } from './svg-place.ts';
import { sizedSvg, svgLeftOut, svgSize } from './svg-size.ts';

const MAX_SVG_BYTES = 20_000_000;
const MAX_SVG_SIDE = 100_000;
/** One that says no size is looked for within so many units to a side, then within more. */
const LOOKED_AT = [4096, 65_536] as const;
/** Pixels to a side of the picture by which it is found. */
const FOUND_BY = 512;
/** User units in an inch of paper (CSS). */
const PER_INCH = 96;

/** An SVG, shown only as an image from a blob: no script of it runs and nothing it names is fetched. */
export async function readSvg(bytes: Uint8Array<ArrayBuffer>): Promise<UnderlayPicture> {
  if (bytes.byteLength > MAX_SVG_BYTES) throw new UnderlayFault(`it is over ${MAX_SVG_BYTES / 1e6} MB`);
  const text = new TextDecoder().decode(bytes);
  const said = svgSize(text);
  const found = said ? null : await sizeOfDrawn(text);
  const { width, height } = said ?? found ?? { width: 300, height: 150 };
  if (width > MAX_SVG_SIDE || height > MAX_SVG_SIDE)
    throw new UnderlayFault(
      `it is ${Math.round(width)} x ${Math.round(height)} units; at most ${MAX_SVG_SIDE} to a side are drawn`,
    );
  const { image, close } = await imageOf(found ? sizedSvg(text, width, height) : text);
  const left = svgLeftOut(text);
  const stated = said ? svgPlace(text, said) : null;
  const round = (side: number): string => String(Math.round(side * 10) / 10);
  return {
    box: { minX: 0, minY: 0, maxX: width, maxY: height },
    feetPerUnit: null,
    ...(said?.onPaper && { perInch: PER_INCH }),
    ...stated,
    notes: [
      said?.onPaper
        ? `A sheet of ${round(width / PER_INCH)} x ${round(height / PER_INCH)} in.`
        : `${round(width)} x ${round(height)} units${found ? ', by what is drawn: it says no size' : ''}.`,
      ...(stated ? ['It states its place on the site: it is laid there at first.'] : []),
      ...(left === null ? [] : [`Not shown: ${left}.`]),
    ],
    render: async (part, perUnit, { dark }) => {
      const { canvas, pen } = canvasFor(part, perUnit);
      pen.fillStyle = '#fff';
      pen.fillRect(0, 0, canvas.width, canvas.height);
      pen.drawImage(image, -part.minX * perUnit, (part.maxY - height) * perUnit, width * perUnit, height * perUnit);
      if (dark) inverted(pen);
      return canvas;
    },
    close,
  };
}

async function imageOf(text: string): Promise<{ readonly image: HTMLImageElement; readonly close: () => void }> {
  const url = URL.createObjectURL(new Blob([text], { type: 'image/svg+xml' }));
  const close = (): void => URL.revokeObjectURL(url);
  const image = new Image();
  image.src = url;
  await image.decode().catch(() => {
    close();
    throw new UnderlayFault('it is damaged: the browser cannot draw it');
  });
  return { image, close };
}

/** The size of what is drawn from the origin on, of an SVG that says none; null where nothing is. */
async function sizeOfDrawn(text: string): Promise<{ readonly width: number; readonly height: number } | null> {
  let size: { readonly width: number; readonly height: number } | null = null;
  for (const side of LOOKED_AT) {
    const { image, close } = await imageOf(sizedSvg(text, side, side));
    const { canvas, pen } = canvasFor({ minX: 0, minY: 0, maxX: side, maxY: side }, FOUND_BY / side);
    pen.drawImage(image, 0, 0, canvas.width, canvas.height);
    const { data } = pen.getImageData(0, 0, canvas.width, canvas.height);
    close();
    let [right, low] = [0, 0];
    for (let i = 3; i < data.length; i += 4)
      if (data[i]! > 0) {
        const at = (i - 3) / 4;
        right = Math.max(right, (at % canvas.width) + 1);
        low = Math.max(low, Math.floor(at / canvas.width) + 1);
      }
    if (right === 0) continue;
    size = { width: (right * side) / FOUND_BY, height: (low * side) / FOUND_BY };
    // At the edge there may be more of it.
    if (right < FOUND_BY && low < FOUND_BY) break;
  }
  return size;
}
