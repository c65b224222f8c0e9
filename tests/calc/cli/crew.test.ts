import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Machine } from '../../../calc/cli/machine.ts';
import { loadSolver } from '../../../calc/cli/solver.ts';
import { runWords } from '../../../calc/cli/words.ts';
import { type Crew, takenPiece } from '../../../calc/cli/writing/crew.ts';
import { packedFonts } from '../../../calc/cli/writing/fonts.ts';
import { dayOf } from '../../../calc/sheets/days/day.ts';

const LIBRARY = 'samples/library-lot.site.json';
const HOSPITAL = 'samples/hospital-lot.site.json';
const TABLES = 'runs.csv,conduits.csv,panels.csv,takeoff.csv,geojson';

/** Two machines that share one crew, as two threads do, and what each wrote. */
function pair(fails?: string) {
  const results: unknown[] = [];
  let taken = 0;
  const crew = (pieces: number): Crew => ({
    next: () => (taken < pieces ? taken++ : null),
    done: (result) => results.push(result),
    stop: () => {
      taken = pieces;
    },
    rest: async () => {
      // The other is at rest once it finds nothing to take and what it had in hand is written.
      await new Promise((resolve) => setTimeout(resolve, 50));
      return results;
    },
  });
  const one = (files: Map<string, string | Uint8Array>): Machine => ({
    read: (path) => readFileSync(path, 'utf8'),
    bytes: (path) => readFileSync(path),
    write: (path, content) => {
      if (fails !== undefined && path.endsWith(fails)) throw new Error('the disk is full');
      files.set(path, content);
    },
    remove: () => {},
    makeFolder: () => {},
    isTaken: () => false,
    progress: () => {},
    today: () => dayOf(new Date()),
    fonts: packedFonts,
    solver: loadSolver,
    mayGoOn: () => () => true,
    input: () => '',
    crew,
  });
  const wrote = [new Map<string, string | Uint8Array>(), new Map<string, string | Uint8Array>()] as const;
  return { wrote, machines: [one(wrote[0]), one(wrote[1])] as const };
}

const words = (site: string, only: string) => ['plan', site, '--out', 'out', '--only', only];

describe('pieces of work that two take', () => {
  test('are taken once each, by one from the first on and by the other from the last back', () => {
    const taken = new BigInt64Array(1);
    const order = [false, true, true, false, true, false, true];
    expect(order.map((isFromEnd) => takenPiece(taken, 5, isFromEnd))).toEqual([0, 4, 3, 1, 2, null, null]);
  });
});

describe('sheets written by two', () => {
  test('are each written once, and told in the order of the list', async () => {
    const { wrote, machines } = pair();
    const [first] = await Promise.all(machines.map((machine) => runWords(words(LIBRARY, TABLES), machine)));
    expect(
      first!.out
        .trimEnd()
        .split('\n')
        .map((path) => basename(path).replace('library-lot.', '')),
    ).toEqual(TABLES.split(','));
    const [mine, other] = wrote.map((files) => [...files.keys()]);
    expect(mine!.length).toBeGreaterThan(0);
    expect(other!.length).toBeGreaterThan(0);
    expect([...mine!, ...other!].sort()).toEqual(
      TABLES.split(',')
        .map((end) => `out/library-lot.${end}`)
        .sort(),
    );
  });
  test('have one date, though another day begins while they are written', async () => {
    const { wrote, machines } = pair();
    let asked = 0;
    const today = (): string => `2026-01-0${++asked}`;
    await runWords(words(LIBRARY, 'svg,raised.svg,dxf'), { ...machines[0], today });
    const texts = [...wrote[0].values()].map((content) => Buffer.from(content as string).toString());
    const days = texts.map((text) => [...new Set(text.match(/2026-01-0\d/g))]);
    expect(days).toEqual([['2026-01-01'], ['2026-01-01'], ['2026-01-01']]);
  });
  test('are begun no more once one cannot be written, whoever finds it, and the reason is told', async () => {
    const { wrote, machines } = pair('.runs.csv');
    const outcomes = await Promise.all(machines.map((machine) => runWords(words(LIBRARY, TABLES), machine)));
    for (const { status, err } of outcomes) {
      expect(status).toBe(2);
      expect(err).toContain('library-lot.runs.csv: cannot be written: the disk is full');
    }
    expect(wrote[0].size + wrote[1].size).toBeLessThan(4);
  });
  test('of what a revision changes are written once by either, and are the bytes that one writes', async () => {
    const later = 'samples/library-pedestals.site.json';
    const given = ['compare', LIBRARY, later, '--changes', '--out', 'out', '--only', 'csv,svg'];
    const { wrote, machines } = pair();
    const [first] = await Promise.all(machines.map((machine) => runWords(given, machine)));
    const named = ['out/library-pedestals.changes.svg', 'out/library-pedestals.changes.csv'];
    expect(first!.out).toContain(`Drawings of the changes:\n${named.join('\n')}\n`);
    expect(wrote.flatMap((files) => [...files.keys()])).toHaveLength(2);
    expect(wrote.map((files) => files.size)).toEqual([1, 1]);
    const single = pair();
    const { crew: _, ...alone } = single.machines[0];
    const { out } = await runWords(given, alone);
    expect(first!.out).toBe(out);
    for (const path of named) expect(wrote[0].get(path) ?? wrote[1].get(path)).toEqual(single.wrote[0].get(path));
  });
  test('of a large lot by two threads of the program are the bytes that one writes', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'crew-'));
    try {
      const only = `${TABLES},raised.svg`;
      const given = ['calc/cli/run.mjs', 'plan', HOSPITAL, '--out', folder, '--only', only];
      const told = execFileSync(process.execPath, given, { encoding: 'utf8' });
      const { machines, wrote } = pair();
      const { crew: _, ...alone } = machines[0];
      const { out } = await runWords(words(HOSPITAL, only), alone);
      const named = (text: string): string[] =>
        text
          .trimEnd()
          .split('\n')
          .map((path) => basename(path));
      expect(named(told)).toEqual(named(out));
      // None is left half written beside its place.
      expect(readdirSync(folder).sort()).toEqual([...named(out)].sort());
      for (const [path, content] of wrote[0])
        expect(readFileSync(join(folder, basename(path))).equals(Buffer.from(content as string))).toBe(true);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});
