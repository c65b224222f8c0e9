import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PDFDocument } from '@cantoo/pdf-lib';
import { expect, test } from 'vitest';
import { packedFonts } from '../../../calc/cli/writing/fonts.ts';
import { addPage, sharedResources } from '../../../calc/sheets/pdf/kit/document.ts';
import { letteringIn } from '../../../calc/sheets/pdf/kit/lettering/lettering.ts';
import { LETTERS } from '../../../calc/sheets/pdf/kit/lettering/letters.ts';
import { penWith } from '../../../calc/sheets/pdf/kit/pen.ts';

/** Letters with marks that no one sign has, in the typeface of the set; some in words with another script. */
const MARKED = ['q\u0301', 'Q\u0301', 'm\u0300', 'x\u0323', 'b\u0308', 'T\u0303', 'm\u0323\u0301'];
const SIZE = 40;

interface Ink {
  readonly columns: readonly [number, number];
  /** Rows with ink, in stretches without a gap. */
  readonly stretches: number;
}

/** What poppler draws and reads of each text, set alone on a page. */
async function drawnBy(
  texts: readonly string[],
  weight: 'regular' | 'bold',
): Promise<{ readonly inks: readonly Ink[]; readonly read: string }> {
  const doc = await PDFDocument.create({ updateMetadata: false });
  const lettering = await letteringIn(doc, await packedFonts(), LETTERS.tabloid, texts);
  const resources = sharedResources(doc, lettering, []);
  for (const text of texts) {
    const pen = penWith(lettering);
    pen.text(text, [30, 30], { size: SIZE, weight });
    addPage(doc, { width: 120, height: 100 }, resources, pen.bytes());
  }
  lettering.scripts?.finish();
  const folder = mkdtempSync(join(tmpdir(), 'overrow-marks-'));
  const file = join(folder, 'texts.pdf');
  writeFileSync(file, await doc.save({ addDefaultPage: false }));
  execFileSync('pdftoppm', ['-gray', '-r', '144', file, join(folder, 'page')]);
  const read = execFileSync('pdftotext', [file, '-'], { encoding: 'utf8' });
  const inks = texts.map((_, i) =>
    inkOf(readFileSync(join(folder, `page-${String(i + 1).padStart(String(texts.length).length, '0')}.pgm`))),
  );
  rmSync(folder, { recursive: true });
  return { inks, read };
}

function inkOf(pgm: Buffer): Ink {
  const [, width = 0, height = 0] = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(pgm.toString('latin1'))?.map(Number) ?? [];
  const pixels = pgm.subarray(pgm.length - width * height);
  const isInk = (x: number, y: number): boolean => pixels[y * width + x]! < 128;
  const columns = Array.from({ length: width }, (_, x) => x).filter((x) =>
    Array.from({ length: height }, (_, y) => y).some((y) => isInk(x, y)),
  );
  const rows = Array.from({ length: height }, (_, y) =>
    Array.from({ length: width }, (_, x) => x).some((x) => isInk(x, y)),
  );
  return {
    columns: [Math.min(...columns), Math.max(...columns)],
    stretches: rows.filter((has, y) => has && !rows[y - 1]).length,
  };
}

test.each(['regular', 'bold'] as const)(
  'marks that stand over no sign of their own stand over their letters, clear of them, %s',
  async (weight) => {
    const letters = MARKED.map((text) => text[0]!);
    const { inks, read } = await drawnBy([...letters, ...MARKED], weight);
    // A pixel is half a point: a mark reaches no more than a tenth of the size past its letter.
    const most = 2 * 0.1 * SIZE;
    MARKED.forEach((text, i) => {
      const [bare, whole] = [inks[i]!, inks[letters.length + i]!];
      expect([text, whole.columns[0] - bare.columns[0] > -most, whole.columns[1] - bare.columns[1] < most]).toEqual([
        text,
        true,
        true,
      ]);
      expect([text, whole.stretches]).toEqual([text, 1 + (text.length - 1)]);
    });
    for (const text of MARKED) expect(read.normalize('NFD')).toContain(text.normalize('NFD'));
  },
);
