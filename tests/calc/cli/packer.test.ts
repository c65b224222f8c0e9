import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { inflateSync } from 'node:zlib';
import { unzipSync } from 'fflate';
import { expect, test } from 'vitest';
import { packedFonts } from '../../../calc/cli/writing/fonts.ts';
import { NATIVE } from '../../../calc/cli/writing/packer.ts';
import { alternativeOf } from '../../../calc/plan/compared/alternative.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { SHEET_FILES } from '../../../calc/sheets/every-sheet.ts';
import { ANYWHERE, type Packer, zipped } from '../../../calc/sheets/packing.ts';
import { plannedSample } from '../../outside/sheets/planned-samples.ts';

const lot = alternativeOf('lot', plannedSample('library-lot').site, INVENTED_LIST);

async function written(ending: string, packer?: Packer): Promise<Uint8Array> {
  const { write } = SHEET_FILES.find((file) => file.ending === ending)!;
  return (await write(lot, { fonts: packedFonts, date: '2026-01-01', ...(packer && { packer }) })) as Uint8Array;
}

/** What the packed streams of a PDF hold, one after the other. */
function streams(pdf: Uint8Array): readonly string[] {
  const text = Buffer.from(pdf).toString('latin1');
  return [...text.matchAll(/\/Filter \/FlateDecode.*?>>\s*stream\r?\n(.*?)\r?\nendstream/gs)].map(([, packed]) =>
    inflateSync(Buffer.from(packed!, 'latin1')).toString('latin1'),
  );
}

test('what Node packs is, unpacked, what every engine packs, and the same bytes each time', async () => {
  const [native, again, usual] = [
    await written('.calculations.pdf', NATIVE),
    await written('.calculations.pdf', NATIVE),
    await written('.calculations.pdf'),
  ];
  expect(Buffer.compare(again, native)).toBe(0);
  expect(Buffer.compare(usual, native)).not.toBe(0);
  const [pages, others] = [streams(native), streams(usual)];
  expect(pages.filter((page) => page.startsWith('1 J 1 j')).length).toBeGreaterThan(10);
  // The last is the table of where objects stand in the file, which goes by how long each is.
  expect(pages.slice(0, -1)).toEqual(others.slice(0, -1));
  const [book, other] = [unzipSync(await written('.xlsx', NATIVE)), unzipSync(await written('.xlsx'))];
  expect(Object.keys(book)).toEqual(Object.keys(other));
  for (const [name, bytes] of Object.entries(book))
    expect([name, Buffer.compare(bytes, other[name]!)]).toEqual([name, 0]);
});

test('a ZIP is read by another program, whoever packs it', () => {
  const files = { 'a.txt': new TextEncoder().encode('a'.repeat(999)), 'b/c.txt': new Uint8Array(0) };
  const folder = mkdtempSync(join(tmpdir(), 'packer-'));
  try {
    for (const packer of [NATIVE, ANYWHERE]) {
      const path = join(folder, 'one.zip');
      execFileSync('tee', [path], { input: zipped(files, packer), stdio: ['pipe', 'ignore', 'inherit'] });
      const script =
        'import sys, zipfile; z = zipfile.ZipFile(sys.argv[1]); print(z.testzip(), z.namelist(), len(z.read("a.txt")))';
      const said = execFileSync('python3', ['-c', script, path], { encoding: 'utf8' });
      expect(said.trim()).toBe("None ['a.txt', 'b/c.txt'] 999");
      expect(readFileSync(path).length).toBeLessThan(500);
    }
  } finally {
    rmSync(folder, { recursive: true });
  }
});
