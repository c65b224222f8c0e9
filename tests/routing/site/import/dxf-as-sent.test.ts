import { describe, expect, it } from 'vitest';
import type { LineDrawing } from '../../../../routing/site/import/imported.ts';
import { readDxf } from '../../../read-dxf.ts';
import { block, dxfOf, dxfText, insert, layer, line, type Pair, type Parts } from './dxf-text.ts';

function read(text: string): LineDrawing {
  const got = readDxf(text);
  if (!got.ok) throw new Error(`${got.fault.place} ${got.fault.says}`);
  return got.value;
}
const drawn = (parts: Parts): LineDrawing => read(dxfOf(parts));
const said = (parts: Parts): string => {
  const got = readDxf(dxfOf(parts));
  if (got.ok) throw new Error('it was read');
  return got.fault.says;
};

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

describe('curves', () => {
  const header: readonly Pair[] = [
    [9, '$INSUNITS'],
    [70, 2],
  ];
  it('of any radius lie within a hundredth of a foot', () => {
    for (const radius of [3, 500, 1000, 5000]) {
      const [arc] = drawn({
        header,
        entities: [
          [0, 'ARC'],
          [8, 'A'],
          [10, 0],
          [20, 0],
          [40, radius],
          [50, 0],
          [51, 90],
        ],
      }).lines;
      const off = arc!.points
        .slice(1)
        .map(([x, y], i) => radius - Math.hypot((x + arc!.points[i]![0]) / 2, (y + arc!.points[i]![1]) / 2));
      expect(Math.max(...off)).toBeLessThan(0.0101);
    }
  });
  it('of an ellipse that is seen from below run the other way, and their ratio may be over one', () => {
    const [below] = drawn({
      entities: [
        [0, 'ELLIPSE'],
        [8, 'A'],
        [10, 0],
        [20, 0],
        [11, 10],
        [21, 0],
        [40, 0.5],
        [41, 0],
        [42, Math.PI / 2],
        [210, 0],
        [220, 0],
        [230, -1],
      ],
    }).lines;
    expect(below!.points.at(-1)!.map((side) => Math.round(side * 1e9) / 1e9)).toEqual([0, -5]);
    const [wide] = drawn({
      entities: [
        [0, 'ELLIPSE'],
        [8, 'A'],
        [10, 0],
        [20, 0],
        [11, 10],
        [21, 0],
        [40, 1.0095],
        [41, 0],
        [42, Math.PI / 2],
      ],
    }).lines;
    expect(wide!.points.at(-1)![1]).toBeCloseTo(10.095, 9);
  });
});

describe('units', () => {
  const unit = (...header: readonly Pair[]) => {
    const { feetPerUnit, unitSays } = drawn({ header, entities: line('A', 0, 0, 1, 1) });
    return [feetPerUnit, unitSays];
  };
  it('are told always, with why', () => {
    expect(unit([9, '$INSUNITS'], [70, 6])).toEqual([1 / 0.3048, 'in meters, by its header']);
    expect(unit([9, '$INSUNITS'], [70, 0])).toEqual([null, 'it does not say its units']);
    expect(unit([9, '$MEASUREMENT'], [70, 1])).toEqual([null, 'it does not say its units, only that they are metric']);
  });
  it('are inches where lengths are shown in feet and inches, whatever a template left in the header', () => {
    expect(unit([9, '$INSUNITS'], [70, 4], [9, '$LUNITS'], [70, 4])).toEqual([
      1 / 12,
      'in inches, for it shows its lengths in feet and inches, though its header also names millimeters',
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

describe('looks', () => {
  it('are those of the entity, else of its layer; dashes by the scale of the drawing', () => {
    const { lines } = drawn({
      header: [
        [9, '$LTSCALE'],
        [40, 2],
      ],
      tables: [
        [0, 'LTYPE'],
        [2, 'DASHED'],
        [49, 0.5],
        [49, -0.25],
        [0, 'LAYER'],
        [2, 'L'],
        [62, 3],
        [370, 50],
        [6, 'Dashed'],
      ],
      entities: [
        ...line('L', 0, 0, 1, 1),
        ...line('L', 0, 0, 1, 1),
        [62, 1],
        [370, 100],
        [6, 'CONTINUOUS'],
        ...line('L', 0, 0, 1, 1),
        [420, 0x123456],
      ],
    });
    expect(lines.map(({ look }) => look)).toMatchObject([
      { color: 0x00ff00, weight: 0.5, dash: [1, 0.5] },
      { color: 0xff0000, weight: 1, dash: [] },
      { color: 0x123456, weight: 0.5 },
    ]);
  });
  it('have the width of a polyline, scaled with its block, and the fill of a solid', () => {
    const { lines } = drawn({
      blocks: block('B', [
        [0, 'LWPOLYLINE'],
        [8, '0'],
        [43, 0.5],
        [10, 0],
        [20, 0],
        [10, 5],
        [20, 0],
      ]),
      entities: [
        ...insert('B', 'A', 0, 0),
        [41, 3],
        [42, 3],
        [0, 'SOLID'],
        [8, 'A'],
        [10, 0],
        [20, 0],
        [11, 1],
        [21, 0],
        [12, 0],
        [22, 1],
      ],
    });
    expect(lines.map(({ look }) => [look?.width, look?.filled])).toEqual([
      [1.5, false],
      [0, true],
    ]);
  });
});
