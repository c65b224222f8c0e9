import { PDFDict, PDFDocument, PDFName, type PDFPage } from '@cantoo/pdf-lib';
import { describe, expect, test } from 'vitest';
import type { UnderlayPlacement } from '../../../../calc/sheets/pdf/kit/underlay.ts';
import { setOf } from './drawing-set.ts';
import { type Kind, LIBRARY, MARK, onPlan, sitePlan } from './pdf-underlay-parts.ts';
import { type PageText, type ReadPdf, readPdf } from './read-pdf.ts';

const set = (bytes: Uint8Array, placement: UnderlayPlacement, page = 1): Promise<Uint8Array> =>
  setOf(LIBRARY, { underlays: [{ kind: 'pdf', bytes, page, placement }] });

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

/** The page with marks of a reviewer on it: their words as looks (ISO 32000-1, 12.5.5), the second in a state, two unseen, one bare. */
async function marked(kind: Kind): Promise<Uint8Array> {
  const doc = await PDFDocument.load(await sitePlan(kind));
  const [page] = doc.getPages() as [PDFPage];
  const font = doc.context.register(doc.context.obj({ Type: 'Font', Subtype: 'Type1', BaseFont: 'Helvetica' }));
  const look = (word: string, more: Record<string, unknown> = {}) =>
    doc.context.register(
      doc.context.stream(`BT /F 10 Tf 5 5 Td (${word}) Tj ET`, {
        BBox: [0, 0, 100, 20],
        Resources: { Font: { F: font } },
        ...more,
      } as never),
    );
  const mark = (more: Record<string, unknown>) =>
    doc.context.register(
      doc.context.obj({ Type: 'Annot', Subtype: 'FreeText', Rect: [200, 400, 400, 440], ...more } as never),
    );
  const annots = [
    mark({ AP: { N: look('MOVED') } }),
    mark({ Subtype: 'Widget', AS: 'On', AP: { N: { On: look('TICKED', { Matrix: [0, 1, -1, 0, 0, 0] }) } } }),
    mark({ Subtype: 'Widget', AS: 'Off', AP: { N: { On: look('UNTICKED') } } }),
    mark({ F: 2, AP: { N: look('SECRET') } }),
    mark({ Subtype: 'Popup' }),
    mark({ Subtype: 'Ink' }),
    mark({ AP: { N: look('FLAT', { BBox: [0, 0, 0, 0] }) } }),
  ];
  page.node.set(PDFName.of('Annots'), doc.context.obj(annots));
  return doc.save();
}

test.each([
  ['as it is', {}, ([x, y]: readonly number[]) => [x!, y!], 0],
  ['cropped', { crop: [40, 60, 500, 600] as const }, ([x, y]: readonly number[]) => [x! - 40, y! - 60], 0],
  ['on its side', { turn: 90 }, ([x, y]: readonly number[]) => [y!, 612 - x!], 270],
] as const)('mark-ups of a page lie where a reviewer put them: a page %s', async (_, kind, seen, turn) => {
  const placement = { x: -10, y: -60, scale: 0.1, rotation: 0 };
  const pdf = await readPdf(
    await setOf(LIBRARY, {
      underlays: [{ kind: 'pdf', bytes: await marked(kind), page: 1, placement, file: 'plan.pdf' }],
    }),
  );
  const page = pdf.pages.find(({ label }) => label === 'E-101')!;
  const word = (text: string): PageText | undefined => page.texts.find((one) => one.text === text);
  // The box of 100 by 20 fills one of 200 by 40: 5, 5 of it lies 10, 10 in. Stood up it is 20 by 100: 5, 5 lies at -5, 5.
  for (const [text, at, own] of [
    ['MOVED', [210, 410], 0],
    ['TICKED', [200 + (15 / 20) * 200, 400 + (5 / 100) * 40], 90],
  ] as const) {
    const [px, py] = seen(at);
    const [x, y] = onPlan(pdf, [placement.x + px! * placement.scale, placement.y + py! * placement.scale]);
    expect(word(text)!.x, text).toBeCloseTo(x, 0);
    expect(word(text)!.y, text).toBeCloseTo(y, 0);
    expect((word(text)!.turn + 360) % 360, text).toBeCloseTo((turn + own) % 360, 2);
  }
  expect(['UNTICKED', 'SECRET', 'FLAT'].map(word)).toEqual([undefined, undefined, undefined]);
  const cover = pdf.pages[0]!.texts.map(({ text }) => text).join(' ');
  expect(cover).toContain('Of the underlay plan.pdf 2 mark-ups without a look of their own are left out');
});

test('a page of nothing but mark-ups is one too', async () => {
  const doc = await PDFDocument.load(await marked({}));
  doc.getPages()[0]!.node.delete(PDFName.of('Contents'));
  const placement = { x: -10, y: -60, scale: 0.1, rotation: 0 };
  const pdf = await readPdf(await set(await doc.save(), placement));
  expect(pdf.pages.find(({ label }) => label === 'E-101')!.texts.some(({ text }) => text === 'MOVED')).toBe(true);
});
