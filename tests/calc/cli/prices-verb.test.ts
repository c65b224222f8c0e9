import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { Machine } from '../../../calc/cli/machine.ts';
import { loadSolver } from '../../../calc/cli/solver.ts';
import { runWords } from '../../../calc/cli/words.ts';
import { packedFonts } from '../../../calc/cli/writing/fonts.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { readPrices } from '../../../calc/prices/read-prices.ts';

const LIBRARY = 'samples/library-lot.site.json';
const machineWith = (files: Readonly<Record<string, string>> = {}): Machine => ({
  read: (path) => files[path] ?? readFileSync(join(import.meta.dirname, '../../..', path), 'utf8'),
  write: () => {},
  bytes: () => new Uint8Array(),
  makeFolder: () => {},
  isTaken: () => false,
  today: () => '2026-11-25',
  fonts: packedFonts,
  solver: loadSolver,
  remove: () => {},
  mayGoOn: () => () => true,
  input: () => '',
  progress: () => {},
});
const prices = (words: readonly string[], files = {}) => runWords(['prices', ...words], machineWith(files));

test('prints the built-in list, which is read as it was', async () => {
  const { status, out } = await prices([]);
  expect(status).toBe(0);
  expect(readPrices(out, INVENTED_LIST.name)).toEqual({ ok: true, list: INVENTED_LIST });
});

test('of a site prints the lines that it needs, to be filled in, and then lacks none', async () => {
  const { out } = await prices([LIBRARY]);
  const [head, ...lines] = out.replace('\ufeff', '').trim().split('\r\n');
  expect(head).toBe('item,spec,unit,material,hours,quantity,why');
  // Black, blue and red are one line.
  expect(lines.filter((line) => line.startsWith('conductor,8 AWG'))).toHaveLength(1);
  const rates = (await prices([])).out.split('\r\n').filter((line) => /^(rate|crew),/.test(line));
  const filled = [head, ...rates, ...lines.map((line) => line.replace(/,,,/, ',2.5,0.1,'))].join('\r\n');
  const still = await prices([LIBRARY, '--prices', 'own.csv'], { 'own.csv': filled });
  expect([still.status, still.err]).toEqual([0, '']);
  expect(still.out.trim().split('\r\n')).toHaveLength(1);
});

test('of a site by a list prints what that lacks, and what it has by a line for any size', async () => {
  const whole = (await prices([])).out.split('\r\n');
  const own = [...whole.filter((line) => !/^(panelboard|retractor),/.test(line)), 'panelboard,*,each,1000,9'].join(
    '\r\n',
  );
  const { out } = await prices([LIBRARY, '--prices', 'own.csv'], { 'own.csv': own });
  const lines = out.trim().split('\r\n').slice(1);
  expect(lines.map((line) => line.split(',')[0]).sort()).toEqual(['panelboard', 'retractor']);
  expect(out).toContain('priced by panelboard, *');
  expect(out).toMatch(/^retractor,cord,each,,,16,no price/m);
});

test('a quote is held against the day of the bid that is given', async () => {
  const whole = (await prices([])).out.replace('hours', 'hours,covers,valid until');
  const own = `${whole.trim()}\r\nquote,gear,lump,9000,,panelboard; breaker,2026-12-31\r\n`;
  const said = async (...words: readonly string[]) =>
    runWords(['plan', LIBRARY, '--prices', 'own.csv', ...words], machineWith({ 'own.csv': own }));
  expect((await said()).out).toContain('no day of the bid is given');
  expect((await said('--bid-day', '2026-12-31')).out).toContain('Quote gear: valid until 2026-12-31.');
  expect((await said('--bid-day', '1/1/2027')).out).toContain(
    'Quote gear RAN OUT: it was valid until 2026-12-31, and the bid is of 2027-01-01.',
  );
  expect(await said('--bid-day', 'soon')).toMatchObject({ status: 2, err: expect.stringContaining('--bid-day') });
});

test("a supplier's words are asked once: the answers are given back as a file", async () => {
  const supplier = 'Part Number,Description,UOM,Price\nW8,8 STR THHN CU,MFT,498\nZ1,FORK LIFT,EA,9000\n';
  const asked = await prices(['--supplier', 's.csv', LIBRARY], { 's.csv': supplier });
  expect(asked).toMatchObject({ status: 0, err: '' });
  const lines = asked.out.trim().split('\r\n');
  expect(lines).toHaveLength(3);
  expect(lines[1]).toMatch(/^called,8 STR THHN CU,ft,0,0,,W8,0.498,"conductor, 8 AWG copper THWN-2/);
  expect(lines[2]).toMatch(/^called,FORK LIFT,each,0,0,,Z1,9000,$/);
  const filled = asked.out
    .replace('THHN CU,ft,0,0,,', 'THHN CU,ft,0,0,"conductor, 8 AWG copper THWN-2",')
    .replace('LIFT,each,0,0,,', 'LIFT,each,0,0,nothing,');
  const files = { 's.csv': supplier, 'w.csv': filled };
  const still = await prices(['--supplier', 's.csv', '--words', 'w.csv'], files);
  // By its words and its part number; nothing is left to ask.
  expect(still.out).toContain('called,W8,,0,0,"conductor, 8 AWG copper THWN-2"');
  expect(still.out).not.toMatch(/^called,[^,]*,[^,]*,0,0,,/m);
  const plan = (...words: readonly string[]) =>
    runWords(['plan', LIBRARY, '--prices', 's.csv', ...words], machineWith(files));
  expect((await plan()).out).toContain('2 lines of the price list are in words that are not known');
  const priced = (await plan('--words', 'w.csv')).out;
  expect(priced).not.toContain('not known');
  expect(priced).toContain('by s.csv, else invented prices');
  expect((await prices(['--words', 'w.csv'], files)).status).toBe(2);
});

test('a list without a site, and a site that is none, are refused', async () => {
  expect((await prices(['--prices', 'x.csv'])).status).toBe(2);
  expect((await prices(['package.json'])).status).toBe(2);
});

test('compare tells the change order, with restocking where it is asked for', async () => {
  const words = ['compare', '--changes', 'samples/library-pedestals.site.json', LIBRARY];
  const { out } = await runWords(words, machineWith());
  expect(out).toMatch(/Alternate .*library-lot.*: deduct \$/);
  expect(out).toMatch(/deducts -\$/);
  expect(out).not.toContain('restocking');
  const asked = await runWords([...words, '--restocking', '--json'], machineWith());
  const { changes, alternates } = JSON.parse(asked.out);
  expect(changes.order.restocking).toBeGreaterThan(0);
  expect(changes.order.total).toBeCloseTo(alternates[0].adds + changes.order.restocking, 9);
  expect((await runWords(['compare', LIBRARY, LIBRARY, '--restocking'], machineWith())).status).toBe(2);
});
