import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BUDGET } from '../../../../routing/site/import/imported.ts';
import { readDxf } from '../../../read-dxf.ts';

const sound = readFileSync(new URL('../../../outside/import/site.dxf', import.meta.url), 'utf8');

type Pair = readonly [code: number, value: string | number];
const text = (...pairs: readonly Pair[]): string => pairs.map(([code, value]) => `${code}\n${value}\n`).join('');
const entities = (...pairs: readonly Pair[]): string =>
  text([0, 'SECTION'], [2, 'ENTITIES'], ...pairs, [0, 'ENDSEC'], [0, 'EOF']);
const line = (...at: readonly (string | number)[]): Pair[] => [
  [0, 'LINE'],
  [8, 'A'],
  [10, at[0]!],
  [20, at[1]!],
  [11, at[2]!],
  [21, at[3]!],
];

function check(read: ReturnType<typeof readDxf>): void {
  if (!read.ok) {
    expect(read.fault.place).not.toBe('');
    expect(read.fault.says).not.toBe('');
    return;
  }
  expect(read.value.lines.length).toBeLessThanOrEqual(BUDGET.entities);
  for (const { points } of read.value.lines)
    for (const [x, y] of points) {
      expect(Math.abs(x)).toBeLessThanOrEqual(BUDGET.coordinate);
      expect(Math.abs(y)).toBeLessThanOrEqual(BUDGET.coordinate);
    }
}

describe('a DXF', () => {
  it('that is empty, cut off or something else is refused with the place', () => {
    for (const bad of ['', 'hello', '{"type":"Feature"}', '0\nSECTION\n2\nENTITIES\n', text([0, 'EOF'])]) {
      const read = readDxf(bad);
      expect(read.ok, bad).toBe(false);
    }
    const cut = readDxf(sound.slice(0, sound.length / 2));
    expect(cut).toMatchObject({ ok: false, fault: { says: 'the file ends before its EOF' } });
  });
  it('with a coordinate that is no number, or past all sense, leaves that entity out and counts it', () => {
    const read = readDxf(
      entities(...line(0, 0, 'x', 1), ...line(0, 0, '1e309', 1), ...line(0, 0, 'nan', 2), ...line(0, 0, 3, 4)),
    );
    expect(read).toMatchObject({
      ok: true,
      value: {
        lines: [
          {
            points: [
              [0, 0],
              [3, 4],
            ],
          },
        ],
      },
    });
    expect(read.ok && read.value.skipped.get('LINE')).toBe(3);
  });
  it('keeps layers that are named like the insides of objects', () => {
    const read = readDxf(
      text(
        [0, 'SECTION'],
        [2, 'TABLES'],
        [0, 'LAYER'],
        [2, '__proto__'],
        [62, -7],
        [0, 'ENDSEC'],
        [0, 'SECTION'],
        [2, 'ENTITIES'],
        [0, 'LINE'],
        [8, '__proto__'],
        [10, 0],
        [20, 0],
        [11, 1],
        [21, 1],
        [0, 'LINE'],
        [8, 'constructor'],
        [10, 0],
        [20, 0],
        [11, 1],
        [21, 1],
        [0, 'ENDSEC'],
        [0, 'EOF'],
      ),
    );
    expect(read.ok && read.value.lines.map(({ layer }) => layer)).toEqual(['constructor']);
  });
  it('puts what lies on layer 0 of a block on the layer of its insert', () => {
    const read = readDxf(
      text(
        ...([
          [0, 'SECTION'],
          [2, 'BLOCKS'],
          [0, 'BLOCK'],
          [2, 'B'],
          [10, 1],
          [20, 0],
        ] as Pair[]),
        ...([
          [0, 'LINE'],
          [8, '0'],
          [10, 1],
          [20, 0],
          [11, 2],
          [21, 0],
        ] as Pair[]),
        ...line(1, 0, 1, 1),
        ...([
          [0, 'ENDBLK'],
          [0, 'ENDSEC'],
          [0, 'SECTION'],
          [2, 'ENTITIES'],
        ] as Pair[]),
        ...([
          [0, 'INSERT'],
          [8, 'L'],
          [2, 'B'],
          [10, 5],
          [20, 7],
          [41, 2],
          [42, 3],
          [50, 90],
        ] as Pair[]),
        ...([
          [0, 'ENDSEC'],
          [0, 'EOF'],
        ] as Pair[]),
      ),
    );
    if (!read.ok) throw new Error(read.fault.says);
    expect(read.value.lines.map(({ layer }) => layer)).toEqual(['L', 'A']);
    const [along, across] = read.value.lines.map(({ points }) => points[1]!);
    expect(along![0]).toBeCloseTo(5, 9);
    expect(along![1]).toBeCloseTo(9, 9);
    expect(across![0]).toBeCloseTo(2, 9);
    expect(across![1]).toBeCloseTo(7, 9);
  });
  it('of blocks that hold themselves is refused', () => {
    const insert = (name: string): Pair[] => [
      [0, 'INSERT'],
      [2, name],
      [10, 0],
      [20, 0],
    ];
    const read = readDxf(
      text(
        [0, 'SECTION'],
        [2, 'BLOCKS'],
        [0, 'BLOCK'],
        [2, 'A'],
        ...insert('A'),
        ...line(0, 0, 1, 1),
        [0, 'ENDBLK'],
        [0, 'ENDSEC'],
        [0, 'SECTION'],
        [2, 'ENTITIES'],
        ...insert('A'),
        [0, 'ENDSEC'],
        [0, 'EOF'],
      ),
    );
    expect(read).toMatchObject({ ok: false, fault: { says: 'block "A" lies 12 blocks deep' } });
  });
  it('of blocks that hold a hundred of each other is refused before they are all put in', () => {
    const blocks = Array.from({ length: 8 }, (_, i): Pair[] => [
      [0, 'BLOCK'],
      [2, `B${i}`],
      ...Array.from({ length: 100 }, (): Pair[] => [
        [0, 'INSERT'],
        [2, `B${i + 1}`],
        [10, 0],
        [20, 0],
      ]).flat(),
      [0, 'ENDBLK'],
    ]).flat();
    const read = readDxf(
      text(
        [0, 'SECTION'],
        [2, 'BLOCKS'],
        ...blocks,
        [0, 'ENDSEC'],
        [0, 'SECTION'],
        [2, 'ENTITIES'],
        [0, 'INSERT'],
        [2, 'B0'],
        [10, 0],
        [20, 0],
        [0, 'ENDSEC'],
        [0, 'EOF'],
      ),
    );
    expect(read).toMatchObject({ ok: false, fault: { says: 'is past 300,000 entities, blocks expanded' } });
  });
  it('of a block put in a billion times is not put in', () => {
    const read = readDxf(
      text(
        [0, 'SECTION'],
        [2, 'BLOCKS'],
        [0, 'BLOCK'],
        [2, 'A'],
        [0, 'ENDBLK'],
        [0, 'ENDSEC'],
        [0, 'SECTION'],
        [2, 'ENTITIES'],
        [0, 'INSERT'],
        [2, 'A'],
        [10, 0],
        [20, 0],
        [70, 30000],
        [71, 30000],
        ...line(0, 0, 1, 1),
        [0, 'ENDSEC'],
        [0, 'EOF'],
      ),
    );
    expect(read.ok && read.value.skipped.get('INSERT')).toBe(1);
  });
  it('whose polyline has no end, or claims a billion vertices, is read to its end', () => {
    check(
      readDxf(
        entities(
          [0, 'POLYLINE'],
          [8, '0'],
          [0, 'VERTEX'],
          [10, 0],
          [20, 0],
          [0, 'VERTEX'],
          [10, 1],
          [20, 0],
          ...line(0, 0, 1, 1),
        ),
      ),
    );
    check(readDxf(entities([0, 'LWPOLYLINE'], [90, 1e9], [10, 0], [20, 0], [10, 5], [20, 5], [70, 1])));
  });

  it('with any of its lines changed, gone or doubled is read or refused, never more', () => {
    const lines = sound.split(/\r?\n/);
    const spoiled = fc.oneof(
      fc.constantFrom(
        '',
        '0',
        '-1',
        '1e400',
        'NaN',
        'SECTION',
        'ENDSEC',
        'INSERT',
        'BLOCK',
        'POLYLINE',
        'SPLINE',
        '999999999',
      ),
      fc.string(),
    );
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(lines.length - 1), fc.constantFrom('set', 'cut', 'twice'), spoiled), {
          minLength: 1,
          maxLength: 6,
        }),
        (changes) => {
          const now = [...lines];
          for (const [at, how, value] of changes) {
            if (how === 'set') now[at] = value;
            else if (how === 'cut') now.splice(at, 1 + (value.length % 3));
            else now.splice(at, 0, ...now.slice(at, at + 40));
          }
          check(readDxf(now.join('\n')));
        },
      ),
      { numRuns: 300 },
    );
  });
  it('made of any pairs of codes and values is read or refused, never more', () => {
    const kinds = [
      'LINE',
      'ARC',
      'CIRCLE',
      'ELLIPSE',
      'LWPOLYLINE',
      'POLYLINE',
      'VERTEX',
      'SEQEND',
      'SPLINE',
      'SOLID',
      'INSERT',
      'DIMENSION',
      'TEXT',
    ];
    const number = fc.oneof(
      fc.double().map(String),
      fc.integer({ min: -9, max: 9 }).map(String),
      fc.string({ maxLength: 4 }),
    );
    const pair = fc.oneof(
      fc.tuple(fc.constant(0), fc.constantFrom(...kinds)),
      fc.tuple(fc.constantFrom(2, 8, 10, 11, 12, 20, 21, 22, 40, 41, 42, 50, 51, 67, 70, 71, 210, 220, 230), number),
    );
    fc.assert(
      fc.property(fc.array(pair, { maxLength: 80 }), (pairs) => check(readDxf(entities(...pairs)))),
      { numRuns: 500 },
    );
  });
});
