import { describe, expect, test } from 'vitest';
import * as calc from '../../calc/library/calc.ts';
import { docstrings, examplesOf } from './library-examples.ts';

const FUNCTIONS = Object.entries(calc).flatMap(([name, what]) => (typeof what === 'function' ? [name] : []));
const DOCSTRINGS = docstrings('calc');

const run = (expression: string): unknown =>
  new Function(...Object.keys(calc), `return (${expression});`)(...Object.values(calc));

/** Each number of `expected` as it is written, to its last digit; everything else as it is. */
function told(expected: string): unknown {
  const rounded = expected.replaceAll(
    /(?<![\w.'])-?[\d_]*\.?\d+(?![\w'])/g,
    (number) => `to(${number}, ${(number.split('.')[1] ?? '').length})`,
  );
  return new Function('to', `return (${rounded});`)((value: number, digits: number) => expect.closeTo(value, digits));
}

test('the library has functions, each with an example', () => {
  expect(FUNCTIONS).toEqual(expect.arrayContaining(['ampacity', 'voltageDrop', 'cut', 'tablesFor']));
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
