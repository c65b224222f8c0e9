import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readGeojson } from '../../../../routing/site/import/geojson.ts';
import { linesOfGeojson } from '../../../../routing/site/import/geojson-lines.ts';
import type { ImportedLine } from '../../../../routing/site/import/imported.ts';
import { turnedInto } from '../../../../routing/site/import/turn-into.ts';
import { lonLatOf } from '../../../../routing/site/place/georef.ts';
import { stallRectangle } from '../../../../routing/site/place/stall-rectangle.ts';
import type { Point2, Stall } from '../../../../routing/site/site.ts';
import { MADE_LOTS, type Meant } from './made-lots.ts';

const middleOf = (stall: Omit<Stall, 'id'>): Point2 => {
  const corners = stallRectangle({ id: 'S', ...stall });
  return [corners.reduce((sum, [x]) => sum + x, 0) / 4, corners.reduce((sum, [, y]) => sum + y, 0) / 4];
};

/** Of the stalls that were meant, how many are found with their place, sides and direction. */
function right(found: readonly Omit<Stall, 'id'>[], meant: readonly Meant[], slack = 0.05): number {
  return meant.filter(({ middle, heading, width, depth, label }) =>
    found.some((stall) => {
      const [x, y] = middleOf(stall);
      const turn = Math.abs(((stall.heading - heading + 540) % 360) - 180);
      const near = Math.hypot(x - middle[0], y - middle[1]) < slack && Math.abs(stall.width - width) < slack;
      return near && Math.abs(stall.depth - depth) < slack && turn < Math.max(0.1, slack) && stall.label === label;
    }),
  ).length;
}

describe('striping as it is drawn', () => {
  it.each(MADE_LOTS.map((lot) => [lot.name, lot] as const))(
    '%s: every stall, and none that is not there',
    (_, { lines, words, meant }) => {
      const { stalls } = turnedInto('stalls', lines, 0, false, { words });
      expect(right(stalls, meant)).toBe(meant.length);
      expect(stalls).toHaveLength(meant.length);
    },
  );
  it('is found whichever way each line runs, in any order, turned and moved', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...MADE_LOTS.filter(({ words }) => words.length === 0)),
        fc.double({ min: 0, max: 360, noNaN: true }),
        fc.tuple(fc.integer({ min: -5000, max: 5000 }), fc.integer({ min: -5000, max: 5000 })),
        fc.integer({ min: 1, max: 1e6 }),
        ({ lines, meant }, degrees, [dx, dy], seed) => {
          const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
          const put = ([x, y]: Point2): Point2 => [x * cos - y * sin + dx, x * sin + y * cos + dy];
          const mixed = lines
            .map((line, i): readonly [number, ImportedLine] => {
              const points = line.points.map(put);
              return [((i + 1) * seed) % 1009, { ...line, points: (i * seed) % 3 === 0 ? points.reverse() : points }];
            })
            .sort(([a], [b]) => a - b)
            .map(([, line]) => line);
          const { stalls } = turnedInto('stalls', mixed, 0, false);
          const placed = meant.map((each) => ({
            ...each,
            middle: put(each.middle),
            heading: (each.heading + degrees) % 360,
          }));
          expect(right(stalls, placed)).toBe(meant.length);
          expect(stalls).toHaveLength(meant.length);
        },
      ),
    );
  });
  it('leaves nothing of the striping over but the hatch of an access aisle', () => {
    const left = MADE_LOTS.map(({ lines }) => turnedInto('stalls', lines, 0, false).rest.length);
    expect(left).toEqual(MADE_LOTS.map(({ name }) => (name.startsWith('accessible stalls') ? 6 : 0)));
  });
  it('leaves what is no stall to be picked', () => {
    const kerb: ImportedLine = {
      layer: 'K',
      points: [
        [-50, -20],
        [200, -20],
        [200, -60],
      ],
      closed: false,
    };
    const { stalls, rest } = turnedInto('stalls', [...MADE_LOTS[2]!.lines, kerb], 0, false);
    expect(stalls).toHaveLength(20);
    expect(rest).toEqual([kerb]);
  });
});

describe('stalls rounded to the digits of their file', () => {
  const row = Array.from({ length: 300 }, (_, i): readonly Point2[] => {
    const [x, y] = [9 * (i % 100), 60 * Math.floor(i / 100)];
    return [
      [x, y],
      [x + 9, y],
      [x + 9, y + 18],
      [x, y + 18],
    ];
  });
  const georef = { lon: -98.5, lat: 39.8, bearing: 12 };
  it.each([[7], [6], [5]])('%i decimals of a degree: all 300 are found, of one size and direction', (decimals) => {
    const round = (value: number): number => Number(value.toFixed(decimals));
    const features = row.map((ring) => ({
      type: 'Feature',
      properties: {},
      geometry: { type: 'Polygon', coordinates: [[...ring, ring[0]!].map((at) => lonLatOf(georef, at).map(round))] },
    }));
    const read = readGeojson(JSON.stringify({ type: 'FeatureCollection', features }));
    if (!read.ok) throw new Error(read.fault.says);
    const rounding = read.value.rounding * 364_600;
    const { stalls } = turnedInto('stalls', linesOfGeojson(read.value.features, georef), 0, false, { rounding });
    expect(stalls).toHaveLength(300);
    for (const stall of stalls) {
      expect(Math.abs(stall.width - 9)).toBeLessThan(decimals === 5 ? 0.8 : 0.3);
      expect(Math.abs(stall.depth - 18)).toBeLessThan(decimals === 5 ? 0.8 : 0.3);
      expect(Math.abs(((stall.heading + 45) % 90) - 45)).toBeLessThan(decimals === 5 ? 1.5 : 0.7);
    }
  });
});

describe('other things', () => {
  const circle = (x: number, y: number, r: number): ImportedLine => ({
    layer: 'a',
    points: Array.from(
      { length: 48 },
      (_, i): Point2 => [x + r * Math.cos((i * Math.PI) / 24), y + r * Math.sin((i * Math.PI) / 24)],
    ),
    closed: true,
  });
  const open = (...points: readonly Point2[]): ImportedLine => ({ layer: 'a', points, closed: false });
  it('drawn as lines of their own are joined: islands to keep-outs, kerbs to aisles, squares to columns', () => {
    const island = [
      open([0, 0], [30, 0]),
      open([30, 0], [33, 4], [30, 8]),
      open([0, 8], [30, 8]),
      open([0, 8], [-3, 4], [0, 0]),
    ];
    const { keepouts, rest } = turnedInto('keepouts', [...island, circle(60, 4, 1)], 0, false);
    expect(keepouts.map(({ outline }) => outline.length)).toEqual(
      [48, 6].sort((a, b) => (keepouts[0]!.outline.length === a ? -1 : b - a)),
    );
    expect(rest).toEqual([]);
    expect(turnedInto('aisles', island, 0, false).aisles).toHaveLength(1);
    const column = [open([0, 0], [1, 0]), open([1, 1], [1, 0]), open([1, 1], [0, 1]), open([0, 0], [0, 1])];
    expect(turnedInto('columns', column, 0, false).columns).toEqual([{ at: [0.5, 0.5], size: [1, 1] }]);
  });
  it('of other small shapes become columns by the box about them', () => {
    const flange: readonly Point2[] = [
      [0, 0],
      [0.8, 0],
      [0.8, 0.1],
      [0.45, 0.1],
      [0.45, 0.9],
      [0.8, 0.9],
      [0.8, 1],
      [0, 1],
      [0, 0.9],
      [0.35, 0.9],
      [0.35, 0.1],
      [0, 0.1],
    ];
    const { columns } = turnedInto('columns', [{ layer: 'a', points: flange, closed: true }], 0, false);
    expect(columns).toHaveLength(1);
    expect(columns[0]!.at.map((side) => Math.round(side * 1e6) / 1e6)).toEqual([0.4, 0.5]);
    expect([...columns[0]!.size].sort()).toEqual([expect.closeTo(0.8, 9), expect.closeTo(1, 9)]);
  });
  it('become gridlines where long lines end in lettered bubbles', () => {
    const word = (words: string, x: number, y: number) => ({
      layer: 'a',
      at: [x, y] as const,
      height: 1,
      turn: 0,
      anchor: 'middle' as const,
      words,
    });
    const lines = [0, 30, 60].flatMap((x) => [open([x, 0], [x, 80]), circle(x, 82, 2)]);
    const across = [10, 50].flatMap((y) => [open([-5, y], [70, y]), circle(-7, y, 2)]);
    const kerb = open([-10, -10], [90, -10]);
    const words = [
      ...[0, 30, 60].map((x, i) => word(`${i + 1}`, x, 81.5)),
      ...[10, 50].map((y, i) => word('AB'[i]!, -7, y - 0.5)),
    ];
    const { gridlines, rest } = turnedInto('gridlines', [...lines, ...across, kerb], 0, false, { words });
    expect(gridlines).toEqual({
      x: [
        { label: '1', at: 0 },
        { label: '2', at: 30 },
        { label: '3', at: 60 },
      ],
      y: [
        { label: 'A', at: 10 },
        { label: 'B', at: 50 },
      ],
    });
    expect(rest).toEqual([kerb]);
  });
});
