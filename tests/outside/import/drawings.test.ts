import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { ImportedLine } from '../../../routing/site/import/imported.ts';
import { readDxf } from '../../read-dxf.ts';
import told from './drawings.json' with { type: 'json' };

// The drawings were written by ezdxf, which also told what it shows of them; see make-drawings.py.
interface Told {
  readonly layers: Readonly<Record<string, { readonly length: number; readonly box: readonly number[] }>>;
  readonly points: readonly (readonly [layer: string, x: number, y: number])[];
  readonly words: readonly (readonly [layer: string, words: string])[];
  readonly cells: Readonly<Record<string, number>>;
}

const CELLS = told.cells;

type Segment = readonly [ax: number, ay: number, bx: number, by: number];

/** Each piece of line once: edges that two faces share are drawn twice. */
function segmentsOf(lines: readonly ImportedLine[]): readonly Segment[] {
  const all = new Map<string, Segment>();
  for (const { layer, points, closed } of lines)
    points.forEach(([x, y], i) => {
      const next = points[i + 1] ?? (closed ? points[0] : undefined);
      if (!next) return;
      const ends = [`${x.toFixed(4)} ${y.toFixed(4)}`, `${next[0].toFixed(4)} ${next[1].toFixed(4)}`].sort();
      all.set(`${layer} ${ends.join(' ')}`, [x, y, next[0], next[1]]);
    });
  return [...all.values()];
}

/** How much ink lies in each cell of a grid over the whole, as make-drawings.py counts it. */
function cellsOf(lines: readonly ImportedLine[], [x0, y0, x1, y1]: readonly number[]): Map<string, number> {
  const size = Math.max(x1! - x0!, y1! - y0!) * 1.0001;
  const cells = new Map<string, number>();
  for (const [ax, ay, bx, by] of segmentsOf(lines)) {
    const length = Math.hypot(bx - ax, by - ay);
    const steps = Math.max(1, Math.ceil((length / size) * 1000));
    for (let i = 0; i < steps; i++) {
      const t = (i + 0.5) / steps;
      const column = Math.floor(((ax + (bx - ax) * t - x0!) / size) * CELLS);
      const row = Math.floor(((ay + (by - ay) * t - y0!) / size) * CELLS);
      const key = String(column + CELLS * row);
      cells.set(key, (cells.get(key) ?? 0) + length / steps);
    }
  }
  return cells;
}

const boxOfAll = (boxes: readonly (readonly number[])[]): readonly number[] =>
  [0, 1, 2, 3].map((side) => (side < 2 ? Math.min : Math.max)(...boxes.map((box) => box[side]!)));

describe.each(Object.entries(told.drawings as unknown as Record<string, Told>))('%s', (name, shown) => {
  const read = readDxf(readFileSync(new URL(`./drawings/${name}.dxf`, import.meta.url), 'utf8'));
  if (!read.ok) throw new Error(`${read.fault.place} ${read.fault.says}`);
  const { words, feetPerUnit } = read.value;
  const lines = read.value.lines.filter(({ points }) => points.length > 1);
  const unit = feetPerUnit ?? 1;

  test('has the layers that ezdxf shows, with as much line on each, within 0.1 percent and 0.02 ft', () => {
    const layers = new Set(lines.map(({ layer }) => layer.toLowerCase()));
    expect([...layers].sort()).toEqual(
      Object.keys(shown.layers)
        .map((layer) => layer.toLowerCase())
        .sort(),
    );
    for (const [layer, { length, box }] of Object.entries(shown.layers)) {
      const own = segmentsOf(lines.filter((line) => line.layer.toLowerCase() === layer.toLowerCase()));
      const ours = own.reduce((sum, [ax, ay, bx, by]) => sum + Math.hypot(bx - ax, by - ay), 0);
      expect(Math.abs(ours / length - 1), layer).toBeLessThan(0.001);
      const around = boxOfAll(
        own.map(([ax, ay, bx, by]) => [Math.min(ax, bx), Math.min(ay, by), Math.max(ax, bx), Math.max(ay, by)]),
      );
      for (const [i, side] of box.entries()) expect(Math.abs(around[i]! - side) * unit, layer).toBeLessThan(0.02);
    }
  });

  test('looks as ezdxf draws it: of its ink, less than 1 percent lies in another cell', () => {
    const cells = cellsOf(lines, boxOfAll(Object.values(shown.layers).map(({ box }) => box)));
    let [off, all] = [0, 0];
    for (const key of new Set([...cells.keys(), ...Object.keys(shown.cells)])) {
      const there = shown.cells[key] ?? 0;
      off += Math.abs((cells.get(key) ?? 0) - there);
      all += there;
    }
    expect(off / all).toBeLessThan(0.01);
  });

  test('has its points where ezdxf has them', () => {
    const own = read.value.lines.flatMap(({ layer, points }) =>
      points.length === 1 ? [[layer.toLowerCase(), ...points[0]!]] : [],
    );
    expect(own.map(String).sort()).toEqual(shown.points.map(String).sort());
  });

  test('says its words, on the same layers', () => {
    const letters = (all: readonly (readonly [string, string])[]): readonly string[] =>
      [...new Set(all.map(([layer]) => layer.toLowerCase()))].sort().map(
        (layer) =>
          `${layer}: ${all
            .filter((each) => each[0].toLowerCase() === layer)
            .flatMap(([, words]) => words.split(/\s+/))
            .sort()
            .join(' ')}`,
      );
    expect(letters(words.map((one) => [one.layer, one.words] as const))).toEqual(letters(shown.words));
  });
});
