import { readFileSync } from 'node:fs';
import { unzipSync } from 'fflate';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { SHEET_FILES } from '../../../calc/sheets/every-sheet.ts';
import type { SheetNews, SheetRequest, Wanted } from '../../../web/sheets/sheet-request.ts';
import { writeRequest } from '../../../web/sheets/write-sheets.ts';
import { zipOf } from '../../../web/sheets/zip.ts';
import { plannedSample } from '../../outside/sheets/planned-samples.ts';

const fonts = async () => ({
  regular: new Uint8Array(readFileSync('calc/sheets/fonts/overpass-regular.ttf')),
  bold: new Uint8Array(readFileSync('calc/sheets/fonts/overpass-semibold.ttf')),
});

const request = (wanted: Wanted): SheetRequest => ({
  // As a worker gets it: a copy that is data alone.
  ...structuredClone({ site: plannedSample('library-lot').site }),
  name: 'lot.site.json',
  wanted,
  prices: INVENTED_LIST,
  date: '2026-11-29',
  underlays: [],
  page: 'http://localhost:4817/',
});

async function told(wanted: Wanted) {
  const news: Extract<SheetNews, { kind: 'doing' }>[] = [];
  const content = await writeRequest(request(wanted), fonts, (one) => one.kind === 'doing' && news.push(one));
  return { content, news };
}

describe('writing sheets', () => {
  it('tells of each page of a drawing set, up to the last', async () => {
    const { news } = await told({ kind: 'sheet', ending: '.drawings.pdf' });
    const pages = news.filter(({ says }) => says.startsWith('sheet'));
    expect(pages.length).toBeGreaterThan(5);
    expect(pages.map(({ done }) => done)).toEqual(pages.map((_, i) => i + 1));
    expect(pages.at(-1)!.done).toBe(pages.at(-1)!.of);
  });
  it('every sheet is in the ZIP, as it is by itself, and how far it is only grows', async () => {
    const { content, news } = await told({ kind: 'every' });
    const files = unzipSync(content as Uint8Array);
    const { site, planned: plan } = plannedSample('library-lot');
    expect(site.georef).toBeDefined();
    expect(site.days).toHaveLength(1);
    expect(Object.keys(files)).toEqual(SHEET_FILES.map(({ ending }) => `lot${ending}`));
    const svg = await SHEET_FILES.find(({ ending }) => ending === '.svg')!.write(
      { name: 'lot.site.json', site, plan, cost: null as never },
      { fonts, date: '2026-11-29' },
    );
    expect(new TextDecoder().decode(files['lot.svg'])).toBe(svg);
    const far = news.slice(1).map(({ done }) => done);
    expect(far).toEqual([...far].sort((a, b) => a - b));
    for (const { says } of SHEET_FILES) expect(news.some((one) => one.says.endsWith(says))).toBe(true);
  });
});

describe('the ZIP', () => {
  afterEach(() => vi.useRealTimers());
  it('of the same files is the same bytes at any time', () => {
    vi.useFakeTimers();
    const at = (time: string): Uint8Array => {
      vi.setSystemTime(new Date(time));
      return zipOf({ 'a.csv': 'a,b\r\n', 'b.pdf': new Uint8Array([1, 2, 3]) });
    };
    expect(at('2026-11-29T10:00:00Z')).toEqual(at('2031-02-03T04:05:06Z'));
  });
});
