import { PDFDocument } from '@cantoo/pdf-lib';
import { CAUTIONS } from '../../../words/cautions.ts';
import type { Packer } from '../../packing.ts';
import { type Area, INCH, right } from '../kit/area.ts';
import { addPage, describe, nameSheets, sharedResources } from '../kit/document.ts';
import { PENS } from '../kit/ink.ts';
import { type FontBytes, type Lettering, letteringIn } from '../kit/lettering/lettering.ts';
import { LEADING, type LetterSizes } from '../kit/lettering/letters.ts';
import { wrapped } from '../kit/lettering/lines-of-text.ts';
import { unprintedWords } from '../kit/lettering/unprinted.ts';
import { type Pen, penWith } from '../kit/pen.ts';

/** Paper of a report, and how a page of it is divided. Points. */
export interface ReportShape {
  readonly width: number;
  readonly height: number;
  /** Between head and foot. */
  readonly field: Area;
}

const MARGIN = 0.75 * INCH;
const HEAD = 26;
const FOOT = 44;

const shapeOf = (width: number, height: number): ReportShape => ({
  width: width * INCH,
  height: height * INCH,
  field: {
    x: MARGIN,
    y: MARGIN + FOOT,
    width: width * INCH - 2 * MARGIN,
    height: height * INCH - 2 * MARGIN - HEAD - FOOT,
  },
});

/** Letter paper, upright and on its long side. */
export const UPRIGHT = shapeOf(8.5, 11);
export const LYING = shapeOf(11, 8.5);

/** Sizes of the font of a report, points: it is read at its own size. */
export const REPORT_LETTERS: LetterSizes = { small: 8, note: 9.5, head: 11.5, title: 17, number: 24 };

export interface ReportPage {
  /** What a list of the pages calls it. */
  readonly title: string;
  readonly draw: (pen: Pen) => void;
}

/** What the caller hands in: nothing here reads a disk or a clock. */
export interface ReportParts {
  readonly fonts: FontBytes;
  /** As it is to be printed. */
  readonly date: string;
  /** Hears what could not be printed as it was given. */
  readonly tell?: (says: string) => void;
  /** Hears how many pages are drawn, of how many. */
  readonly drawn?: (done: number, of: number) => void;
  /** Packs the pages; without one they are packed as in any engine. */
  readonly packer?: Packer;
}

/**
 * A report as a PDF: pages with a head, their number, and the cautions at the foot. The same parts give the same bytes.
 * @param printed what holds the texts of a person's own that are printed
 * @param pages told the lettering that they are set in
 */
export async function report(
  title: string,
  shape: ReportShape,
  { fonts, date, tell, drawn, packer }: ReportParts,
  printed: readonly object[],
  pages: (lettering: Lettering) => readonly ReportPage[],
): Promise<Uint8Array> {
  const doc = await PDFDocument.create({ updateMetadata: false });
  const lettering = await letteringIn(doc, fonts, REPORT_LETTERS, [title, printed]);
  if (tell) for (const one of printed) for (const says of unprintedWords(one, lettering.has)) tell(says);
  const resources = sharedResources(doc, lettering, []);
  const all = pages(lettering);
  const refs = all.map((page, i) => {
    const pen = penWith(lettering);
    drawFrame(pen, shape, [title, date, `page ${i + 1} of ${all.length}`]);
    page.draw(pen);
    const ref = addPage(doc, shape, resources, pen.bytes(), packer);
    drawn?.(i + 1, all.length);
    return ref;
  });
  lettering.scripts?.finish();
  nameSheets(
    doc,
    all.map((page, i) => ({ number: String(i + 1), draft: page })),
    refs,
  );
  describe(doc, title);
  return doc.save({ useObjectStreams: true, addDefaultPage: false, updateFieldAppearances: false });
}

function drawFrame(
  pen: Pen,
  { field, height }: ReportShape,
  [title, date, place]: readonly [string, string, string],
): void {
  const { note, small } = pen.lettering.sizes;
  const head = height - MARGIN - note;
  pen.text(title, [field.x, head], { size: note, weight: 'bold' });
  pen.text(`${date}, ${place}`, [right(field), head], { size: small, anchor: 'right' });
  const rule = (y: number): void =>
    pen.line(
      [
        [field.x, y],
        [right(field), y],
      ],
      PENS.thin,
    );
  rule(head - 6);
  rule(field.y - 10);
  wrapped(CAUTIONS, field.width, small, pen.lettering).forEach((line, i) => {
    pen.text(line, [field.x, field.y - 10 - (i + 1) * small * LEADING], { size: small });
  });
}
