import { describe, expect, it } from 'vitest';
import { drawn } from './as-sent.ts';
import { block, line, type Pair } from './dxf-text.ts';

const paragraph = (words: string, ...more: readonly Pair[]): readonly Pair[] => [
  [0, 'MTEXT'],
  [8, 'N'],
  [10, 1658],
  [20, 2718],
  [40, 2],
  [1, words],
  ...more,
];

describe('words', () => {
  it('of a record end where an object is embedded in it: its point is no direction', () => {
    const { words } = drawn({
      entities: paragraph('a note', [101, 'Embedded Object'], [70, 1], [11, 1658], [21, 2718]),
    });
    expect(words).toMatchObject([{ words: 'a note', turn: 0, at: [1658, 2716] }]);
  });
  it('of a paragraph are broken at its width, and every line stands within it', () => {
    const long = 'all striping to be removed by grinding before the new layout is painted in white';
    const { words } = drawn({ entities: paragraph(long, [41, 40]) });
    expect(words.length).toBeGreaterThan(2);
    expect(words.map((each) => each.words).join(' ')).toBe(long);
    // Heights of 2 in 40: at most some 27 letters of three quarters of a height each.
    for (const each of words) expect(each).toMatchObject({ width: 40, anchor: 'left' });
    expect(Math.max(...words.map((each) => each.words.length))).toBeLessThanOrEqual(30);
    expect(words[1]!.at[1] - words[0]!.at[1]).toBeCloseTo((-2 * 5) / 3, 9);
  });
  it('of a paragraph in columns stand beside one another', () => {
    const rows = Array.from({ length: 6 }, (_, i) => `row ${i + 1}`).join('\\P');
    const { words } = drawn({
      // Two columns of 30, 5 apart; 3 lines of 10/3 fit into a height of 9.
      entities: paragraph(
        rows,
        [41, 30],
        [101, 'Embedded Object'],
        [70, 1],
        [41, 9],
        [42, 65],
        [71, 1],
        [72, 2],
        [44, 30],
        [45, 5],
      ),
    });
    expect(words.map((each) => [each.words, each.at[0] - 1658, Math.round(each.at[1] - 2718)])).toEqual([
      ['row 1', 0, -2],
      ['row 2', 0, -5],
      ['row 3', 0, -9],
      ['row 4', 35, -2],
      ['row 5', 35, -5],
      ['row 6', 35, -9],
    ]);
  });
  it('know the carets of line breaks and tabs, and are not cut after sixty lines', () => {
    expect(drawn({ entities: paragraph('one^Jtwo^Ithree') }).words.map((each) => each.words)).toEqual([
      'one',
      'two three',
    ]);
    const many = Array.from({ length: 200 }, (_, i) => String(i)).join('\\P');
    expect(drawn({ entities: paragraph(many) }).words).toHaveLength(200);
  });
  it('longer than what is read of a note are cut, and that is said', () => {
    const { notes } = drawn({ entities: paragraph('words and '.repeat(4000)) });
    expect(notes).toEqual(['Cut short: 1 note of over 32,000 letters.']);
  });
  it('that are empty, and definitions of attributes, are not called left out', () => {
    const { skipped, notes } = drawn({
      entities: [
        ...line('A', 0, 0, 1, 1),
        [0, 'TEXT'],
        [8, 'A'],
        [10, 0],
        [20, 0],
        [40, 1],
        [1, ''],
        [0, 'ATTDEF'],
        [8, 'A'],
        [2, 'TAG'],
      ],
    });
    expect([...skipped]).toEqual([]);
    expect(notes).toEqual([]);
  });
  it('between two points run from one to the other, no longer', () => {
    const { words } = drawn({
      entities: [
        [0, 'TEXT'],
        [8, 'A'],
        [10, 0],
        [20, 0],
        [11, 30],
        [21, 40],
        [40, 2],
        [50, 0],
        [72, 5],
        [1, 'kerb'],
      ],
    });
    expect(words).toMatchObject([{ at: [0, 0], width: 50, turn: expect.closeTo(53.1301, 3) }]);
  });
  it('seen from below stand on the other side, over the same ground', () => {
    const { words } = drawn({
      entities: [
        [0, 'TEXT'],
        [8, 'A'],
        [10, 20],
        [20, 5],
        [40, 2],
        [1, 'kerb'],
        [210, 0],
        [220, 0],
        [230, -1],
      ],
    });
    expect(words).toMatchObject([{ at: [-20, 5], anchor: 'right', turn: expect.closeTo(0, 9) }]);
  });
});

describe('a table and a bare dimension', () => {
  it('are drawn: the one by its block, the other by what it measures', () => {
    const { lines, skipped } = drawn({
      blocks: block('*T1', line('0', 0, 0, 30, 0)),
      entities: [
        [0, 'ACAD_TABLE'],
        [8, 'A'],
        [2, '*T1'],
        [10, 100],
        [20, 50],
        [11, 0],
        [21, 1],
      ],
    });
    expect([...skipped]).toEqual([]);
    expect(lines[0]!.points.map((at) => at.map((side) => Math.round(side * 1e6) / 1e6))).toEqual([
      [100, 50],
      [100, 80],
    ]);
    const measured = drawn({
      entities: [
        [0, 'DIMENSION'],
        [8, 'A'],
        [70, 0],
        [10, 0],
        [20, 10],
        [11, 9],
        [21, 11],
        [13, 0],
        [23, 0],
        [14, 18],
        [24, 2],
      ],
    });
    expect(measured.lines.map(({ points }) => points)).toEqual([
      [
        [0, 0],
        [0, 10],
      ],
      [
        [0, 10],
        [18, 10],
      ],
      [
        [18, 2],
        [18, 10],
      ],
    ]);
    expect(measured.words).toMatchObject([{ words: '18' }]);
  });
});
