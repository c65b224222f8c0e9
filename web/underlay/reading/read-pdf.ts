import {
  AnnotationMode,
  getDocument,
  type PDFDocumentLoadingTask,
  type PDFDocumentProxy,
  type PDFPageProxy,
  PDFWorker,
} from 'pdfjs-dist';
import PdfPort from 'pdfjs-dist/build/pdf.worker.min.mjs?worker';
import type { Point2 } from '../../../routing/site/site.ts';
import { canvasFor, inverted, UnderlayFault, type UnderlayPicture } from '../painting/picture.ts';
import type { StatedByPage } from '../pdf-page/stated.ts';
import { statedScale } from './stated-scale.ts';

/** Longest that a file may take to be opened, and a page to be drawn, milliseconds. */
const OPEN_MS = 20_000;
const DRAW_MS = 30_000;
const MAX_PAGES = 5_000;
/** Its words are waited for no longer. */
const STATED_MS = 3_000;
type SheetStated = Pick<UnderlayPicture, 'perInch' | 'statedFeet' | 'place' | 'georef'>;

/** A side of a page, points: 400 ft. */
const MAX_SIDE_POINTS = 345_600;
/** A file that is larger is not gone through for what a page states to programs. */
const MAX_STATED_BYTES = 64_000_000;
/** Pixels of one picture within a page. */
const MAX_IMAGE_PIXELS = 80_000_000;

const DATA: Readonly<Record<string, string>> = {
  ...import.meta.glob<string>('../../../node_modules/pdfjs-dist/standard_fonts/*.{pfb,ttf}', {
    query: '?url',
    import: 'default',
    eager: true,
  }),
  ...import.meta.glob<string>('../../../node_modules/pdfjs-dist/wasm/*.wasm', {
    query: '?url',
    import: 'default',
    eager: true,
  }),
};

/** Fonts that every reader is expected to have, and decoders of scans: fetched from the page's own host when asked for. */
class OwnData {
  async fetch({ filename }: { readonly filename: string }): Promise<Uint8Array> {
    const [, url] = Object.entries(DATA).find(([path]) => path.endsWith(`/${filename}`)) ?? [];
    if (!url) throw new UnderlayFault(`it needs ${filename}, which is not there`);
    return new Uint8Array(await (await fetch(url)).arrayBuffer());
  }
}

/**
 * A page of a PDF, as it is seen; its unit is a point, 1/72 in. Mark-ups and what is filled in are drawn as they look; no scripts,
 * actions or links of it are followed.
 */
export async function readPdf(bytes: Uint8Array<ArrayBuffer>, pageNumber: number): Promise<UnderlayPicture> {
  const port = new PdfPort();
  const worker = PDFWorker.create({ port });
  const task = getDocument({
    // The reader takes the bytes for itself; ours stay whole.
    data: bytes.slice(),
    worker,
    isEvalSupported: false,
    enableXfa: false,
    disableAutoFetch: true,
    maxImageSize: MAX_IMAGE_PIXELS,
    useWorkerFetch: false,
    BinaryDataFactory: OwnData,
    verbosity: 0,
  } as Parameters<typeof getDocument>[0]);
  const close = (): void => {
    void task.destroy();
    worker.destroy();
    port.terminate();
  };
  try {
    return await pageOf(await opened(task), bytes, pageNumber, close);
  } catch (error) {
    close();
    throw error;
  }
}

function opened(task: PDFDocumentLoadingTask): Promise<PDFDocumentProxy> {
  const locked = new Promise<never>((_, reject) => {
    task.onPassword = () => reject(new UnderlayFault('it is locked by a password'));
  });
  const read = task.promise.catch((error: unknown) => {
    throw new UnderlayFault(`it is damaged: ${error instanceof Error ? error.message : 'it cannot be read'}`);
  });
  return inTime(Promise.race([read, locked]), OPEN_MS, `it takes longer than ${OPEN_MS / 1000} seconds to open`);
}

async function pageOf(
  pdf: PDFDocumentProxy,
  bytes: Uint8Array,
  pageNumber: number,
  close: () => void,
): Promise<UnderlayPicture> {
  if (pdf.numPages > MAX_PAGES) throw new UnderlayFault(`it has ${pdf.numPages} pages; at most ${MAX_PAGES} are read`);
  if (pageNumber > pdf.numPages) throw new UnderlayFault(`it has no page ${pageNumber}, only ${pdf.numPages}`);
  const page = await inTime(pdf.getPage(pageNumber), OPEN_MS, `page ${pageNumber} takes too long to open`);
  const { width, height } = page.getViewport({ scale: 1 });
  if (!(width > 0 && height > 0 && width <= MAX_SIDE_POINTS && height <= MAX_SIDE_POINTS))
    throw new UnderlayFault(`page ${pageNumber} is ${width} x ${height} points`);
  const stated = await statedOn(page, bytes);
  const inches = (points: number): string => String(Math.round((points / 72) * 10) / 10);
  return {
    box: { minX: 0, minY: 0, maxX: width, maxY: height },
    feetPerUnit: null,
    ...stated,
    ofPage: async (number) => statedOn(await pdf.getPage(number), bytes),
    pages: pdf.numPages,
    notes: [`Page ${pageNumber} of ${pdf.numPages}, ${inches(width)} x ${inches(height)} in.`, ...statedWords(stated)],
    render: async (part, perUnit, { dark }) => {
      const { canvas, pen } = canvasFor(part, perUnit);
      const viewport = page.getViewport({
        scale: perUnit,
        offsetX: -part.minX * perUnit,
        offsetY: -(height - part.maxY) * perUnit,
      });
      const drawing = page.render({ canvas, viewport, annotationMode: AnnotationMode.ENABLE, background: '#fff' });
      try {
        await inTime(
          drawing.promise,
          DRAW_MS,
          `page ${pageNumber} takes longer than ${DRAW_MS / 1000} seconds to draw`,
        );
      } catch (error) {
        drawing.cancel();
        throw error;
      }
      if (dark) inverted(pen);
      return canvas;
    },
    close,
  };
}

/** What a page states of its scale and its place: to programs, else in its words; looked for no longer than a while. */
async function statedOn(page: PDFPageProxy, bytes: Uint8Array): Promise<SheetStated> {
  const { feetPerUnit, place } = await statedToPrograms(page, bytes).catch(() => ({ feetPerUnit: null, place: null }));
  const viewport = page.getViewport({ scale: 1 });
  // A page may be turned, cropped, and in units larger than a point.
  const shown = ([x, y]: Point2): Point2 => {
    const [px, py] = viewport.convertToViewportPoint(x, y) as [number, number];
    return [px, viewport.height - py];
  };
  const from = shown(place?.origin ?? [0, 0]);
  const to = shown([(place?.origin[0] ?? 0) + 1, place?.origin[1] ?? 0]);
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const unit = Math.hypot(dx, dy);
  const feet = place?.feetPerUnit ?? feetPerUnit;
  const scale = feet === null ? await scaleInWords(page).catch(() => null) : (feet / unit) * 72;
  if (scale === null) return { perInch: 72 };
  if (!place) return { perInch: 72, statedFeet: scale };
  const rotation = (((place.turned - (Math.atan2(dy, dx) * 180) / Math.PI) % 360) + 360) % 360;
  return {
    perInch: 72,
    statedFeet: scale,
    place: { at: [0, 0], origin: from, scale: scale / 72, rotation },
    ...(place.georef && { georef: place.georef }),
  };
}

/** The scale that the words of a page state. */
async function scaleInWords(page: PDFPageProxy): Promise<number | null> {
  const { items } = await inTime(page.getTextContent(), STATED_MS, 'its words take too long');
  return statedScale(items.map((item) => ('str' in item ? item.str : '')).join(' '));
}

async function statedToPrograms(page: PDFPageProxy, bytes: Uint8Array): Promise<StatedByPage> {
  const { ref } = page;
  if (!ref || bytes.byteLength > MAX_STATED_BYTES) return { feetPerUnit: null, place: null };
  const worker = new Worker(new URL('../pdf-page/stated-worker.ts', import.meta.url), { type: 'module' });
  const answer = new Promise<StatedByPage>((resolve, reject) => {
    worker.onmessage = ({ data }: MessageEvent<StatedByPage>) => resolve(data);
    worker.onerror = () => reject(new UnderlayFault('what it states cannot be read'));
    worker.postMessage({ bytes, page: ref.num });
  });
  return inTime(answer, STATED_MS, 'what it states takes too long').finally(() => worker.terminate());
}

function statedWords({ statedFeet, place }: SheetStated): readonly string[] {
  if (statedFeet === undefined) return [];
  const inch = `an inch of it is ${Math.round(statedFeet * 1000) / 1000} ft`;
  return [
    place
      ? `It states its place on the site: it is laid there at first, and ${inch}.`
      : `It says that ${inch}: it is laid so at first. Check it by two points.`,
  ];
}

function inTime<T>(work: Promise<T>, milliseconds: number, says: string): Promise<T> {
  let late: ReturnType<typeof setTimeout>;
  const limit = new Promise<never>((_, reject) => {
    late = setTimeout(() => reject(new UnderlayFault(says)), milliseconds);
  });
  return Promise.race([work, limit]).finally(() => clearTimeout(late));
}
