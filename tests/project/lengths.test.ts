import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { functionsIn } from './functions-in.ts';
import { sources } from './sources.ts';

const ROOT = resolve(import.meta.dirname, '../..');
const ROOMS = ['routing', 'calc', 'web'] as const;
const MOST = 250;
const MOST_OF_A_FUNCTION = 120;

/** Files that may be longer, and why. */
const LONGER: Readonly<Record<string, string>> = {
  'calc/tables/nec-2023/supports.ts': 'a table of the code, a row to a line',
  'routing/site/rules/rule-notes-circuits.ts': 'a table of rules, a row to a line',
  'tests/bench/samples/fleet-yard.ts': 'a lot, an element after the other',
  'tests/web/panels/field-pairs.ts': 'a table of fields, two values of each',
};

/** Functions that may be longer, and why. */
const LONGER_FUNCTIONS: Readonly<Record<string, string>> = {
  'proposeRaceways routing/propose/raceways/propose-raceways.ts': 'one proposal, a step after the other',
  'fleetYard tests/bench/samples/fleet-yard.ts': 'a lot, an element after the other',
  'libraryLot tests/bench/samples/library-lot.ts': 'a lot, an element after the other',
  'look tests/browser/screen-faults.ts': 'goes to the browser as one text',
};

const textOf = (path: string): string => readFileSync(resolve(ROOT, path), 'utf8');
const linesOf = (path: string): number => textOf(path).split('\n').length - 1;

test(`no file of the rooms or of the tests is longer than ${MOST} lines, but for those that say why`, () => {
  const long = [...ROOMS, 'tests'].flatMap(sources).filter((path) => linesOf(path) > MOST);
  expect(long.toSorted()).toEqual(Object.keys(LONGER).toSorted());
});

test(`no function is longer than ${MOST_OF_A_FUNCTION} lines, but for those that say why; a list of tests is none`, () => {
  const isListOfTests = (path: string, name: string): boolean => path.startsWith('tests/') && name.startsWith('line ');
  const long = new Set<string>();
  const all = new Set<string>();
  // Nothing within a file is longer than the file.
  const some = [...ROOMS, 'tests'].flatMap(sources).filter((path) => linesOf(path) > MOST_OF_A_FUNCTION);
  for (const path of some)
    for (const { name, lines } of functionsIn(path, textOf(path))) {
      all.add(`${name} ${path}`);
      if (lines > MOST_OF_A_FUNCTION && !isListOfTests(path, name)) long.add(`${name} ${path}`);
    }
  expect(all.size).toBeGreaterThan(1000);
  expect([...long].filter((each) => !(each in LONGER_FUNCTIONS))).toEqual([]);
  expect(Object.keys(LONGER_FUNCTIONS).filter((each) => !all.has(each))).toEqual([]);
});

test('the lengths of functions are told by name, of those within others too', () => {
  const text = [
    'export function whole(a: number): number {',
    '  const within = (b: number) => {',
    '    return b;',
    '  };',
    '  return within(a);',
    '}',
    'const held = { method() { return <p>{1}</p>; } };',
    'void held; [1].map((one) =>',
    '  one);',
  ].join('\n');
  expect(functionsIn('some.tsx', text)).toEqual([
    { name: 'whole', lines: 6 },
    { name: 'within', lines: 3 },
    { name: 'method', lines: 1 },
    { name: 'line 8', lines: 2 },
  ]);
});
