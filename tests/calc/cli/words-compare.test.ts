import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import DxfParser, { type ITextEntity } from 'dxf-parser';
import { describe, expect, test } from 'vitest';
import { runWords } from '../../../calc/cli/words.ts';
import { issueNames } from '../../../calc/plan/issue-names.ts';
import { plan } from '../../../calc/plan/plan.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { linesOn, readPdf } from '../../outside/sheets/pdf/read-pdf.ts';
import { LIBRARY, machineWith, SAMPLES } from './words-parts.ts';

describe('compare', () => {
  test('sets differences first, in the first file’s units', async () => {
    const { out } = await runWords(
      ['compare', LIBRARY, 'samples/library-pedestals.site.json', '--json'],
      machineWith(),
    );
    const { facts } = JSON.parse(out);
    const differs = facts.map((fact: { differs: boolean }) => fact.differs);
    expect(differs).toEqual([...differs].sort((a, b) => Number(b) - Number(a)));
    const trench = facts.find(({ fact }: { fact: string }) => fact === 'trench');
    expect(trench.values[0]).toBe(0);
    expect(trench.values[1]).toBeGreaterThan(80);
  });
  test('--changes tells what moved and what it does to the quantities', async () => {
    const lot = JSON.parse(readFileSync(join(SAMPLES, 'library-lot.site.json'), 'utf8'));
    lot.drops[2].box[1] -= 2;
    lot.drops[2].retractor[1] -= 2;
    const { out } = await runWords(
      ['compare', LIBRARY, 'later.site.json', '--changes', '--json'],
      machineWith({ 'later.site.json': JSON.stringify(lot) }),
    );
    const { changes } = JSON.parse(out);
    expect(changes.elements).toMatchObject([{ list: 'drops', id: 'D03', change: 'moved' }]);
    const black = changes.quantities.filter(({ item }: { item: string }) => item === 'conductor');
    // Two lines of one circuit, 2 ft shorter each, with 5 percent waste.
    expect(
      black.reduce((sum: number, { before, after }: { before: number; after: number }) => sum + before - after, 0),
    ).toBeCloseTo(4.2, 6);
  });
});

describe('the drawing of the changes', () => {
  test('has a cloud and a delta round each thing that moved, and round the place of what is gone', async () => {
    const lot = JSON.parse(readFileSync(join(SAMPLES, 'library-lot.site.json'), 'utf8'));
    lot.drops[2].box[1] -= 2;
    lot.drops[2].retractor[1] -= 2;
    lot.columns.pop();
    const machine = machineWith({ 'later.site.json': JSON.stringify(lot) });
    const { status } = await runWords(['compare', LIBRARY, 'later.site.json', '--changes', '--out', 'marked'], machine);
    expect(status).toBe(0);
    const svg = String(machine.written.get(join('marked', 'later.changes.svg')));
    // Two places, each a cloud and the triangle of its delta; the same in all three.
    expect(svg.match(/<polygon class="G-ANNO-REVS"/g)).toHaveLength(4);
    const drawing = new DxfParser().parseSync(
      new TextDecoder().decode(machine.written.get(join('marked', 'later.changes.dxf')) as Uint8Array<ArrayBuffer>),
    )!;
    const inModel = drawing.entities.filter(({ layer }) => layer === 'G-ANNO-REVS-IDEN');
    expect(inModel.filter(({ type }) => type === 'LWPOLYLINE')).toHaveLength(4);
    const set = machine.written.get(join('marked', 'later.changes.pdf')) as Uint8Array;
    const { pages } = await readPdf(set);
    const page = pages.findIndex(({ label }) => label === 'E-101');
    expect(await linesOn(set, page + 1, 'G-ANNO-REVS')).toHaveLength(4);
    // Deltas of revision 1, and the lines of the change order that each cloud stands for.
    const LINES = /^lines? [\d, -]+$/;
    const told = inModel.flatMap((one) => (one.type === 'TEXT' ? [(one as ITextEntity).text] : []));
    expect(told.filter((words) => words === '1')).toHaveLength(2);
    const lines = told.filter((words) => LINES.test(words)).sort();
    expect(lines.length).toBeGreaterThan(0);
    expect([...svg.matchAll(/<text class="G-ANNO-REVS"[^>]*>(line[^<]*)</g)].map(([, words]) => words).sort()).toEqual(
      lines,
    );
    const printed = pages[page]!.texts.map(({ text }) => text).filter((words) => LINES.test(words));
    expect(printed.sort()).toEqual(lines);
  });
  test('is of the set, the sheets and the files that are asked for, marked by the newest issue of the later', async () => {
    const lot = JSON.parse(readFileSync(join(SAMPLES, 'library-lot.site.json'), 'utf8'));
    const site = toSite(lot);
    lot.issued = issueNames(site, plan(site));
    const earlier = JSON.stringify(lot);
    lot.chargers[8].amps = 24;
    lot.project = { issues: [{ mark: 'B', date: '2026-10-20', text: 'for construction' }] };
    const words = ['compare', 'earlier.site.json', 'later.site.json', '--changes', '--out', 'marked'];
    const machine = machineWith({ 'earlier.site.json': earlier, 'later.site.json': JSON.stringify(lot) });
    const asked = ['--only', 'pdf', '--set', 'permit', '--sheets', 'plan,circuits'];
    expect(await runWords([...words, ...asked], machine)).toMatchObject({ status: 0, err: '' });
    expect([...machine.written.keys()]).toEqual([join('marked', 'later.changes.pdf')]);
    const set = machine.written.get(join('marked', 'later.changes.pdf')) as Uint8Array;
    const { pages } = await readPdf(set);
    expect(pages.map(({ label }) => label)).toEqual(['G-001', 'E-101', 'E-601', 'E-602']);
    const said = pages.map(({ texts }) => texts.map(({ text }) => text).join(' '));
    expect(said[0]).toContain('PERMIT SET');
    // The charger has its own cloud though its drop stands where it stood, and its row a delta; both of issue B.
    expect(await linesOn(set, 2, 'G-ANNO-REVS')).toHaveLength(2);
    expect((await linesOn(set, 3, 'G-ANNO-REVS')).length).toBeGreaterThan(0);
    for (const page of said) expect(page).toMatch(/B 2026-10-20 for construction. Since/);
    // Where the later was not issued, what marks it is told.
    delete lot.project;
    const unissued = machineWith({ 'earlier.site.json': earlier, 'later.site.json': JSON.stringify(lot) });
    const { err } = await runWords([...words, '--only', 'changes.svg'], unissued);
    expect(err).toContain('no issue of its own: its deltas are marked 1');
    for (const stray of [
      ['--only', 'xlsx'],
      ['--set', 'permits'],
      ['--sheets', 'plans'],
    ])
      expect((await runWords([...words, ...stray], machine)).err).toMatch(/^compare --/);
    expect((await runWords(['compare', LIBRARY, LIBRARY, '--only', 'pdf'], machine)).status).toBe(2);
  });
  test('is not written without the changes', async () => {
    expect((await runWords(['compare', LIBRARY, LIBRARY, '--out', 'marked'], machineWith())).status).toBe(2);
  });
});
