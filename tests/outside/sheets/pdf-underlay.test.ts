import { degrees, PDFDict, PDFDocument, PDFName, PDFString } from '@cantoo/pdf-lib';
import { describe, expect, test } from 'vitest';
import type { UnderlayPlacement } from '../../../calc/sheets/pdf/underlay.ts';
import { setOf } from './drawing-set.ts';
import { plannedSample } from './planned-samples.ts';
import { type PageText, type ReadPdf, readPdf } from './read-pdf.ts';

/** Where the mark stands on the page that is laid under, points. */
const MARK = [100, 300] as const;

interface Kind {
  readonly turn?: number;
  readonly crop?: readonly [x: number, y: number, width: number, height: number];
}

/** A one-page PDF with a word on it, a link and a script that must not come along. */
async function sitePlan({ turn = 0, crop }: Kind = {}): Promise<Uint8Array> {
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

const LIBRARY = plannedSample('library-lot');
const set = (bytes: Uint8Array, placement: UnderlayPlacement, page = 1): Promise<Uint8Array> =>
  setOf(LIBRARY, { underlay: { bytes, page, placement } });

/** Where a point of the site lies on E-101: told by two gridline bubbles and the title block's scale, as a reader would. */
function onPlan(pdf: ReadPdf, [x, y]: readonly [number, number]): readonly [number, number] {
  const page = pdf.pages.find(({ label }) => label === 'E-101')!;
  const bubble = (label: string): PageText =>
    page.texts.find(({ text, size }) => text === label && size > 9 && size < 12)!;
  const [one, four, a] = [bubble('1'), bubble('4'), bubble('A')];
  const middle = (text: PageText): number => text.x + text.width / 2;
  const perFoot = (middle(four) - middle(one)) / 79;
  // Letters of a bubble stand centred on its gridline, capitals being 0.7 of the size.
  return [middle(one) + x * perFoot, a.y + 0.35 * a.size + y * perFoot];
}

const kerbOf = (pdf: ReadPdf): PageText =>
  pdf.pages.find(({ label }) => label === 'E-101')!.texts.find(({ text }) => text === 'KERB')!;

describe('a PDF page under the plan', () => {
  test.each([0, 10, 90, 215])(
    'its words are words, where the placement puts them, turned by %d degrees',
    async (rotation) => {
      const placement = { x: -10, y: -30, scale: 0.1, rotation };
      const pdf = await readPdf(await set(await sitePlan(), placement));
      const angle = (rotation * Math.PI) / 180;
      const [px, py] = [MARK[0] * placement.scale, MARK[1] * placement.scale];
      const site = [
        placement.x + px * Math.cos(angle) - py * Math.sin(angle),
        placement.y + px * Math.sin(angle) + py * Math.cos(angle),
      ] as const;
      const [x, y] = onPlan(pdf, site);
      const kerb = kerbOf(pdf);
      expect(kerb.x).toBeCloseTo(x, 0);
      expect(kerb.y).toBeCloseTo(y, 0);
      expect((kerb.turn + 360) % 360).toBeCloseTo(rotation, 2);
    },
  );
  test.each([
    // As a viewer shows the page: 12 of the mark's points from the crop, or the page turned a quarter to the right.
    [{ crop: [40, 60, 500, 600] as const }, [MARK[0] - 40, MARK[1] - 60], 0],
    [{ turn: 90 }, [MARK[1], 612 - MARK[0]], 270],
    [{ turn: 180 }, [612 - MARK[0], 792 - MARK[1]], 180],
    [{ turn: 270 }, [792 - MARK[1], MARK[0]], 90],
  ] as const)('it lies as a viewer shows it: %j', async (kind, [px, py], turn) => {
    const placement = { x: -10, y: -30, scale: 0.1, rotation: 0 };
    const pdf = await readPdf(await set(await sitePlan(kind), placement));
    const [x, y] = onPlan(pdf, [placement.x + px! * placement.scale, placement.y + py! * placement.scale]);
    const kerb = kerbOf(pdf);
    expect(kerb.x).toBeCloseTo(x, 0);
    expect(kerb.y).toBeCloseTo(y, 0);
    expect((kerb.turn + 360) % 360).toBeCloseTo(turn, 2);
  });
  test('links and scripts stay behind, and nothing becomes a picture', async () => {
    const bytes = await set(await sitePlan(), { x: 0, y: 0, scale: 0.1, rotation: 0 });
    const doc = await PDFDocument.load(bytes);
    const said = doc.context
      .enumerateIndirectObjects()
      .map(
        ([, object]) => (object instanceof PDFDict ? object : (object as { dict?: PDFDict }).dict)?.toString() ?? '',
      );
    expect(said.some((text) => text.includes('/JavaScript') || text.includes('/Annot'))).toBe(false);
    expect(said.some((text) => /\/Subtype\s*\/Image/.test(text))).toBe(false);
    expect(said.some((text) => /\/Subtype\s*\/Form/.test(text))).toBe(true);
  });
  test.each([
    ['no PDF at all', new Uint8Array([1, 2, 3]), 1],
    ['nothing', new Uint8Array(), 1],
  ])('%s is left out, and the cover says so', async (_, bytes, page) => {
    const pdf = await readPdf(await set(bytes, { x: 0, y: 0, scale: 1, rotation: 0 }, page));
    const cover = pdf.pages[0]!.texts.map(({ text }) => text).join(' ');
    expect(cover).toContain('The underlay is left out');
  });
  test('so is a page that the file does not have', async () => {
    const pdf = await readPdf(await set(await sitePlan(), { x: 0, y: 0, scale: 1, rotation: 0 }, 7));
    expect(pdf.pages[0]!.texts.map(({ text }) => text).join(' ')).toContain('The underlay is left out');
  });
  test('a placement that is no number is a fault of the program', async () => {
    await expect(set(await sitePlan(), { x: Number.NaN, y: 0, scale: 1, rotation: 0 })).rejects.toThrow(RangeError);
    await expect(set(await sitePlan(), { x: 0, y: 0, scale: 0, rotation: 0 })).rejects.toThrow(RangeError);
  });
});
