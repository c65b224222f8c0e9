import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { sources } from './sources.ts';

const ROOT = resolve(import.meta.dirname, '../..');
const MOST = 250;

/** Files of the rooms that may be longer, and why. */
const LONGER: Readonly<Record<string, string>> = {
  'calc/tables/nec-2023/supports.ts': 'a table of the code, a row to a line',
  'routing/site/rules/rule-notes-circuits.ts': 'a table of rules, a row to a line',
};

test(`no file of the rooms is longer than ${MOST} lines, but for those that say why`, () => {
  const long = ['routing', 'calc', 'web']
    .flatMap(sources)
    .filter((path) => readFileSync(resolve(ROOT, path), 'utf8').split('\n').length - 1 > MOST);
  expect(long.toSorted()).toEqual(Object.keys(LONGER).toSorted());
});
