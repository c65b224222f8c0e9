import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { readJson } from '../../../../routing/site/file/json-text.ts';
import { plainJson } from '../../../../routing/site/file/plain-json.ts';
import { spellingOf } from '../../../../routing/site/file/spelling.ts';
import { everyFieldText } from './every-field.ts';

const byJsonParse = (text: string): { value: unknown } | null => {
  try {
    return { value: JSON.parse(text) as unknown };
  } catch {
    return null;
  }
};

/** Reading agrees with JSON.parse on what is JSON and on its value; the last of repeated fields counts in both. */
function expectAgreement(text: string): void {
  const expected = byJsonParse(text);
  const read = readJson(text);
  expect(read.ok, text).toBe(expected !== null);
  if (read.ok && expected !== null) expect(read.value).toStrictEqual(expected.value);
  // The reader that listens for all that a text says besides: it hears the same, and nothing more of a plain text.
  const listened = readJson(text, () => undefined);
  expect(listened, text).toStrictEqual(read);
  if (plainJson(text, 64) === null || !listened.ok) return;
  expect(listened.repeated).toEqual([]);
  expect(spellingsIn(listened.value)).toEqual([]);
}

const spellingsIn = (value: unknown): unknown[] =>
  typeof value !== 'object' || value === null
    ? []
    : [spellingOf(value) ?? [], ...Object.values(value).map(spellingsIn)].flat();

describe('reading JSON agrees with JSON.parse', () => {
  it('on any value, however it is laid out', () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 6 }), fc.constantFrom(undefined, 1, '\t'), (value, indent) => {
        expectAgreement(JSON.stringify(value, null, indent));
      }),
      { numRuns: 500 },
    );
  });

  it('on any string of the characters that JSON is made of', () => {
    const piece = fc.constantFrom(
      ...'[]{}:,"\\/-+.eE0123456789tfnu \n\r\t',
      'true',
      'false',
      'null',
      '\\u00e9',
      '"a"',
      '\u00e9',
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 12 }), (pieces) => expectAgreement(pieces.join(''))),
      { numRuns: 5000 },
    );
  });

  it('on a site file with characters changed, dropped and put in', () => {
    const at = fc.nat(everyFieldText.length);
    fc.assert(
      fc.property(at, fc.nat(3), fc.string({ unit: 'binary', maxLength: 3 }), (start, drop, put) => {
        expectAgreement(everyFieldText.slice(0, start) + put + everyFieldText.slice(start + drop));
      }),
      { numRuns: 500 },
    );
  });

  test.each([
    '-0',
    '1e999',
    '01',
    '1.',
    '.5',
    '+1',
    '0x10',
    'NaN',
    '"\u2028"',
    '"\\ud800"',
    '"\\u12"',
    '"\\x"',
    '"a\tb"',
    '\u00a01',
    '[1,]',
    '{"a":1,}',
    "{'a':1}",
    '// no\n1',
    '1 2',
    '{"a":1 "b":2}',
    '{"__proto__":{"a":1}}',
    '',
  ])('on %j', expectAgreement);
});

describe('what reading JSON tells beyond JSON.parse', () => {
  test.each([
    ['{"a": 1,\n "b": tru}', 'line 2, column 7: expected a value, got "t"'],
    ['[1\r\n 2]', 'line 2, column 2: expected "," or "]", got "2"'],
    ['[1,\r2,]', 'line 2, column 3: a "," before "]"'],
    ['{a: 1}', 'line 1, column 2: expected a field name in quotes, got "a"'],
    ['{"a": "b', 'line 1, column 7: this text has no closing quote'],
    ['["a\nb"]', 'line 1, column 4: a line break, a tab or another control character inside a text'],
    ['["\\q"]', 'line 1, column 3: an escape that JSON does not know'],
    ['[1] x', 'line 1, column 5: expected the end of the text, got "x"'],
    ['  ', 'line 1, column 3: the text is empty'],
    ['[1', 'line 1, column 3: expected "," or "]", the text ends'],
    ['['.repeat(65), 'line 1, column 65: nested deeper than 64 levels'],
  ])('%j: %s', (text, says) => {
    const read = readJson(text);
    expect(!read.ok && read.says).toBe(`not JSON: ${says}`);
  });

  it('every field that stands twice in an object, with its place, and no field that stands twice in two', () => {
    const read = readJson('{"a": [{"b": 1, "b": 2}, {"b": 1}],\n "c": 1, "c": {"c": 2}, "c": 3}');
    expect(read.ok && read.repeated).toEqual([
      { path: ['a', 0, 'b'], says: 'the field stands twice in one object, again at line 1, column 17' },
      { path: ['c'], says: 'the field stands twice in one object, again at line 2, column 10' },
      { path: ['c'], says: 'the field stands twice in one object, again at line 2, column 25' },
    ]);
  });
});

describe('a text that says no more than its value', () => {
  test.each([
    '{"a":[1,2.5,"x \\" { [ \\\\",null],"b":{}}',
    ' { "a" : [ 1 , -2e-7 ]\n}\r\n\t',
    '"a"',
    '[]',
    '{"0":1,"1":2}',
  ])('%j is read as it is', (text) => expect(plainJson(text, 64)).toEqual({ value: JSON.parse(text) }));
  test.each([
    ['a field that stands twice', '{"a":1,"a":1}'],
    ['keys in an order that the value loses', '{"1":1,"0":1}'],
    ['a number with a zero too many', '[1.0]'],
    ['a number past all numbers', '[1e999]'],
    ['less than nothing', '[-0]'],
    ['an escape that is not needed', '["\\u0041"]'],
    ['half a pair of surrogates', '["\ud800"]'],
    ['a byte order mark', '\ufeff[]'],
    ['no JSON', '[1,]'],
    ['three levels', '[[[]]]'],
  ])('not one with %s', (_, text) => expect(plainJson(text, 2)).toBeNull());
});
