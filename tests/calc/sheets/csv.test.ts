import fc from 'fast-check';
import papaparse from 'papaparse';
import { expect, test } from 'vitest';
import { csv } from '../../../calc/sheets/csv.ts';

const body = (text: string): string => text.slice(1);

test('a sheet begins with the mark of UTF-8 and ends each line with CR LF (RFC 4180, 2.1)', () => {
  expect(csv([['a', 1]])).toBe('\ufeffa,1\r\n');
});

// The payloads of OWASP's "CSV Injection" page, and those its prose names (tab, carriage return, full-width signs).
test.each([
  '=1+1',
  '=HYPERLINK("http://example.test","click")',
  '+1+1',
  '-1+1',
  '@SUM(1+1)',
  '\t=1+1',
  '\r=1+1',
  '\n=1+1',
  '  =1+1',
  '\uff1d1+1',
  '\uff0b1',
  '\uff0d1',
  '\uff20SUM(1)',
  '\0=1',
])('text that a spreadsheet would run, %j, is held back by an apostrophe', (payload) => {
  const [row] = papaparse.parse<string[]>(body(csv([[payload]])), { delimiter: ',', newline: '\r\n' }).data;
  for (const line of row![0]!.split(/[\n\r]/))
    expect(line === '' || line.startsWith("'") || !/^[\s\0]*[=+\-@\uff1d\uff0b\uff0d\uff20]/.test(line)).toBe(true);
  expect(row![0]).toContain("'");
});

test('each line of a cell of several lines is held back', () => {
  expect(body(csv([['fine\n=1+1\nfine']]))).toBe(`"fine\n'=1+1\nfine"\r\n`);
});

test('numbers stay numbers, a negative one too, and what is not finite is left empty', () => {
  expect(body(csv([[-5, 0.1, Number.NaN, Number.POSITIVE_INFINITY, null, true]]))).toBe('-5,0.1,,,,yes\r\n');
});

test('quotes, commas and lines come back as they were through a reader of CSV', () => {
  const plain = fc
    .string()
    .filter(
      (text) =>
        !/[\0\ufeff]/.test(text) &&
        !/(^|[\r\n\u2028\u2029\v\f])\s*[=+\-@\uff1d\uff0b\uff0d\uff20]|^[\t\r\n]/.test(text),
    );
  fc.assert(
    fc.property(fc.array(fc.array(plain, { minLength: 2, maxLength: 5 }), { minLength: 1, maxLength: 6 }), (rows) => {
      const read = papaparse.parse<string[]>(body(csv(rows)), {
        delimiter: ',',
        newline: '\r\n',
        skipEmptyLines: false,
      }).data;
      expect(read.slice(0, rows.length)).toEqual(rows);
    }),
  );
});
