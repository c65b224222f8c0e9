import { describe, expect, test } from 'vitest';
import * as calc from '../../calc/library/calc.ts';
import * as overrow from '../../calc/library/overrow.ts';
import { docstrings, examplesOf } from './library-examples.ts';

/** All that others import. */
const LIBRARY = { ...calc, ...overrow };
const FUNCTIONS = Object.entries(LIBRARY).flatMap(([name, what]) => (typeof what === 'function' ? [name] : []));
/** The library's own names come last: other functions are called plan, too. */
const DOCSTRINGS = new Map(['routing', 'calc', 'calc/library'].flatMap((folder) => [...docstrings(folder)]));

const run = (expression: string): unknown =>
  new Function(...Object.keys(LIBRARY), `return (${expression});`)(...Object.values(LIBRARY));

/** Each number of `expected` as it is written, to its last digit; everything else as it is. */
function told(expected: string): unknown {
  const rounded = expected.replaceAll(
    /(?<![\w.'])-?[\d_]*\.?\d+(?![\w'])/g,
    (number) => `to(${number}, ${(number.split('.')[1] ?? '').length})`,
  );
  return new Function('to', `return (${rounded});`)((value: number, digits: number) => expect.closeTo(value, digits));
}

test('the library has functions, each with an example', () => {
  expect(FUNCTIONS).toEqual(
    expect.arrayContaining(['ampacity', 'voltageDrop', 'cut', 'tablesFor', 'plan', 'readSite']),
  );
  expect(FUNCTIONS.filter((name) => examplesOf(name, DOCSTRINGS.get(name) ?? '').length === 0)).toEqual([]);
});

describe.each(FUNCTIONS)('the example of %s', (name) => {
  test.each(examplesOf(name, DOCSTRINGS.get(name) ?? ''))('gives $expected', ({ expression, expected, source }) => {
    expect(expression).toContain(`${name}(`);
    expect(source).toMatch(/^(NEC 2023 |Hand-worked|By definition|The edition)/);
    expect(run(expression)).toEqual(told(expected));
  });
});

test('a wrong figure, a missing value and a rounded one are told apart', () => {
  const [wrong, rounded] = examplesOf('f', '@example\n// Hand-worked\n1 + 1 // 3\n2 / 3 // 0.667\n');
  expect(run(wrong!.expression)).not.toEqual(told(wrong!.expected));
  expect(run(rounded!.expression)).toEqual(told(rounded!.expected));
  expect(() => examplesOf('f', '@example\n1 + 1\n')).toThrow('without its value');
});
