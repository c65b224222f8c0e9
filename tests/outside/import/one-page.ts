import { PDFDocument } from '@cantoo/pdf-lib';
import { readPdf } from '../sheets/pdf/read-pdf.ts';

/** The one page of a drawing set that has a number, as a PDF of its own. */
export async function onlyPage(bytes: Uint8Array, label: string): Promise<Uint8Array> {
  const { pages } = await readPdf(bytes);
  const from = await PDFDocument.load(bytes);
  const to = await PDFDocument.create();
  const [page] = await to.copyPages(from, [pages.findIndex((one) => one.label === label)]);
  to.addPage(page!);
  return to.save();
}
