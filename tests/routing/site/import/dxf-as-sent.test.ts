import { describe, expect, it } from 'vitest';
import { readDxf } from '../../../read-dxf.ts';
import { drawn, read } from './as-sent.ts';
import { block, dxfOf, dxfText, insert, layer, line, type Pair, type Parts } from './dxf-text.ts';

const said = (parts: Parts): string => {
  const got = readDxf(dxfOf(parts));
  if (got.ok) throw new Error('it was read');
  return got.fault.says;
};

describe('what is put in', () => {
  const tables = [...layer('SEEN', 7), ...layer('OFF', -7), ...layer('COLD', 7, 1)];
  const blocks = block('B', [...line('SEEN', 0, 0, 10, 0), ...line('0', 0, 1, 10, 1)]);
  const attribute = (on: string): readonly Pair[] => [
    [0, 'ATTRIB'],
    [8, on],
    [10, 0],
    [20, 5],
    [40, 1],
    [1, 'A1'],
    [0, 'SEQEND'],
  ];
  const put = (on: string) =>
    drawn({
      tables,
      blocks,
      entities: [...line('SEEN', 0, -9, 1, -9), ...insert('B', on, 0, 0), [66, 1], ...attribute('0')],
    });

  it('on a layer that is off shows what of it is on others; its attributes on 0 are hidden with it', () => {
    expect(put('OFF').lines).toHaveLength(2);
    expect(put('OFF').words).toEqual([]);
    expect(put('OFF').notes).toEqual(['Hidden in it: 2 things on layer OFF.']);
  });
  it('on a frozen layer is hidden, all of it', () => {
    expect(put('COLD').lines).toHaveLength(1);
    expect(put('COLD').words).toEqual([]);
  });
  it('on a layer that is seen has its attributes there', () => {
    expect(put('SEEN').lines).toHaveLength(3);
    expect(put('SEEN').words).toMatchObject([{ words: 'A1', layer: 'SEEN' }]);
  });
  it('is found whatever the case of its name, and so are layers', () => {
    const { lines, notes } = drawn({
      tables: layer('Hidden', -7),
      blocks: block('TREE', line('0', 0, 0, 1, 0)),
      entities: [...insert('Tree', 'A', 0, 0), ...line('HIDDEN', 0, 0, 9, 9)],
    });
    expect(lines).toHaveLength(1);
    expect(notes).toEqual(['Hidden in it: 1 thing on layer Hidden.']);
  });
  it('in rows and columns has its attributes in every cell', () => {
    const { words } = drawn({
      blocks: block('B', line('0', 0, 0, 1, 0)),
      entities: [...insert('B', 'A', 0, 0), [66, 1], [70, 3], [71, 2], [44, 9], [45, 20], ...attribute('A')],
    });
    expect(words.map(({ at }) => at)).toEqual([
      [0, 5],
      [9, 5],
      [18, 5],
      [0, 25],
      [9, 25],
      [18, 25],
    ]);
  });
  it('from a file that is not bound in is named, with the cure', () => {
    const refers = block(
      'BASE',
      [],
      [
        [70, 4],
        [1, 'D:\\jobs\\base.dwg'],
      ],
    );
    expect(said({ blocks: refers, entities: insert('BASE', 'A', 0, 0) })).toBe(
      'holds nothing that is drawn: It refers to base.dwg, which is not in it: bind it before saving',
    );
    const { notes } = drawn({
      blocks: refers,
      entities: [...insert('BASE', 'A', 0, 0), ...line('A', 0, 0, 1, 1), [0, 'IMAGE'], [8, 'A'], [340, '7F']],
      objects: [
        [0, 'IMAGEDEF'],
        [5, '7F'],
        [1, 'photo.tif'],
      ],
    });
    expect(notes).toEqual(['It refers to base.dwg, photo.tif, which are not in it: bind them before saving.']);
  });
  it('with a clip is drawn whole, and that is said', () => {
    const { notes } = drawn({
      entities: line('A', 0, 0, 1, 1),
      objects: [
        [0, 'SPATIAL_FILTER'],
        [5, '8'],
      ],
    });
    expect(notes).toEqual(['Drawn whole: 1 block that it clips.']);
  });
});

describe('a drawing of which nothing is seen', () => {
  it('says where its things are', () => {
    expect(said({ entities: [...line('A', 0, 0, 1, 1), [67, 1]] })).toBe(
      'holds nothing that is drawn: Left out: 1 thing of its sheets (paper space)',
    );
    expect(said({ tables: layer('A', -1), entities: line('A', 0, 0, 1, 1) })).toBe(
      'holds nothing that is drawn: Hidden in it: 1 thing on layer A',
    );
  });
  it('says what alone it holds', () => {
    expect(
      said({
        entities: [
          [0, '3DSOLID'],
          [8, 'A'],
          [0, 'RAY'],
          [8, 'A'],
        ],
      }),
    ).toBe('holds nothing that is drawn: only 1 solid body, 1 construction line');
  });
  it('names in the words of the trade what is not read', () => {
    const kinds = ['XLINE', '3DSOLID', '3DSOLID', 'RAY', 'WIPEOUT'].flatMap((kind): Pair[] => [
      [0, kind],
      [8, 'A'],
    ]);
    expect(drawn({ entities: [...line('A', 0, 0, 1, 1), ...kinds] }).notes).toEqual([
      'Not drawn: 2 construction lines, 2 solid bodies, 1 mask.',
    ]);
  });
});

describe('a file that', () => {
  const sound = dxfOf({ entities: line('A', 0, 0, 1, 1) });
  it('has trash after its end is read as if it had not', () => {
    for (const trash of ['\u001a', 'Done by hand\n\nand more', '0\n'])
      expect(read(sound + trash).lines).toHaveLength(1);
    expect(read(`${sound}\u001a`).notes).toEqual([]);
  });
  it('has no end, or goes wrong on its way, is shown as far as it goes, and that is said', () => {
    const cut = dxfText([0, 'SECTION'], [2, 'ENTITIES'], ...line('A', 0, 0, 1, 1));
    expect(read(cut)).toMatchObject({
      lines: [{ layer: 'A' }],
      notes: [expect.stringMatching(/^It is shown as far as it goes: the file ends before its EOF/)],
    });
    expect(read(`${cut}0\nLINE\nrubbish\n1\n`).notes[0]).toMatch(/expected a group code, found "rubbish" \(line 19\)/);
  });
  it('counts in millimetres of a national grid is read to the last of them', () => {
    expect(drawn({ entities: line('A', 5e8, 5.2e9, 5e8 + 1, 5.2e9) }).lines[0]!.points).toEqual([
      [5e8, 5.2e9],
      [5e8 + 1, 5.2e9],
    ]);
  });
});
