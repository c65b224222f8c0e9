import { describe, expect, it } from 'vitest';
import { readGeojson } from '../../../../routing/site/import/geojson.ts';
import { BUDGET, type Imported, type LineDrawing } from '../../../../routing/site/import/imported.ts';
import { placeInRdf } from '../../../../routing/site/place/stated-place.ts';
import { xmlRoot } from '../../../../web/underlay/picked/xml-root.ts';
import { statedScale } from '../../../../web/underlay/reading/stated-scale.ts';
import { sizedSvg, svgLeftOut, svgSize, viewBoxOf } from '../../../../web/underlay/reading/svg-size.ts';
import { readDxf } from '../../../read-dxf.ts';

type Pair = readonly [code: number, value: string | number];
const text = (pairs: readonly Pair[]): string => pairs.map(([code, value]) => `${code}\n${value}\n`).join('');
const section = (name: string, inside: readonly Pair[]): string => `0\nSECTION\n2\n${name}\n${text(inside)}0\nENDSEC\n`;
const file = (blocks: readonly Pair[], entities: readonly Pair[]): string =>
  `${section('BLOCKS', blocks)}${section('ENTITIES', entities)}0\nEOF\n`;
const insert = (name: string, ...more: readonly Pair[]): Pair[] => [
  [0, 'INSERT'],
  [8, '0'],
  [2, name],
  [10, 0],
  [20, 0],
  ...more,
];
const line: readonly Pair[] = [
  [0, 'LINE'],
  [8, '0'],
  [10, 0],
  [20, 0],
  [11, 1],
  [21, 1],
];
const block = (name: string, ...inside: readonly (readonly Pair[])[]): Pair[] => [
  [0, 'BLOCK'],
  [2, name],
  [10, 0],
  [20, 0],
  ...inside.flat(),
  [0, 'ENDBLK'],
];
const times = <T>(count: number, make: (i: number) => readonly T[]): T[] =>
  Array.from({ length: count }, (_, i) => make(i)).flat();

/** Within every budget, or refused in words. */
function bounded(read: Imported<LineDrawing>): void {
  if (!read.ok) {
    expect(read.fault.says).not.toBe('');
    return;
  }
  const { lines, words } = read.value;
  expect(lines.length).toBeLessThanOrEqual(BUDGET.entities);
  expect(words.length).toBeLessThanOrEqual(BUDGET.words);
  expect(lines.reduce((sum, { points }) => sum + points.length, 0)).toBeLessThanOrEqual(BUDGET.points);
}

// None of these is timed: what is not bounded runs on until the test is ended.
describe('a DXF made to do harm is bounded', () => {
  it.each<readonly [string, string, string | null]>([
    ['a block in itself', file(block('A', line, insert('A')), insert('A')), 'blocks deep'],
    [
      'blocks in a circle',
      file([...block('A', insert('B')), ...block('B', insert('C')), ...block('C', line, insert('A'))], insert('A')),
      'blocks deep',
    ],
    [
      'ten of ten of ten, ten times',
      file(
        times(10, (i) => block(`B${i}`, ...times(10, () => [i === 9 ? line : insert(`B${i + 1}`)]))),
        insert('B0'),
      ),
      'is past 300,000 entities',
    ],
    [
      'a deep row of blocks',
      file(
        times(5000, (i) => block(`B${i}`, insert(`B${i + 1}`))),
        insert('B0'),
      ),
      'blocks deep',
    ],
    ['an array of a billion', file(block('A', line), [...insert('A', [70, 32000], [71, 32000]), ...line]), null],
    [
      'arrays of arrays',
      file([...block('A', line), ...block('B', insert('A', [70, 500], [71, 500]))], insert('B', [70, 500], [71, 500])),
      'is past 300,000 entities',
    ],
    [
      'a curve of thousands of knots',
      file(
        [],
        [
          [0, 'SPLINE'],
          [71, 3],
          [72, 1e9],
          [73, 1e9],
          ...times(20_000, (i): Pair[] => [[40, i]]),
          ...times(19_996, (i): Pair[] => [
            [10, i],
            [20, i % 7],
          ]),
          ...line,
        ],
      ),
      null,
    ],
    [
      'a curve of a degree of a billion',
      file(
        [],
        [
          [0, 'SPLINE'],
          [71, 1e9],
          ...times(50, (i): Pair[] => [
            [40, i],
            [10, i],
            [20, i],
          ]),
          ...line,
        ],
      ),
      null,
    ],
    [
      'circles as large as the earth, by the thousand',
      file(
        [],
        times(20_000, () => [
          [0, 'CIRCLE'],
          [10, 0],
          [20, 0],
          [40, 1e11],
        ]),
      ),
      'is past 2,000,000 points',
    ],
    [
      'a hatch that claims a billion edges',
      file([], [[0, 'HATCH'], [91, 1e9], [92, 1], [93, 1e9], [72, 1], [10, 0], [20, 0], [11, 1], [21, 1], ...line]),
      null,
    ],
    [
      'a mesh that claims a billion faces',
      file(
        [],
        [[0, 'MESH'], [92, 1e9], [10, 0], [20, 0], [30, 0], [93, 1e9], [90, 4], [90, 0], [90, 1], [90, 1e9], ...line],
      ),
      null,
    ],
    [
      'a leader within leaders',
      file(
        [],
        [
          [0, 'MULTILEADER'],
          ...times(50_000, (): Pair[] => [
            [300, 'CONTEXT_DATA{'],
            [302, 'LEADER{'],
          ]),
          ...line,
        ],
      ),
      null,
    ],
    [
      'notes of notes',
      file(
        [],
        times(4000, () => [
          [0, 'MTEXT'],
          [10, 0],
          [20, 0],
          [40, 1],
          [41, 0.001],
          [1, '\\P{\\S'.repeat(2000)],
        ]),
      ),
      'lines of words',
    ],
    [
      'a line type of nothing but dots',
      section('TABLES', [[0, 'LTYPE'], [2, 'DOTS'], ...times(10_000, (): Pair[] => [[49, 1e-12]])]) +
        file([], [...line, [6, 'DOTS']]),
      null,
    ],
    [
      'names that are the names of objects',
      file(block('__proto__', line), [...insert('__proto__'), ...insert('constructor')]),
      null,
    ],
  ])('%s', (_, hostile, says) => {
    const read = readDxf(hostile);
    bounded(read);
    if (says !== null) expect(read.ok ? '' : read.fault.says).toContain(says);
    else expect(read.ok).toBe(true);
  });
});

describe('a GeoJSON made to do harm is bounded', () => {
  const point = '{"type":"Feature","properties":null,"geometry":{"type":"Point","coordinates":[1,2]}}';
  it.each([
    ['brackets without end', `{"type":"Polygon","coordinates":${'['.repeat(200_000)}${']'.repeat(200_000)}}`],
    ['brackets that are never closed', '['.repeat(1_000_000)],
    [
      'properties within properties',
      `{"type":"Feature","properties":${'{"a":'.repeat(50_000)}1${'}'.repeat(50_000)},"geometry":null}`,
    ],
    [
      'names that are the names of objects',
      '{"type":"FeatureCollection","features":[{"__proto__":{"type":"Feature"},"constructor":1}]}',
    ],
    [
      'collections within collections',
      `${'{"type":"GeometryCollection","geometries":['.repeat(5000)}${']}'.repeat(5000)}`,
    ],
    ['features by the million', `{"type":"FeatureCollection","features":[${`${point},`.repeat(300_001)}${point}]}`],
    ['numbers past all numbers', '{"type":"Point","coordinates":[1e999,-1e999]}'],
  ])('%s', (_, hostile) => {
    const read = readGeojson(hostile);
    if (read.ok) expect(read.value.features.length).toBeLessThanOrEqual(BUDGET.entities);
    else expect(read.fault.says).not.toBe('');
  });
});

describe('an SVG or a sheet made to do harm is looked at once', () => {
  const many = 200_000;
  it.each([
    ['roots that never end', '<svg "'.repeat(many)],
    ['quotes that never end', `<svg ${'a="'.repeat(many)}`],
    ['pictures that never end', `<svg>${'<image '.repeat(many)}`],
    ['a picture of blanks', `<svg><image ${' '.repeat(many)}`],
    ['pictures without a name', `<svg>${'<image href = '.repeat(many)}`],
    ['metadata that never end', `<svg width="1" height="1">${'<metadata>'.repeat(many)}`],
    ['prefixes of prefixes', `<svg>${'<a:'.repeat(many)}svg`],
    ['places that say nothing', `<svg width="1" height="1">${'"urn:x-overrow:place"'.repeat(many / 10)}`],
    ['blanks in its root', `<svg ${' width'.repeat(many)}${' '.repeat(many)}>`],
  ])('%s', (_, hostile) => {
    expect(svgSize(hostile)?.width ?? 1).toBeGreaterThan(0);
    expect(viewBoxOf(hostile)).toBeNull();
    svgLeftOut(hostile);
    expect(sizedSvg(hostile, 2, 3).length).toBeGreaterThanOrEqual(hostile.length);
    expect(placeInRdf(hostile)).toBeNull();
    xmlRoot(hostile);
  });
  it.each([
    ['feet', `1"${' = '.repeat(many)}20'`],
    ['inches', '1 '.repeat(many)],
    ['blanks', `1" =${' '.repeat(many)}`],
    ['ratios', 'scale '.repeat(many)],
  ])('words of %s', (_, hostile) => expect(statedScale(hostile)).toBeNull());
});
