import { degrees, PDFDocument, PDFName, PDFString } from '@cantoo/pdf-lib';
import { plannedSample } from '../planned-samples.ts';
import type { PageText, ReadPdf } from './read-pdf.ts';

/** Where the mark stands on the page that is laid under, points. */
export const MARK = [100, 300] as const;

export interface Kind {
  readonly turn?: number;
  readonly crop?: readonly [x: number, y: number, width: number, height: number];
}

/** A one-page PDF with a word on it, a link and a script that must not come along. */
export async function sitePlan({ turn = 0, crop }: Kind = {}): Promise<Uint8Array> {
  const doc = await PDFDocument.create();
  const page = doc.addPage([612, 792]);
  page.drawText('KERB', { x: MARK[0], y: MARK[1], size: 12 });
  page.drawLine({ start: { x: 0, y: 0 }, end: { x: 612, y: 792 } });
  page.setRotation(degrees(turn));
  if (crop !== undefined) page.setCropBox(...crop);
  const link = doc.context.obj({
    Type: 'Annot',
    Subtype: 'Link',
    Rect: [0, 0, 100, 100],
    A: { S: 'JavaScript', JS: PDFString.of('app.alert(1)') },
  });
  page.node.set(PDFName.of('Annots'), doc.context.obj([doc.context.register(link)]));
  return doc.save();
}

export const LIBRARY = plannedSample('library-lot');

/** Where a point of the site lies on E-101: told by two gridline bubbles and the title block's scale, as a reader would. */
export function onPlan(pdf: ReadPdf, [x, y]: readonly [number, number]): readonly [number, number] {
  const page = pdf.pages.find(({ label }) => label === 'E-101')!;
  const bubble = (label: string): PageText =>
    page.texts.find(({ text, size }) => text === label && size > 9 && size < 12)!;
  const [one, four, a] = [bubble('1'), bubble('4'), bubble('A')];
  const middle = (text: PageText): number => text.x + text.width / 2;
  const perFoot = (middle(four) - middle(one)) / 79;
  // Letters of a bubble stand centred on its gridline, capitals being 0.7 of the size.
  return [middle(one) + x * perFoot, a.y + 0.35 * a.size + y * perFoot];
}
