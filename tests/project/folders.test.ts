import { readFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { sources } from './sources.ts';

/** As many files a reader still takes in at a glance; what holds more is two subjects, and each has a room of its own. */
const MOST = 22;

/** Folders of tests that are one subject each, with as many files as they have: a test that leaves makes the number less. */
const LARGER: Readonly<Record<string, number>> = {
  // Every file opens the page: what differs is only what is done in it.
  'tests/browser': 66,
};

const ROOT = resolve(import.meta.dirname, '../..');

const counts = new Map<string, number>();
for (const path of ['routing', 'calc', 'web', 'tests'].flatMap(sources))
  counts.set(dirname(path), (counts.get(dirname(path)) ?? 0) + 1);

test('no folder holds more files than a reader takes in', () => {
  expect(counts.size).toBeGreaterThan(150);
  expect(
    [...counts].filter(([folder, count]) => count > (LARGER[folder] ?? MOST)).map((entry) => entry.join(': ')),
  ).toEqual([]);
});

test('folders that may hold more still do', () => {
  expect(Object.keys(LARGER).filter((folder) => (counts.get(folder) ?? 0) <= MOST)).toEqual([]);
});

const passesOn = (text: string): boolean =>
  text
    .replace(/\/\*.*?\*\//gs, '')
    .replace(/^import [^;]*;/gm, '')
    .replace(/^export (?:\*|(?:type )?\{[^}]*\}) from '[^']*';/gm, '')
    .trim() === '';

test('no file only passes on what others export', () => {
  expect(passesOn("/** Look-ups. */\nexport * from './a.ts';\nexport { b } from './b.ts';\n")).toBe(true);
  expect(passesOn("export { b } from './b.ts';\nexport const a = 1;\n")).toBe(false);
  // What the package hands out does so by its nature; anything else is imported from where it stands.
  const passing = ['routing', 'calc', 'web'].flatMap(sources).filter((path) => !path.startsWith('calc/library/'));
  expect(passing.filter((path) => passesOn(readFileSync(resolve(ROOT, path), 'utf8')))).toEqual([]);
});
