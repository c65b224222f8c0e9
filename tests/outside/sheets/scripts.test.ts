import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PDFDocument } from '@cantoo/pdf-lib';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { packedFonts } from '../../../calc/cli/writing/fonts.ts';
import { addPage, sharedResources } from '../../../calc/sheets/pdf/kit/document.ts';
import { letteringIn } from '../../../calc/sheets/pdf/kit/lettering/lettering.ts';
import { LETTERS } from '../../../calc/sheets/pdf/kit/lettering/letters.ts';
import { penWith } from '../../../calc/sheets/pdf/kit/pen.ts';

/** Assigned letters, marks and figures of ranges. */
const signs = (...ranges: readonly (readonly [number, number])[]): readonly string[] =>
  ranges
    .flatMap(([from, to]) => Array.from({ length: to - from + 1 }, (_, i) => String.fromCodePoint(from + i)))
    .filter((sign) => /^[\p{L}\p{M}\p{Nd}]$/u.test(sign) && sign.normalize('NFC') === sign);

const decoded = (label: string, rows: readonly (readonly [number, number])[]): readonly string[] => {
  const decoder = new TextDecoder(label, { fatal: true });
  return rows
    .flatMap(([from, to]) =>
      Array.from({ length: to - from + 1 }, (_, row) =>
        Array.from({ length: 94 }, (_, cell) => {
          try {
            return decoder.decode(Uint8Array.of(0xa0 + from + row, 0xa1 + cell));
          } catch {
            return '';
          }
        }),
      ).flat(),
    )
    .filter((sign) => /^\p{Script=Han}$/u.test(sign));
};

const SCRIPTS: Readonly<Record<string, readonly string[]>> = {
  Greek: signs([0x370, 0x3e1], [0x3f0, 0x3ff], [0x1f00, 0x1fff]),
  Cyrillic: signs([0x400, 0x52f]).filter((sign) => /\p{L}/u.test(sign)),
  Vietnamese: signs([0x1ea0, 0x1ef9]),
  Hebrew: signs([0x5d0, 0x5ea]),
  Arabic: signs([0x620, 0x64a], [0x671, 0x674], [0x679, 0x6d3]),
  Devanagari: signs([0x904, 0x939], [0x958, 0x961], [0x966, 0x96f]),
  Thai: signs([0xe01, 0xe30], [0xe32, 0xe32], [0xe40, 0xe46], [0xe50, 0xe59]),
  'Han of GB 2312': decoded('gbk', [[16, 87]]),
  'Han of Unicode 1': signs([0x4e00, 0x9fa5]),
  'Han of JIS X 0208': decoded('euc-jp', [[16, 84]]),
  Kana: signs([0x3041, 0x3096], [0x30a1, 0x30fa]),
  Hangul: signs([0xac00, 0xd7a3]),
};

/** What pdftotext reads of each text, set one below the other on pages of a PDF; without its marks of direction. */
async function readBack(texts: readonly string[]): Promise<readonly string[]> {
  const doc = await PDFDocument.create({ updateMetadata: false });
  const lettering = await letteringIn(doc, await packedFonts(), LETTERS.tabloid, texts);
  const resources = sharedResources(doc, lettering, []);
  for (let from = 0; from < texts.length; from += ROWS) {
    const pen = penWith(lettering);
    texts.slice(from, from + ROWS).forEach((text, i) => {
      pen.text(text, [20, 30 * (ROWS - i)], { size: 10, weight: i % 2 === 0 ? 'regular' : 'bold' });
    });
    addPage(doc, { width: 1200, height: 30 * (ROWS + 1) }, resources, pen.bytes());
  }
  lettering.scripts?.finish();
  const folder = mkdtempSync(join(tmpdir(), 'overrow-scripts-'));
  const file = join(folder, 'texts.pdf');
  writeFileSync(file, await doc.save({ useObjectStreams: true, addDefaultPage: false }));
  const out = execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' });
  rmSync(folder, { recursive: true });
  return out
    .replace(/[\u200e\u200f\u202a-\u202e\u2066-\u2069]/g, '')
    .split(/\n\n*|\f/)
    .map((line) => line.trim())
    .filter((line) => line !== '');
}

const ROWS = 60;

test.each(Object.entries(SCRIPTS))('any letters of %s print, and come back by pdftotext', async (_, alphabet) => {
  const word = fc.string({ unit: fc.constantFrom(...alphabet), minLength: 1, maxLength: 8 });
  const line = fc.array(word, { minLength: 1, maxLength: 3 }).map((words) => words.join(' '));
  const texts = fc.sample(line, 60);
  // Where one word ends, a reader guesses from the gaps.
  const solid = (text: string): string => text.normalize('NFC').replaceAll(' ', '');
  expect((await readBack(texts)).map(solid)).toEqual(texts.map(solid));
});
