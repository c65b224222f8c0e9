import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readSite } from '../../../../routing/site/file/read.ts';
import { writeSite } from '../../../../routing/site/file/write.ts';
import type { SiteFile } from '../../../../routing/site/site.ts';
import { everyField, everyFieldText } from './every-field.ts';

function read(text: string): SiteFile {
  const result = readSite(text);
  if (!result.ok) throw new Error(JSON.stringify(result.errors));
  return result.file;
}

/** The text without the white space that stands outside its strings. */
const tight = (text: string): string =>
  text.replace(/("(?:[^"\\]|\\.)*")|\s+/g, (_, quoted: string | undefined) => quoted ?? '');

const MINIMAL: SiteFile = { format: 'overrow/site', version: 1, units: 'ft', name: 'Bare' };

describe('writing a site file', () => {
  it('gives a text that reads back the same, keys in the same order', () => {
    const text = writeSite(everyField() as unknown as SiteFile);
    expect(JSON.parse(text)).toStrictEqual(everyField());
    expect(JSON.stringify(JSON.parse(text))).toBe(JSON.stringify(everyField()));
  });

  it('changes nothing in a text that was read but white space', () => {
    expect(tight(writeSite(read(everyFieldText)))).toBe(tight(everyFieldText));
    const packed = tight(everyFieldText);
    expect(tight(writeSite(read(packed)))).toBe(packed);
    expect(writeSite(read(packed))).toBe(writeSite(read(everyFieldText)));
  });

  it('keeps numbers, texts and the order of names as another program spelled them', () => {
    const inlets = '[{"name":"n","along":0.50,"side":"left","height":2.5e0,"share":1.0}]';
    const car = (length: string) => `{"length":${length},"width":6.0,"height":5,"inlets":${inlets}}`;
    const text =
      '{"version":1.0,"format":"overrow\\/site","un\\u0069ts":"ft","name":"Caf\\u00e9 \\ud83d\\ude97",' +
      `"vehicles":{"b":${car('15.00')},"10":${car('16')},"9":${car('17')}},` +
      '"pullpoints":[{"id":"Q1","at":[-0,-0.0,0.1000000000000000055511151231257827]}]}';
    expect(tight(writeSite(read(text)))).toBe(text);
  });

  it('spells an edited part anew and the rest as it was', () => {
    const file = read(
      '{"format":"overrow/site","version":1,"units":"ft","name":"n","pullpoints":[{"id":"Q1","at":[1.0,2.0,3.0]},{"id":"Q2","at":[4.0,5.0,6.0]}]}',
    );
    const [first, second] = file.pullpoints ?? [];
    if (first === undefined || second === undefined) throw new Error('two pull points were read');
    const edited: SiteFile = { ...file, pullpoints: [first, { ...second, at: [7, 5, 6] }] };
    const text = writeSite(edited);
    expect(text).toContain('{ "id": "Q1", "at": [1.0, 2.0, 3.0] }');
    expect(text).toContain('{ "id": "Q2", "at": [7, 5, 6] }');
  });

  it('puts an element a line where it fits, and a point a line where it does not', () => {
    const path = Array.from({ length: 12 }, (_, i): [number, number, number] => [i * 10.125, 0.0625, 10.5]);
    const file: SiteFile = {
      ...MINIMAL,
      stalls: [{ id: 'S1', at: [0, 18], width: 9, depth: 18, heading: 270 }],
      columns: [],
      raceways: [{ id: 'R1', path, method: 'EMT', place: 'overhead' }],
      rules: {},
    };
    const lines = writeSite(file).split('\n');
    expect(lines.slice(5, 10)).toEqual([
      '  "stalls": [',
      '    { "id": "S1", "at": [0, 18], "width": 9, "depth": 18, "heading": 270 }',
      '  ],',
      '  "columns": [],',
      '  "raceways": [',
    ]);
    expect(lines).toContain('        [10.125, 0.0625, 10.5],');
    expect(lines.slice(-4)).toEqual(['  ],', '  "rules": {}', '}', '']);
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(120);
  });

  it('holds any text and any finite number exactly', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'binary' }),
        fc.double({ noNaN: true, noDefaultInfinity: true }),
        (name, bearing) => {
          const file: SiteFile = { ...MINIMAL, name, georef: { lon: -0, lat: 0, bearing } };
          expect(JSON.parse(writeSite(file))).toStrictEqual(file);
        },
      ),
      { numRuns: 500 },
    );
  });

  it('throws rather than lose a value that JSON cannot hold', () => {
    for (const bearing of [Number.NaN, Number.POSITIVE_INFINITY, undefined as unknown as number]) {
      expect(() => writeSite({ ...MINIMAL, georef: { lon: 0, lat: 0, bearing } })).toThrow(RangeError);
    }
  });
});
