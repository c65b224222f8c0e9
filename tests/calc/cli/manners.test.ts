import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Machine } from '../../../calc/cli/machine.ts';
import { loadSolver } from '../../../calc/cli/solver.ts';
import { runWords } from '../../../calc/cli/words.ts';
import { packedFonts } from '../../../calc/cli/writing/fonts.ts';

const LIBRARY = 'samples/library-lot.site.json';
const HOSPITAL = 'samples/hospital-lot.site.json';

function machine(): Machine & { readonly said: string[]; readonly written: string[] } {
  const said: string[] = [];
  const written: string[] = [];
  return {
    said,
    written,
    read: (path) => readFileSync(path, 'utf8'),
    bytes: (path) => readFileSync(path),
    write: (path) => void written.push(path),
    remove: () => {},
    makeFolder: () => {},
    isTaken: () => false,
    progress: (line) => void said.push(line),
    today: () => '2026-11-30',
    fonts: packedFonts,
    solver: loadSolver,
    mayGoOn: () => () => true,
    input: () => '',
  };
}
const run = (...words: string[]) => runWords(words, machine());

describe('findings at a terminal', () => {
  test('those alike are one line with their count, the worst first, and how the site stands is told last', async () => {
    const { out } = await run('check', HOSPITAL);
    const lines = out.split('\n').filter((line) => line.startsWith(`${HOSPITAL}: `));
    const grades = lines.slice(0, -1).map((line) => /: (FAILS|CHECK|NOTE)/.exec(line)?.[1] ?? '');
    expect(grades).toEqual([...grades].sort((a, b) => ORDER.indexOf(a) - ORDER.indexOf(b)));
    expect(out).toMatch(/FAILS {2}2: The cord of EV037 .* Likewise EV101\. {2}\[reach;/);
    expect(lines.at(-1)).toMatch(/\d+ fail, \d+ to check/);
    // One by one they are as many as the line of JSON has.
    const { findings } = JSON.parse((await run('check', '--json', HOSPITAL)).out);
    const all = (await run('check', '--all', HOSPITAL)).out;
    expect(all.split('\n').filter((line) => /: (FAILS|CHECK|NOTE) {2}/.test(line))).toHaveLength(findings.length);
    expect(lines.length).toBeLessThan(findings.length / 2);
    const counted = lines.slice(0, -1).map((line) => Number(/(?:FAILS|CHECK|NOTE) {2}(\d+): /.exec(line)?.[1] ?? 1));
    expect(counted.reduce((a, b) => a + b, 0)).toBe(findings.length);
  });
});

const ORDER = ['FAILS', 'CHECK', 'NOTE'];

describe('one file of several that cannot be read', () => {
  test.each([['check'], ['plan']])('is told by %s, and the others are done', async (verb) => {
    const { status, out, err } = await run(verb, 'samples/gone.site.json', LIBRARY);
    expect(status).toBe(2);
    expect(err).toMatch(/^samples\/gone\.site\.json: cannot be read/);
    expect(out).toMatch(/0 fail/);
  });
  test('has a line of its own in check --json', async () => {
    const { status, out } = await run('check', '--json', 'samples/gone.site.json', LIBRARY);
    const [gone, library] = out
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect([status, gone.format, library.file]).toEqual([2, 'overrow/unread', LIBRARY]);
  });
  test('keeps no sheet of the others from being written', async () => {
    const own = machine();
    const words = ['plan', 'samples/gone.site.json', LIBRARY, '--out', 'o', '--only', 'runs.csv'];
    const { status, err } = await runWords(words, own);
    expect([status, own.written]).toEqual([2, ['o/library-lot.runs.csv']]);
    expect(err).toContain('gone.site.json');
  });
});

test('--quiet says how each site stands and nothing of how far it is', async () => {
  const own = machine();
  const { status, out } = await runWords(['check', '-q', LIBRARY, HOSPITAL], own);
  expect(status).toBe(1);
  expect(out.trimEnd().split('\n')).toHaveLength(2);
  await runWords(['plan', LIBRARY, '--out', 'o', '--only', 'runs.csv', '--quiet'], own);
  expect([own.said, own.written]).toEqual([[], ['o/library-lot.runs.csv']]);
});

test('what is wrong comes last, after the usage', async () => {
  expect((await run()).err.trimEnd().split('\n').at(-1)).toBe('name a verb');
});
