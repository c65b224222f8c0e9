import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { read, utils } from '@e965/xlsx';
import Papa from 'papaparse';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { IfcAPI } from 'web-ifc';
import { packedFonts } from '../../../calc/cli/writing/fonts.ts';
import { alternativeOf } from '../../../calc/plan/compared/alternative.ts';
import type { Alternative } from '../../../calc/plan/compared/comparison.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { SHEET_FILES } from '../../../calc/sheets/every-sheet.ts';
import type { FaceName } from '../../../calc/sheets/pdf/kit/scripts/faces.ts';
import { readSite } from '../../../routing/site/file/read.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { LABELS, manyScripts } from '../../scripts/many-scripts.ts';
import { NAMES } from '../../scripts/names.ts';

/** One lot with names in every script, written to every kind of file and read by readers that are not ours. */
const folder = mkdtempSync(join(tmpdir(), 'overrow-many-'));
let planned: Alternative;

beforeAll(() => {
  const lot = readSite(manyScripts());
  if (!lot.ok) throw new Error(JSON.stringify(lot.errors));
  planned = alternativeOf('many', toSite(lot.file), INVENTED_LIST);
});
afterAll(() => rmSync(folder, { recursive: true }));

const PLAIN = {
  stalls: [],
  chargers: [],
  drops: [],
  loads: [],
  project: {},
  notes: [],
  sections: [],
  drawings: {},
} as const;

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

describe('names in every script are whole in files for other programs', () => {
  const content = async (ending: string): Promise<string> => readFileSync(await written(ending), 'utf8');
  const all = [...LABELS, ...Object.values(NAMES)];

  test('DXF has each sign by its number, as the format has it (ezdxf 1.4 reads them so)', async () => {
    const text = await content('.dxf');
    expect([...text].every((sign) => sign <= '\x7e')).toBe(true);
    const plain = text.replace(/\\U\+([0-9A-F]{4})/g, (_, code: string) =>
      String.fromCharCode(Number.parseInt(code, 16)),
    );
    for (const name of all) expect(plain).toContain(name);
  });
  test('SVG has them as they are, in whatever typeface the reader has', async () => {
    const text = await content('.svg');
    for (const name of all) expect(text).toMatch(new RegExp(`font-family="[^"]*sans-serif"[^>]*>${name}<`));
  });
  test('CSV is UTF-8 with its mark, for spreadsheets', async () => {
    const checklist = await content('.checklist.csv');
    expect(checklist.startsWith('\ufeff')).toBe(true);
    const { data, errors } = Papa.parse<string[]>(checklist.slice(1));
    expect(errors).toEqual([]);
    const said = data.flat().join('\n');
    for (const label of LABELS) expect(said).toContain(label);
    expect(await content('.panels.csv')).toContain(NAMES.cyrillic);
  });
  test('XLSX', async () => {
    const { Sheets } = read(readFileSync(await written('.xlsx')));
    const said = Object.values(Sheets)
      .map((sheet) => utils.sheet_to_csv(sheet))
      .join('\n');
    for (const label of LABELS) expect(said).toContain(label);
    expect(said).toContain(NAMES.cyrillic);
  });
  test('IFC, read by web-ifc', async () => {
    const text = await content('.ifc');
    expect([...text].every((sign) => sign <= '\x7e')).toBe(true);
    const api = new IfcAPI();
    await api.Init();
    const model = api.OpenModel(new TextEncoder().encode(text));
    const ids = api.GetAllLines(model);
    const said = Array.from({ length: ids.size() }, (_, i) => JSON.stringify(api.GetLine(model, ids.get(i)))).join(
      '\n',
    );
    for (const label of LABELS) expect(said).toContain(label);
    api.CloseModel(model);
  });
  test('GeoJSON', async () => {
    const said = JSON.stringify(JSON.parse(await content('.geojson')));
    for (const name of all) expect(said).toContain(name);
  });
});

test('a site in Latin letters reads no typeface more, and the same site in another script only those that it needs', async () => {
  const asked: string[] = [];
  const fonts = async () => ({
    ...(await packedFonts()),
    scripts: async (name: FaceName) => {
      asked.push(name);
      return (await packedFonts()).scripts!(name);
    },
  });
  const letter = SHEET_FILES.find(({ ending }) => ending === '.utility-letter.pdf')!;
  const of = (name: string) => alternativeOf('one', { ...planned.site, name, ...PLAIN }, INVENTED_LIST);
  await letter.write(of('Été, Łódź, Парковка, Nguyễn ½'), { fonts, date: '2026-11-30' });
  expect(asked).toEqual([]);
  await letter.write(of('Σταθμός 駐車場の'), { fonts, date: '2026-11-30' });
  expect(asked.sort()).toEqual(['greek', 'japanese']);
});
