import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { packedFonts } from '../../../calc/cli/fonts.ts';
import { alternativeOf } from '../../../calc/plan/alternative.ts';
import type { Alternative } from '../../../calc/plan/comparison.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { SHEET_FILES } from '../../../calc/sheets/every-sheet.ts';
import { readSite } from '../../../routing/site/file/read.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { manyScripts } from '../../scripts/many-scripts.ts';
import { NAMES } from '../../scripts/names.ts';

/** One lot with names in every script, written to every kind of file and read by readers that are not ours. */
const folder = mkdtempSync(join(tmpdir(), 'overrow-many-'));
let planned: Alternative;

beforeAll(() => {
  const read = readSite(manyScripts());
  if (!read.ok) throw new Error(JSON.stringify(read.errors));
  planned = alternativeOf('many', toSite(read.file), INVENTED_LIST);
});
afterAll(() => rmSync(folder, { recursive: true }));

async function written(ending: string): Promise<string> {
  const sheet = SHEET_FILES.find((each) => each.ending === ending)!;
  const path = join(folder, `many${ending}`);
  const content = await sheet.write(planned, { fonts: packedFonts, date: '2026-11-30', page: 'https://host.invalid/' });
  writeFileSync(path, content!);
  return path;
}

/** Words of a PDF as pdftotext gives them, without its marks of direction. */
async function wordsOf(ending: string): Promise<string> {
  const out = execFileSync('pdftotext', ['-layout', await written(ending), '-'], {
    encoding: 'utf8',
    maxBuffer: 1 << 27,
  });
  return out.replace(/[\u200e\u200f\u202a-\u202e\u2066-\u2069]/g, '').normalize('NFC');
}

describe('names in every script are found as text', () => {
  test('in the drawing set', async () => {
    const words = await wordsOf('.drawings.pdf');
    for (const name of Object.values(NAMES)) expect(words).toContain(name);
    expect(words).not.toContain('U+');
  });
  test.each([
    ['.calculations.pdf', ['simplified', 'greek']],
    ['.utility-letter.pdf', ['simplified', 'greek', 'hebrew', 'arabic']],
    ['.pull-cards.pdf', ['simplified', 'greek']],
    ['.commissioning.pdf', ['simplified', 'greek']],
    ['.commissioning-blank.pdf', ['simplified', 'greek']],
  ] as const)('in %s', async (ending, names) => {
    const words = await wordsOf(ending);
    for (const name of names) expect(words).toContain(NAMES[name]);
    expect(words).not.toContain('U+');
  });
});
