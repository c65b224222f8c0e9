import {
  AnnotationMode,
  getDocument,
  type PDFDocumentLoadingTask,
  type PDFDocumentProxy,
  type PDFPageProxy,
  PDFWorker,
} from 'pdfjs-dist';
import PdfPort from 'pdfjs-dist/build/pdf.worker.min.mjs?worker';
import { canvasFor, inverted, UnderlayFault, type UnderlayPicture } from './picture.ts';
import { statedScale } from './stated-scale.ts';

/** Longest that a file may take to be opened, and a page to be drawn, milliseconds. */
const OPEN_MS = 20_000;
const DRAW_MS = 30_000;
const MAX_PAGES = 5_000;
/** Its words are waited for no longer. */
const STATED_MS = 3_000;
/** A side of a page, points: 400 ft. */
const MAX_SIDE_POINTS = 345_600;
/** Pixels of one picture within a page. */
const MAX_IMAGE_PIXELS = 80_000_000;

const DATA: Readonly<Record<string, string>> = {
  ...import.meta.glob<string>('../../node_modules/pdfjs-dist/standard_fonts/*.{pfb,ttf}', {
    query: '?url',
    import: 'default',
    eager: true,
  }),
  ...import.meta.glob<string>('../../node_modules/pdfjs-dist/wasm/*.wasm', {
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
    return await pageOf(await opened(task), pageNumber, close);
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

async function pageOf(pdf: PDFDocumentProxy, pageNumber: number, close: () => void): Promise<UnderlayPicture> {
  if (pdf.numPages > MAX_PAGES) throw new UnderlayFault(`it has ${pdf.numPages} pages; at most ${MAX_PAGES} are read`);
  if (pageNumber > pdf.numPages) throw new UnderlayFault(`it has no page ${pageNumber}, only ${pdf.numPages}`);
  const page = await inTime(pdf.getPage(pageNumber), OPEN_MS, `page ${pageNumber} takes too long to open`);
  const { width, height } = page.getViewport({ scale: 1 });
  if (!(width > 0 && height > 0 && width <= MAX_SIDE_POINTS && height <= MAX_SIDE_POINTS))
    throw new UnderlayFault(`page ${pageNumber} is ${width} x ${height} points`);
  const stated = await statedOn(page).catch(() => null);
  const inches = (points: number): string => String(Math.round((points / 72) * 10) / 10);
  return {
    box: { minX: 0, minY: 0, maxX: width, maxY: height },
    feetPerUnit: null,
    perInch: 72,
    ...(stated !== null && { statedFeet: stated }),
    pages: pdf.numPages,
    notes: [
      `Page ${pageNumber} of ${pdf.numPages}, ${inches(width)} x ${inches(height)} in.`,
      ...(stated === null
        ? []
        : [
            `Its words say that an inch of it is ${Math.round(stated * 1000) / 1000} ft: it is laid so at first. Check it by two points.`,
          ]),
    ],
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

/** The scale that the words of a page state, looked for no longer than a page may take to open. */
async function statedOn(page: PDFPageProxy): Promise<number | null> {
  const { items } = await inTime(page.getTextContent(), STATED_MS, 'its words take too long');
  return statedScale(items.map((item) => ('str' in item ? item.str : '')).join(' '));
}

function inTime<T>(work: Promise<T>, milliseconds: number, says: string): Promise<T> {
  let late: ReturnType<typeof setTimeout>;
  const limit = new Promise<never>((_, reject) => {
    late = setTimeout(() => reject(new UnderlayFault(says)), milliseconds);
  });
  return Promise.race([work, limit]).finally(() => clearTimeout(late));
}
