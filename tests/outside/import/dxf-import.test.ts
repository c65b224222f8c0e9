import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readDxf } from '../../read-dxf.ts';

// site.dxf was written by ezdxf, which also told what each layer comes to; see make.py.
const text = readFileSync(new URL('./site.dxf', import.meta.url), 'utf8');
const told: {
  layers: Record<string, { count: number; length: number; box: [number, number, number, number] }>;
} = JSON.parse(readFileSync(new URL('./site-dxf.json', import.meta.url), 'utf8'));

const read = readDxf(text);
if (!read.ok) throw new Error(`${read.fault.place} ${read.fault.says}`);
const { lines, words, feetPerUnit, skipped } = read.value;

test('a metric drawing says so', () => expect(feetPerUnit).toBe(1 / 0.3048));

test('the layers are those that are on', () =>
  expect([...new Set(lines.map(({ layer }) => layer))].sort()).toEqual(Object.keys(told.layers).sort()));

test.each(Object.entries(told.layers))(
  '%s has the lines, the length and the extent that ezdxf finds',
  (layer, found) => {
    const own = lines.filter((line) => line.layer === layer && line.points.length > 1);
    expect(own.length).toBe(found.count);
    let length = 0;
    const box = [Infinity, Infinity, -Infinity, -Infinity];
    for (const { points, closed } of own)
      points.forEach(([x, y], i) => {
        const next = points[i + 1] ?? (closed ? points[0] : undefined);
        if (next) length += Math.hypot(next[0] - x, next[1] - y);
        box[0] = Math.min(box[0]!, x);
        box[1] = Math.min(box[1]!, y);
        box[2] = Math.max(box[2]!, x);
        box[3] = Math.max(box[3]!, y);
      });
    // Chords of a 48th of a turn are short of their arc by 0.07 percent.
    expect(Math.abs(length / found.length - 1)).toBeLessThan(0.003);
    found.box.forEach((side, i) => {
      expect(Math.abs(box[i]! - side)).toBeLessThan(0.03);
    });
  },
);

test('a point is a mark, and nothing is left out', () => {
  expect([...skipped]).toEqual([]);
  expect(lines.filter(({ points }) => points.length === 1)).toMatchObject([{ layer: 'WALK', points: [[3, 3]] }]);
  expect(words.map((each) => each.words)).toEqual(['north lot', 'a note']);
});
