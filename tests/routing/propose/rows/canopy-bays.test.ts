import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { baysOn, type CanopyShape, canopyBays } from '../../../../routing/propose/rows/canopy-bays.ts';
import { lineLetter, lineNumber, withLines } from '../../../../routing/propose/rows/gridline-labels.ts';

const T_FRAME: CanopyShape = {
  spacing: 27,
  columnLines: 1,
  lineGap: 18,
  overhang: 18,
  endOverhang: 0,
  columnSize: 1,
  form: 'flat',
  tilt: 5,
  rises: 'left',
  levelAt: 'columns',
  beamElevation: 12,
  purlinsAbove: 0.5,
  purlinSpacing: 6,
  side: 'left',
};

describe('canopy bays', () => {
  test('one line of columns has beams to both sides and purlins from end to end', () => {
    const { columns, beams, purlins } = canopyBays([0, 0], [80, 0], 3, T_FRAME);
    expect(columns.map(({ at }) => at)).toEqual([
      [0, 0],
      [27, 0],
      [54, 0],
      [81, 0],
    ]);
    expect(beams[1]).toEqual({ from: [27, -18, 12], to: [27, 18, 12] });
    expect(purlins.map(({ from }) => from[1])).toEqual([-18, -12, -6, 0, 6, 12, 18]);
    expect(purlins[0]).toEqual({ from: [0, -18, 12.5], to: [81, -18, 12.5] });
  });

  test('two lines of columns stand a gap apart, the second on the side asked for', () => {
    const shape = { ...T_FRAME, columnLines: 2 as const, lineGap: 20, overhang: 3, side: 'right' as const };
    const { columns, beams } = canopyBays([0, 0], [27, 0], 1, shape);
    expect(columns.map(({ at }) => at)).toEqual([
      [0, 0],
      [0, -20],
      [27, 0],
      [27, -20],
    ]);
    expect(beams[0]).toEqual({ from: [0, 3, 12], to: [0, -23, 12] });
  });

  test('a line takes the number of bays that comes nearest to it', () => {
    expect([baysOn(108, 27), baysOn(100, 27), baysOn(90, 27), baysOn(5, 27)]).toEqual([4, 4, 3, 1]);
  });

  test('purlins lie no farther apart than asked for', () => {
    fc.assert(
      fc.property(fc.integer({ min: 4, max: 40 }), fc.integer({ min: 1, max: 12 }), (overhang, most) => {
        const { purlins } = canopyBays([0, 0], [27, 0], 1, { ...T_FRAME, overhang, purlinSpacing: most });
        const places = purlins.map(({ from }) => from[1]);
        expect(places[0]).toBeCloseTo(-overhang);
        expect(places.at(-1)).toBeCloseTo(overhang);
        for (let i = 1; i < places.length; i++) expect(places[i]! - places[i - 1]!).toBeLessThanOrEqual(most + 1e-6);
      }),
    );
  });
});

describe('gridline labels', () => {
  test('letters leave out I and O, and go on with two (custom of the trade)', () => {
    const letters = Array.from({ length: 26 }, (_, i) => lineLetter(i)).join(' ');
    expect(letters).toBe('A B C D E F G H J K L M N P Q R S T U V W X Y Z AA AB');
  });

  test('a new canopy goes on from the numbers that stand, and keeps a line that is there', () => {
    const lines = [
      { label: '1', at: 0 },
      { label: '2', at: 27 },
    ];
    expect(withLines(lines, [54, 27, 81], lineNumber)).toEqual([
      { label: '1', at: 0 },
      { label: '2', at: 27 },
      { label: '3', at: 54 },
      { label: '4', at: 81 },
    ]);
  });

  test('no two lines have one name', () => {
    const places = fc.array(fc.integer({ min: -500, max: 500 }), { maxLength: 60 });
    fc.assert(
      fc.property(places, places, (first, second) => {
        const labels = withLines(withLines([], first, lineLetter), second, lineLetter).map(({ label }) => label);
        expect(new Set(labels).size).toBe(labels.length);
      }),
    );
  });
});
