import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** One text of a page. Points from the lower left corner; turned about its lower left corner by degrees. */
export interface PageText {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  /** Size of the font. */
  readonly size: number;
  readonly turn: number;
}

export interface ReadPage {
  readonly label: string;
  readonly width: number;
  readonly height: number;
  readonly texts: readonly PageText[];
}

export interface ReadPdf {
  readonly pages: readonly ReadPage[];
  readonly outline: readonly string[];
  readonly title: string;
  readonly hasScripts: boolean;
  /** Operators that paint a raster image. */
  readonly layers: readonly string[];
}

/** A PDF as pdf.js reads it. The bytes are copied, for pdf.js takes what it is given. */
export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const task = getDocument({ data: new Uint8Array(bytes), verbosity: 0, useSystemFonts: false });
  const doc = await task.promise;
  const labels = (await doc.getPageLabels()) ?? [];
  const pages: ReadPage[] = [];
  for (let number = 1; number <= doc.numPages; number++) {
    const page = await doc.getPage(number);
    const { width, height } = page.getViewport({ scale: 1 });
    const content = await page.getTextContent({ disableNormalization: true });
    const texts = content.items.flatMap((item): PageText[] => {
      if (!('str' in item) || item.str.trim() === '') return [];
      const [a, b, , , x, y] = item.transform as number[] as [number, number, number, number, number, number];
      const turn = (Math.atan2(b, a) * 180) / Math.PI;
      return [{ text: item.str, x, y, width: Math.hypot(item.width, 0), size: Math.hypot(a, b), turn }];
    });
    pages.push({ label: labels[number - 1] ?? '', width, height, texts });
  }
  const outline = ((await doc.getOutline()) ?? []).map(({ title }) => title);
  const { info } = await doc.getMetadata();
  const config = await doc.getOptionalContentConfig();
  const layers = [...config].map(([, group]) => (group as { name: string }).name);
  const hasScripts = (await doc.getJSActions()) !== null || (await doc.getAttachments()) !== null;
  await task.destroy();
  return { pages, outline, title: (info as { Title?: string }).Title ?? '', hasScripts, layers };
}

/** The texts of a page that stand on one base line from a text on, to the right, joined without white space. */
export function lineFrom({ texts }: ReadPage, from: PageText): string {
  return texts
    .filter(({ x, y, turn }) => Math.abs(y - from.y) < 0.5 && x >= from.x - 0.01 && turn === 0)
    .sort((a, b) => a.x - b.x)
    .map(({ text }) => text)
    .join('')
    .replace(/\s+/g, '');
}

/** A form or a picture that a page places, in the order of painting: how, and how dark. */
export interface PlacedOnPage {
  readonly kind: 'form' | 'picture';
  /** As `cm` places it, from the page's own axes. */
  readonly matrix: readonly number[];
  readonly alpha: number;
}

/** What a page places, as the operators that pdf.js reads say; the pages are counted from 1. */
export async function placedOn(bytes: Uint8Array, number: number): Promise<readonly PlacedOnPage[]> {
  const task = getDocument({ data: new Uint8Array(bytes), verbosity: 0, useSystemFonts: false });
  const page = await (await task.promise).getPage(number);
  const { fnArray, argsArray } = await page.getOperatorList();
  const placed: PlacedOnPage[] = [];
  let matrix: readonly number[] = [];
  let alpha = 1;
  let within = 0;
  fnArray.forEach((fn, i) => {
    const args = argsArray[i];
    if (fn === OPS.beginGroup || fn === OPS.paintFormXObjectBegin) {
      if (within === 0) placed.push({ kind: 'form', matrix, alpha });
      within++;
    } else if (fn === OPS.endGroup || fn === OPS.paintFormXObjectEnd) within--;
    else if (within > 0) return;
    else if (fn === OPS.transform) matrix = args as number[];
    else if (fn === OPS.setGState)
      for (const [key, value] of args[0] as [string, number][]) if (key === 'ca') alpha = value;
    if (fn === OPS.paintImageXObject && within === 0) placed.push({ kind: 'picture', matrix, alpha });
  });
  await task.destroy();
  return placed;
}

/** Lower left and upper right corner of every line that a page strokes on a layer, points, in the order of painting. */
export async function linesOn(
  bytes: Uint8Array,
  number: number,
  layer: string,
): Promise<readonly (readonly number[])[]> {
  const task = getDocument({ data: new Uint8Array(bytes), verbosity: 0, useSystemFonts: false });
  const doc = await task.promise;
  const config = await doc.getOptionalContentConfig();
  const { fnArray, argsArray } = await (await doc.getPage(number)).getOperatorList();
  const boxes: number[][] = [];
  let name = '';
  fnArray.forEach((fn, i) => {
    const args = argsArray[i];
    if (fn === OPS.beginMarkedContentProps) name = (config.getGroup(args[1].id) as { name: string }).name;
    else if (fn === OPS.endMarkedContent) name = '';
    else if (fn === OPS.constructPath && name.startsWith(layer) && [OPS.stroke, OPS.closeStroke].includes(args[0]))
      boxes.push([...(args[2] as Float32Array)]);
  });
  await task.destroy();
  return boxes;
}
