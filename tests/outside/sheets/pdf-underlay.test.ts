import { degrees, PDFDict, PDFDocument, PDFName, type PDFPage, PDFString } from '@cantoo/pdf-lib';
import { describe, expect, test } from 'vitest';
import type { Underlay, UnderlayPlacement } from '../../../calc/sheets/pdf/kit/underlay.ts';
import { setOf } from './drawing-set.ts';
import { plannedSample } from './planned-samples.ts';
import { type PageText, placedOn, type ReadPdf, readPdf } from './read-pdf.ts';

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
  setOf(LIBRARY, { underlays: [{ kind: 'pdf', bytes, page, placement }] });

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

/** Four pixels, two and two, red over blue. */
const PNG = Uint8Array.from(
  Buffer.from(
    'iVBORw0KGgoAAAANSUhEUgAAAAIAAAACCAIAAAD91JpzAAAAEUlEQVR4nGP4z8AARAxg8j8AG/ID/fPnS7EAAAAASUVORK5CYII=',
    'base64',
  ),
);

describe('several underlays', () => {
  const below = { x: -10, y: -30, scale: 0.1, rotation: 10 };
  const picture = { x: 5, y: -12, scale: 0.25, rotation: 215 };
  const above = { x: 3, y: -20, scale: 0.05, rotation: -90 };
  const laid = async (): Promise<Underlay[]> => [
    { kind: 'pdf', bytes: await sitePlan(), page: 1, placement: below, dim: 0.2 },
    { kind: 'png', bytes: PNG, size: [80, 40], placement: picture },
    { kind: 'pdf', bytes: await sitePlan(), page: 1, placement: { ...below, x: 0 }, dim: 1 },
    { kind: 'pdf', bytes: await sitePlan({ turn: 90 }), page: 1, placement: above, dim: 0.7 },
  ];

  test('lie over one another in their order, each where it is placed, turned, and dimmed as the board dims it', async () => {
    const bytes = await setOf(LIBRARY, { underlays: await laid() });
    const pdf = await readPdf(bytes);
    const at = pdf.pages.findIndex(({ label }) => label === 'E-101');
    const placed = await placedOn(bytes, at + 1);
    expect(placed.map(({ kind, alpha }) => [kind, Number(alpha.toFixed(6))])).toEqual([
      ['form', 0.8],
      ['picture', 0.5],
      ['form', 0.3],
    ]);
    const [ox, oy] = onPlan(pdf, [0, 0]);
    const perFoot = onPlan(pdf, [1, 0])[0] - ox;
    const placements = [below, picture, above];
    const sizes = [
      [1, 1],
      [80, 40],
      [1, 1],
    ] as const;
    placed.forEach(({ matrix }, i) => {
      const { x, y, scale, rotation } = placements[i]!;
      const [w, h] = sizes[i]!;
      const turn = (rotation * Math.PI) / 180;
      const unit = scale * perFoot;
      const wanted = [
        unit * w * Math.cos(turn),
        unit * w * Math.sin(turn),
        -unit * h * Math.sin(turn),
        unit * h * Math.cos(turn),
        ox + x * perFoot,
        oy + y * perFoot,
      ];
      matrix.forEach((value, k) => {
        expect(value).toBeCloseTo(wanted[k]!, k < 4 ? 1 : 0);
      });
    });
    const kerbs = pdf.pages[at]!.texts.filter(({ text }) => text === 'KERB').map(
      ({ turn }) => Math.round(turn + 360) % 360,
    );
    expect(kerbs).toEqual([10, 180]);
  });

  test('one that cannot be placed is named, and the others lie', async () => {
    const [first, second, , last] = (await laid()) as [Underlay, Underlay, Underlay, Underlay];
    const bytes = await setOf(LIBRARY, {
      underlays: [
        { ...first, bytes: new Uint8Array([37, 80]), file: 'kerbs.pdf' },
        { ...second, bytes: PNG.slice(0, 40), file: 'aerial.png' },
        last,
      ],
    });
    const pdf = await readPdf(bytes);
    const cover = pdf.pages[0]!.texts.map(({ text }) => text).join(' ');
    expect(cover).toContain('The underlay is left out: kerbs.pdf');
    expect(cover).toContain('The underlay is left out: aerial.png');
    const at = pdf.pages.findIndex(({ label }) => label === 'E-101');
    expect((await placedOn(bytes, at + 1)).map(({ kind }) => kind)).toEqual(['form']);
  });

  test.each([
    ['a dim over 1', { dim: 1.5 }],
    ['a dim that is no number', { dim: Number.NaN }],
    ['a picture of no width', { size: [0, 4] as const }],
  ])('%s is a fault of the program', async (_, fault) => {
    const [, second] = await laid();
    await expect(setOf(LIBRARY, { underlays: [{ ...second!, ...fault } as Underlay] })).rejects.toThrow(RangeError);
  });
});
