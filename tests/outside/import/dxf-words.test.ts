import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Point2 } from '../../../routing/site/site.ts';
import { readDxf } from '../../read-dxf.ts';
import expected from './words-dxf.json' with { type: 'json' };

// words.dxf and what ezdxf makes of it, by make-words.py; versions in the file.
const text = readFileSync(new URL('./words.dxf', import.meta.url), 'utf8');
const read = readDxf(text);
if (!read.ok) throw new Error(read.fault.says);
const { lines, words, skipped } = read.value;

function measured(points: readonly Point2[]) {
  let [length, area] = [0, 0];
  points.forEach(([x, y], i) => {
    const next = points[(i + 1) % points.length]!;
    length += Math.hypot(next[0] - x, next[1] - y);
    area += (x * next[1] - next[0] * y) / 2;
  });
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return { length, area: Math.abs(area), box: [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)] };
}

describe('the boundaries of hatches', () => {
  test.each(Object.entries(expected.hatches))(
    'on layer %s are as long and hold as much as ezdxf says',
    (layer, found) => {
      const own = lines.filter((line) => line.layer === `${layer}, hatches`);
      expect(own).toHaveLength(found.length);
      own.forEach(({ points, closed }, i) => {
        const { length, area, box } = measured(points);
        expect(closed).toBe(true);
        // Chords of a 48th of a turn are short of their arc.
        expect(Math.abs(length / found[i]!.length - 1)).toBeLessThan(0.003);
        expect(Math.abs(area / found[i]!.area - 1)).toBeLessThan(0.01);
        for (const [side, value] of box.entries()) expect(Math.abs(value - found[i]!.box[side]!)).toBeLessThan(0.03);
      });
    },
  );
});

describe('words', () => {
  const one = (says: string) => words.filter((each) => each.words === says);

  test('of a TEXT stand where, as high and as turned as ezdxf says, in blocks too', () => {
    for (const found of expected.words) {
      if (!('at' in found)) continue;
      const [own] = one(found.words!.replace('\u00b0', '°'));
      expect(own, found.words).toBeDefined();
      expect([...own!.at, own!.height, own!.turn]).toEqual(
        [...found.at!, found.height!, found.turn!].map((value) => expect.closeTo(value, 6)),
      );
    }
    expect(one('middle')[0]!.anchor).toBe('middle');
    expect(one('right °')[0]!.anchor).toBe('right');
  });

  test('of an MTEXT are its lines without their formatting', () => {
    const says = words.map((each) => each.words);
    for (const found of expected.words)
      if ('lines' in found) expect(says).toEqual(expect.arrayContaining(found.lines!));
  });

  test('of an MTEXT hang from its point or stand on it, line under line', () => {
    const [first, second] = [one('Two lines')[0]!, one('of it 1/2')[0]!];
    // Turned by 45 degrees: the first base line lies a height to the lower right of the point.
    expect(first.at).toEqual([expect.closeTo(2 * Math.SQRT1_2, 9), expect.closeTo(60 - 2 * Math.SQRT1_2, 9)]);
    expect(Math.hypot(second.at[0] - first.at[0], second.at[1] - first.at[1])).toBeCloseTo((2 * 5) / 3, 9);
    const [stands] = one('{kept} as is');
    expect(stands).toMatchObject({ at: [20, 60], anchor: 'middle' });
  });

  test('of an attribute are read, and nothing is left out', () => {
    expect(one('P-17')).toMatchObject([{ at: [52, 51], height: 0.5 }]);
    expect([...skipped]).toEqual([]);
  });
});

describe('a damaged file', () => {
  const all = text.split('\n');
  test('is refused or read, and never hangs or throws, whatever values its hatches and words hold', () => {
    const from = all.findIndex((line) => line.trim() === 'HATCH');
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(
            fc.integer({ min: from, max: all.length - 1 }),
            fc.constantFrom('', '-1', '1e309', 'NaN', '2000000', '99999999', '\\S^;', '%%', '{\\f'),
          ),
          { minLength: 1, maxLength: 6 },
        ),
        (changes) => {
          const bad = [...all];
          for (const [i, value] of changes) bad[i] = value;
          const result = readDxf(bad.join('\n'));
          if (!result.ok) return;
          for (const { points } of result.value.lines)
            for (const at of points) expect(at.every(Number.isFinite)).toBe(true);
          for (const { at, height, turn } of result.value.words)
            expect([...at, height, turn].every(Number.isFinite)).toBe(true);
        },
      ),
    );
  });
});
