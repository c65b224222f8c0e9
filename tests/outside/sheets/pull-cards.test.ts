import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import jsQR from 'jsqr';
import { describe, expect, test } from 'vitest';
import { cardInLink, cardLink } from '../../../calc/field/cards/card-link.ts';
import { pullCards } from '../../../calc/field/cards/pull-cards.ts';
import { codeSquare } from '../../../calc/sheets/pdf/kit/code-square.ts';
import { pullCardReport } from '../../../calc/sheets/pdf/report/pull-card-report.ts';
import type { ReportParts } from '../../../calc/sheets/pdf/report/report.ts';
import { readPdf } from './pdf/read-pdf.ts';
import { plannedSample } from './planned-samples.ts';

const root = join(import.meta.dirname, '../../..');
const font = (name: string): Uint8Array => readFileSync(join(root, `calc/sheets/fonts/overpass-${name}.ttf`));
const PARTS: ReportParts = { fonts: { regular: font('regular'), bold: font('semibold') }, date: '2026-11-30' };
const PAGE = 'https://lots.example/overrow/';

interface Picture {
  readonly width: number;
  readonly height: number;
  readonly grey: (x: number, y: number) => number;
}

/** What a decoder that is not ours reads in a part of a picture. */
function decoded({ grey }: Picture, [left, top, width, height]: readonly number[]): string | undefined {
  const data = new Uint8ClampedArray(4 * width! * height!);
  for (let y = 0; y < height!; y++)
    for (let x = 0; x < width!; x++) {
      const at = 4 * (y * width! + x);
      data.fill(grey(left! + x, top! + y), at, at + 3);
      data[at + 3] = 255;
    }
  return jsQR(data, width!, height!, { inversionAttempts: 'dontInvert' })?.data;
}

describe('codes', () => {
  test.each([1, 20, 80, 300])('of %i letters are read by another library', (length) => {
    const text = cardLink(PAGE, { kind: 'circuit', id: 'EV01', site: 'Å/=é 7'.repeat(length).slice(0, length) });
    const { size, stretches } = codeSquare(text);
    const dark = new Set(
      stretches.flatMap(({ x, y, length: long }) => Array.from({ length: long }, (_, i) => `${x + i} ${y}`)),
    );
    const [module, quiet] = [3, 4];
    const side = (size + 2 * quiet) * module;
    const grey = (x: number, y: number): number =>
      dark.has(`${Math.floor(x / module) - quiet} ${Math.floor(y / module) - quiet}`) ? 0 : 255;
    expect(decoded({ width: side, height: side, grey }, [0, 0, side, side])).toBe(text);
  });

  test('of more than one can hold are refused', () => {
    expect(() => codeSquare('x'.repeat(3000))).toThrow(RangeError);
  });
});

test('every card of a lot is printed, four to a page, and says what it is of', async () => {
  const { site, planned } = plannedSample('library-lot');
  const cards = pullCards(site, planned);
  const bytes = await pullCardReport(site, planned, PAGE, PARTS);
  const { pages } = await readPdf(bytes);
  // One that holds much goes on upon a second card.
  expect(pages.length).toBeGreaterThanOrEqual(Math.ceil(cards.length / 4));
  expect(pages.length).toBeLessThan(1.2 * Math.ceil(cards.length / 4));
  const words = pages
    .map(({ texts }) => texts.map(({ text }) => text).join(' '))
    .join(' ')
    .replace(/\s+/g, ' ');
  for (const card of cards) expect(words).toContain(card.kind === 'conduit' ? card.id : card.circuit);
  expect(words).toContain('cut each to 51 ft');
  const blank = await readPdf(await pullCardReport(site, planned, null, PARTS));
  expect(blank.pages[0]!.texts.map(({ text }) => text).join(' ')).toContain('No code');
});

const POPPLER = { picture: 'pdftoppm' };
const poppler = spawnSync(POPPLER.picture, ['-v']).status === 0;
if (!poppler)
  console.warn(
    'NOT RUN: codes read off a printed page, for poppler was not found. Install it (on Debian, "apt-get install poppler-utils").',
  );

test.runIf(poppler)(
  'codes on the picture of a printed page are read by another library, and name their cards alone',
  async () => {
    const { site, planned } = plannedSample('library-lot');
    const bytes = await pullCardReport(site, planned, PAGE, PARTS);
    const folder = mkdtempSync(join(tmpdir(), 'overrow-cards-'));
    try {
      const file = join(folder, 'cards.pdf');
      writeFileSync(file, bytes);
      spawnSync(POPPLER.picture, [
        '-r',
        '120',
        '-gray',
        '-f',
        '2',
        '-l',
        '2',
        '-singlefile',
        file,
        join(folder, 'page'),
      ]);
      const picture = pgm(readFileSync(join(folder, 'page.pgm')));
      const [width, height] = [Math.floor(picture.width / 2), Math.floor(picture.height / 2)];
      const read = [
        [0, 0],
        [width, 0],
        [0, height],
        [width, height],
      ].map(([x, y]) => decoded(picture, [x!, y!, width, height]));
      const expected = pullCards(site, planned).slice(4, 8);
      expect(read.map((text) => cardInLink(text ?? ''))).toEqual(
        expected.map(({ kind, id }) => ({ kind, id, site: site.name })),
      );
      for (const text of read) expect(text).toMatch(/^https:\/\/lots\.example\/overrow\/#card=[^/]+\/[^/]+\/[^/]+$/);
    } finally {
      rmSync(folder, { recursive: true });
    }
  },
);

/** A grey picture as poppler writes it: `P5`, width, height, 255, then a byte a dot. */
function pgm(bytes: Buffer): Picture {
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 60).toString('latin1'))!;
  const [width, height] = [Number(head[1]), Number(head[2])];
  return { width, height, grey: (x, y) => bytes[head[0].length + y * width + x]! };
}
