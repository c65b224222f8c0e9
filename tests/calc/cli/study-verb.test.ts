import { describe, expect, test } from 'vitest';
import type { Machine } from '../../../calc/cli/machine.ts';
import { loadSolver } from '../../../calc/cli/solver.ts';
import { digestOf } from '../../../calc/cli/study-index.ts';
import { runWords } from '../../../calc/cli/words.ts';
import { packedFonts } from '../../../calc/cli/writing/fonts.ts';
import { alternativeOf } from '../../../calc/plan/compared/alternative.ts';
import { INVENTED_LIST } from '../../../calc/prices/invented-list.ts';
import { startSite } from '../../../calc/propose/start-site.ts';
import { readSite } from '../../../routing/site/file/read.ts';
import { writeSite } from '../../../routing/site/file/write.ts';
import { toSite } from '../../../routing/site/to-site.ts';

const FILES: Readonly<Record<string, string>> = {
  'two.site.json': writeSite(startSite({ name: 'Two stalls', stalls: 2, rows: 1 })),
  'bare.site.json': JSON.stringify({ format: 'overrow/site', version: 1, units: 'ft', name: 'Bare' }),
};

function machine(): Machine & { readonly written: Map<string, string | Uint8Array>; readonly order: string[] } {
  const written = new Map<string, string | Uint8Array>();
  const order: string[] = [];
  return {
    written,
    order,
    read: (path) => {
      const text = FILES[path] ?? written.get(path);
      if (text === undefined) throw new Error('no such file');
      return String(text);
    },
    write: (path, content) => {
      if (path.startsWith('full/')) throw new Error('the disk is full');
      written.set(path, content);
      order.push(path);
    },
    bytes: () => new Uint8Array(),
    makeFolder: (path) => {
      if (path.startsWith('/proc/')) throw new Error(`no folder ${path} can be made there`);
    },
    isTaken: (path) => written.has(path),
    progress: () => {},
    today: () => '2026-11-25',
    fonts: packedFonts,
    solver: loadSolver,
    remove: (path) => void written.delete(path),
    mayGoOn: (seconds) => () => seconds === null,
    input: () => '',
  };
}

describe('study', () => {
  test('writes each way as it is done, then the comparison of all; and prints it', async () => {
    const on = machine();
    const words = ['study', 'two.site.json', '--out', 'ways'];
    const { status, out, err } = await runWords(words, on);
    expect([status, err]).toEqual([0, '']);
    const ways = [...on.written.keys()].filter((path) => path.endsWith('.site.json'));
    expect(ways.length).toBeGreaterThanOrEqual(4);
    expect(ways[0]).toBe('ways/two.W01.site.json');
    for (const path of ways) {
      const read = readSite(String(on.written.get(path)));
      if (!read.ok) throw new Error(read.errors.map(({ says }) => says).join('\n'));
      // What it costs in the comparison is what the site costs.
      const { cost, plan } = alternativeOf('', toSite(read.file), INVENTED_LIST);
      const row = String(on.written.get('ways/two.study.csv'))
        .split('\r\n')
        .find((line) => line.startsWith(path.slice(9, 12)));
      expect(row).toContain(`,${cost.price},`);
      expect(plan.findings.filter(({ severity }) => severity === 'fail')).toEqual([]);
      expect(on.written.get(path.replace('.site.json', '.svg'))).toContain('</svg>');
    }
    // The first comparison stands before the second way: who stops it has one.
    expect(on.order.indexOf('ways/two.study.csv')).toBeLessThan(on.order.indexOf('ways/two.W02.site.json'));
    const pdf = on.written.get('ways/two.study.pdf') as Uint8Array;
    expect(new TextDecoder('latin1').decode(pdf.slice(0, 5))).toBe('%PDF-');
    expect((on.written.get('ways/two.study.xlsx') as Uint8Array).length).toBeGreaterThan(2000);
    for (const said of ['W01', 'Pedestals', 'nothing beats it', 'combinations', 'authority having jurisdiction'])
      expect(out).toContain(said);
    const again = await runWords(words, on);
    expect([again.status, again.out]).toEqual([2, '']);
    expect(again.err).toContain('--replace');
  });

  test('--replace takes away the ways of the study before that are none of this one, and nothing else', async () => {
    const on = machine();
    const words = ['study', 'two.site.json', '--out', 'ways', '--replace'];
    await runWords(words, on);
    const index = JSON.parse(String(on.written.get('ways/two.study.json')));
    expect(index.format).toBe('overrow/study-files');
    const before = [...on.written.keys()];
    const names: string[] = index.files.map(({ name }: { name: string }) => `ways/${name}`);
    expect([...names, 'ways/two.study.json'].sort()).toEqual(before.sort());
    // Of an earlier and longer study: one as it was written, one that somebody changed; and files that none wrote.
    const listed = (name: string, text: string) => ({ name, sha256: digestOf(text) });
    const stale = { ...index, files: [...index.files, listed('two.W90.svg', 'old'), listed('two.W91.svg', 'old')] };
    stale.files.push(listed('../other.W01.svg', 'old'), listed('two.notes.txt', 'old'));
    on.written.set('ways/two.study.json', JSON.stringify(stale));
    on.written.set('ways/two.W90.svg', 'old');
    const others = ['ways/two.W91.svg', 'ways/two.W92.svg', 'other.W01.svg', 'ways/two.notes.txt'];
    for (const path of others) on.written.set(path, path.endsWith('W91.svg') ? 'changed by hand' : 'old');
    expect((await runWords(words, on)).status).toBe(0);
    expect(on.written.has('ways/two.W90.svg')).toBe(false);
    expect(others.filter((path) => !on.written.has(path))).toEqual([]);
    expect(JSON.parse(String(on.written.get('ways/two.study.json')))).toEqual(index);
  });

  test('out of time it gives what is drawn and says how many there was none for', async () => {
    const on = machine();
    const { status, out } = await runWords(['study', 'two.site.json', '--json', '--seconds', '0.001'], on);
    expect(status).toBe(0);
    const made = JSON.parse(out);
    // What is drawn.
    expect(made.ways).toHaveLength(1);
    expect(made.leftOut.at(-1)).toMatch(/^\d+ ways? for which there was no time\.$/);
  });

  test('--json prints all figures, and writes nothing without --out', async () => {
    const on = machine();
    const { status, out } = await runWords(['study', 'two.site.json', '--json', '--stay', '2'], on);
    expect([status, on.written.size]).toEqual([0, 0]);
    const made = JSON.parse(out);
    expect(made).toMatchObject({ format: 'overrow/study', version: 1, site: 'Two stalls', stalls: 2, units: 'ft' });
    // Two hours of 32 A at 208 V.
    expect(made.ways[0].figures.energy).toBeCloseTo((2 * 32 * 208) / 1000, 6);
    expect(made.ways.some(({ unbeaten }: { unbeaten: boolean }) => unbeaten)).toBe(true);
  });

  test.each([
    [['study'], 'name one site file'],
    [['study', 'two.site.json', 'bare.site.json'], 'name one site file'],
    [['study', 'none.site.json'], 'cannot be read'],
    [['study', 'bare.site.json', '--json'], 'No stall is drawn'],
    [['study', 'two.site.json', '--stay', '0'], 'expected hours from 0.25 to 23'],
    [['study', 'two.site.json', '--stay', 'long'], 'expected hours'],
    [['study', 'two.site.json', '--day', 'NONE'], 'no charging day "NONE"'],
    [['study', 'two.site.json', '--out', '/proc/x'], 'can be made there'],
    [['study', 'two.site.json', '--seconds', '0'], 'expected a number over 0'],
    [['study', 'two.site.json', '--out', 'full'], 'the disk is full'],
  ])('%j is refused with a reason', async (words, reason) => {
    const { status, out, err } = await runWords(words, machine());
    expect([status, out]).toEqual([2, '']);
    expect(err).toContain(reason);
  });
});
