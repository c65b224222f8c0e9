import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { PDFDocument, PDFName, PDFRawStream } from '@cantoo/pdf-lib';
import { describe, expect, test } from 'vitest';
import { packedFonts } from '../../../calc/cli/writing/fonts.ts';
import { underlaysBeside } from '../../../calc/cli/writing/underlays.ts';
import { alternativeOf } from '../../../calc/plan/compared/alternative.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { SHEET_FILES } from '../../../calc/sheets/every-sheet.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { SMALL } from '../../web/document/small-site.ts';

/** A PNG picture of one pixel. */
const PNG = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
  'base64',
);
/** The head of a JPEG picture whose camera marked it as lying on its side (Exif orientation 6). */
const TURNED = Buffer.from(
  'ffd8ffe100224578696600004d4d002a00000008000101120003000000010006000000000000ffda0002000000000000000000000000',
  'hex',
);
const hashOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');
const machine = {
  bytes: (path: string): Uint8Array => {
    if (path === 'lots/plan.png') return PNG;
    if (path === 'lots/photo.jpg') return TURNED;
    throw new Error('no such file');
  },
};
const placed = { at: [10, 20] as [number, number], origin: [2, 1] as [number, number], scale: 0.5, rotation: 90 };
const siteWith = (...underlays: readonly object[]) =>
  toSite({ ...SMALL, underlays: underlays.map((one) => ({ ...placed, ...one })) as never });

describe('underlays of a set that is written from the command line', () => {
  const site = siteWith({ file: 'plan.png', kind: 'png', hash: hashOf(PNG) });

  test('are those of the folder of the site file, laid by their lower left corner', () => {
    const { laid, remarks } = underlaysBeside('lots/a.site.json', site, machine);
    expect(remarks).toEqual([]);
    // By hand: [2, 1] of the file lies at [10, 20]; the
    // corner less that is [-2, -1] units, [-1, -0.5] ft, turned [0.5, -1].
    expect(laid[0]!.placement).toEqual({ x: 10.5, y: 19, scale: 0.5, rotation: 90 });
  });

  test('stand in the drawing set as pictures', async () => {
    const { laid } = underlaysBeside('lots/a.site.json', site, machine);
    const write = SHEET_FILES.find(({ ending }) => ending === '.drawings.pdf')!.write;
    const bytes = await write(alternativeOf('lots/a.site.json', site, INVENTED_LIST), {
      fonts: packedFonts,
      date: '2026-11-30',
      underlays: async () => laid,
    });
    const doc = await PDFDocument.load(bytes as Uint8Array);
    const pictures = doc.context
      .enumerateIndirectObjects()
      .filter(([, one]) => one instanceof PDFRawStream && one.dict.get(PDFName.of('Subtype')) === PDFName.of('Image'));
    expect(pictures.length).toBeGreaterThan(0);
  });

  test.each([
    ['is missing', { file: 'gone.pdf', kind: 'pdf', hash: hashOf(PNG) }, 'it is not in the folder of the site file'],
    [
      'is another file',
      { file: 'plan.png', kind: 'png', hash: hashOf(TURNED) },
      'the file of its name there is another',
    ],
    [
      'is turned by a mark',
      { file: 'photo.jpg', kind: 'jpeg', hash: hashOf(TURNED) },
      'its camera marked it as turned',
    ],
    ['is a drawing', { file: 'plan.dxf', kind: 'dxf', hash: hashOf(PNG) }, 'on the page alone'],
  ])('one that %s is left out, and that is said', (_, underlay, says) => {
    const { laid, remarks } = underlaysBeside('lots/a.site.json', siteWith(underlay), machine);
    expect(laid).toEqual([]);
    expect(remarks).toHaveLength(1);
    expect(remarks[0]).toContain(says);
  });

  test('hidden ones and those of the board alone are neither laid nor told', () => {
    const site = siteWith(
      { file: 'gone.png', kind: 'png', hash: hashOf(PNG), hidden: true },
      { file: 'gone.png', kind: 'png', hash: hashOf(PNG), unprinted: true },
    );
    expect(underlaysBeside('lots/a.site.json', site, machine)).toEqual({ laid: [], remarks: [] });
  });
});

test('the machine reads bytes as they are', async () => {
  const { readBytes } = await import('../../../calc/cli/system-files.ts');
  expect(hashOf(readBytes('calc/sheets/fonts/overpass-regular.ttf'))).toBe(
    hashOf(readFileSync('calc/sheets/fonts/overpass-regular.ttf')),
  );
});
