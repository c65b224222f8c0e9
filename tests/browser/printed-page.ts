import type { Page } from 'playwright-core';
import { type PageText, readPdf } from '../outside/sheets/pdf/read-pdf.ts';

export interface PrintedPage {
  readonly texts: readonly PageText[];
  readonly words: string;
  readonly bytes: Uint8Array;
  /** Across and up. */
  readonly inches: readonly [number, number];
}

/** Prints a page to a PDF, of letter size across where nothing else is asked for, which must have one page, and reads it; what the board letters is text there too. */
export async function printedPage(page: Page, format = 'Letter', landscape = true): Promise<PrintedPage> {
  const margin = { top: '0.5in', right: '0.5in', bottom: '0.5in', left: '0.5in' };
  const bytes = await page.pdf({ format, landscape, margin });
  const { pages } = await readPdf(bytes);
  if (pages.length !== 1) throw new Error(`${pages.length} pages`);
  const { texts, width, height } = pages[0]!;
  const words = texts
    .map(({ text }) => text)
    .join(' ')
    .replace(/\s+/g, ' ');
  return { texts, words, bytes, inches: [width / 72, height / 72] };
}

/** How many times larger the site is than the print, by the words of an engineers' or architects' scale. */
export function ratioIn(words: string): number {
  const found = /Scale: (\d+)(?:\/(\d+))?" = (\d+)'/.exec(words);
  if (!found) throw new Error(`no scale in: ${words}`);
  return (12 * Number(found[3])) / (Number(found[1]) / Number(found[2] ?? 1));
}
