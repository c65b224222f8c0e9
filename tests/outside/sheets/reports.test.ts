import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { plan } from '../../../calc/plan/plan.ts';
import { calculationPacket } from '../../../calc/sheets/pdf/report/packet.ts';
import type { ReportParts } from '../../../calc/sheets/pdf/report/report.ts';
import { utilityLetter } from '../../../calc/sheets/pdf/report/utility-letter.ts';
import { packetEntries } from '../../../calc/sheets/pdf/schedules/packet-entries.ts';
import { whyEquipment } from '../../../calc/why/why-supply.ts';
import { CAUTIONS } from '../../../calc/words/cautions.ts';
import { readSite } from '../../../routing/site/file/read.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { readPdf } from './pdf/read-pdf.ts';

const root = join(import.meta.dirname, '../../..');
const font = (name: string): Uint8Array => readFileSync(join(root, `calc/sheets/fonts/overpass-${name}.ttf`));
const PARTS: ReportParts = { fonts: { regular: font('regular'), bold: font('semibold') }, date: '2026-11-25' };

function sample(name: string, change: (file: SiteFile) => SiteFile = (file) => file) {
  const read = readSite(readFileSync(join(root, `samples/${name}.site.json`), 'utf8'));
  if (!read.ok) throw new Error(JSON.stringify(read.errors));
  const site = toSite(change(read.file));
  return { site, planned: plan(site) };
}

/** What poppler reads in a PDF, page by page; another reader where it is not installed. */
async function pagesOf(bytes: Uint8Array): Promise<readonly string[]> {
  const file = join(mkdtempSync(join(tmpdir(), 'report-')), 'report.pdf');
  writeFileSync(file, bytes);
  const { stdout, error } = spawnSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' });
  if (error === undefined) return stdout.split('\f').slice(0, -1);
  const { pages } = await readPdf(bytes);
  return pages.map(({ texts }) => texts.map(({ text }) => text).join(' '));
}

const plain = (text: string): string => text.replace(/\s+/g, ' ');

test('the packet has every feeder, transformer, board and circuit, with steps, pages and cautions', async () => {
  const { site, planned } = sample('fleet-yard');
  const told: (readonly [number, number])[] = [];
  const bytes = await calculationPacket(site, planned, { ...PARTS, drawn: (done, of) => told.push([done, of]) });
  const pages = await pagesOf(bytes);
  const text = plain(pages.join(' '));
  expect(told.map(([done]) => done)).toEqual(pages.map((_, i) => i + 1));
  expect(told[0]![1]).toBe(pages.length);
  const entries = packetEntries(site, planned);
  for (const { number } of entries) expect(text).toContain(number);
  expect(entries.filter(({ kind }) => kind === 'feeder').flatMap(({ of }) => of)).toEqual(
    expect.arrayContaining(site.feeders.map(({ id }) => id)),
  );
  expect(new Set(entries.filter(({ kind }) => kind === 'circuits').flatMap(({ of }) => of))).toEqual(
    new Set(planned.circuits.map(({ charger }) => charger)),
  );
  // The index names the page that each stands on.
  for (const { number, kind, of } of entries.filter((_, i) => i % 3 === 0)) {
    const title = kind === 'feeder' ? `${number} FEEDER ${of[0]}` : number;
    const row = new RegExp(`${number} .*? (\\d+)(?= C-| For planning|$)`).exec(plain(pages[0]!).trim());
    expect(plain(pages[Number(row![1]) - 1]!)).toContain(title);
  }
  const steps = whyEquipment(site, 'T1');
  for (const { source } of steps) expect(text).toContain(plain(source).slice(0, 18));
  expect(text).toContain('ASSUMPTIONS TO BE CONFIRMED');
  expect(text).toContain('available fault current');
  expect(text).toContain('NEC 2023 Table 250.66');
  for (const page of pages) expect(plain(page)).toContain(CAUTIONS.slice(0, 60));
});

test('circuits alike are worked once, and how many is said: a large lot stays a packet of few pages', async () => {
  const { site, planned } = sample('hospital-lot');
  const groups = packetEntries(site, planned).filter(({ kind }) => kind === 'circuits');
  expect(planned.circuits.length).toBeGreaterThan(200);
  expect(groups.length).toBeLessThan(60);
  for (const { of } of groups) {
    const drops = of.map((id) => planned.circuits.find(({ charger }) => charger === id)!.branchDropPercent);
    expect(drops[0]).toBe(Math.max(...drops));
  }
  const pages = await pagesOf(await calculationPacket(site, planned, PARTS));
  expect(pages.length).toBeLessThan(120);
  expect(plain(pages[0]!)).toContain(`${planned.circuits.length} branch circuits in ${groups.length} groups`);
  const text = plain(pages.join(' '));
  for (const { charger } of planned.circuits) expect(text).toContain(charger);
});

test('the letter is one page, with what is planned and lines for what is not given', async () => {
  const { site, planned } = sample('library-lot');
  const pages = await pagesOf(await utilityLetter(site, planned, PARTS));
  expect(pages).toHaveLength(1);
  const text = plain(pages[0]!);
  const [load] = planned.loadCalculations;
  for (const words of [
    site.name,
    '208Y/120 V, 3 phase, 4 wire',
    'Connected: chargers',
    `16, ${(load!.chargers.reduce((sum, { nameplateVa }) => sum + nameplateVa, 0) / 1000).toFixed(1)} kVA`,
    'Load management at P1',
    'Largest single step',
    `${(load!.largestStepVa / 1000).toFixed(1)} kVA`,
    'planned with 30000 A; please confirm',
    'Address and parcel',
    CAUTIONS.slice(0, 60),
  ])
    expect(text).toContain(words);
});

test('what the site does not give is not invented', async () => {
  const { site, planned } = sample('library-lot', (file) => ({
    ...file,
    equipment: file.equipment!.map(
      ({ faultAmps: _, faultXr: __, managedAmps: ___, interruptingAmps: ____, ...one }) => one,
    ),
  }));
  const text = plain((await pagesOf(await utilityLetter(site, planned, PARTS)))[0]!);
  expect(text).not.toContain('planned with');
  expect(text).not.toContain('Load management');
  expect(text).not.toContain('interrupting rating');
  expect(text).toContain('Available fault current at the point of connection');
});

test('the same plan gives the same bytes', async () => {
  const { site, planned } = sample('library-lot');
  const [one, two] = [await calculationPacket(site, planned, PARTS), await calculationPacket(site, planned, PARTS)];
  expect(Buffer.compare(Buffer.from(one), Buffer.from(two))).toBe(0);
});
