import { describe, expect, it } from 'vitest';
import { readDxf } from '../../../read-dxf.ts';
import { entities, line, type Pair, sound, text } from './dxf-parts.ts';

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
});
