import { spawnSync } from 'node:child_process';
import type { ReadPage, ReadPdf } from './read-pdf.ts';

export const words = ({ texts }: ReadPage): readonly string[] => texts.map(({ text }) => text);
export const close = (text: string): string => text.replace(/\s+/g, '');
/** All text of the sheets of one kind, without white space. */
export const textOf = ({ pages }: ReadPdf, label: RegExp): string =>
  close(
    pages
      .filter((page) => label.test(page.label))
      .flatMap(words)
      .join(''),
  );

// Poppler is a second reader; where a machine has none, pdf.js alone has read the sets above.
export const POPPLER = { text: 'pdftotext', fonts: 'pdffonts' };
export const poppler = spawnSync(POPPLER.text, ['-v']).status === 0;
