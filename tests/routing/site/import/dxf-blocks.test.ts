import { describe, expect, it } from 'vitest';
import { readDxf } from '../../../read-dxf.ts';
import { line, type Pair, text } from './dxf-parts.ts';

describe('a DXF', () => {
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
});
