import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { direction } from '../../../../routing/plane/direction.ts';
import type { ImportedLine } from '../../../../routing/site/import/imported.ts';
import { turnedInto } from '../../../../routing/site/import/turn-into.ts';
import { stallRectangle } from '../../../../routing/site/place/stall-rectangle.ts';
import type { Point2 } from '../../../../routing/site/site.ts';

const ring = (points: readonly Point2[]): ImportedLine => ({ layer: 'a', points, closed: true });

describe('rectangles of a stall’s sides', () => {
  const stall = fc.record({
    id: fc.constant('S1'),
    at: fc.tuple(fc.double({ min: -500, max: 500, noNaN: true }), fc.double({ min: -500, max: 500, noNaN: true })),
    width: fc.double({ min: 7.1, max: 12.9, noNaN: true }),
    depth: fc.double({ min: 14.1, max: 23.9, noNaN: true }),
    heading: fc.double({ min: 0, max: 359.99, noNaN: true }),
  });
  it('become stalls on the same ground, whichever corner they begin at and way they run', () => {
    fc.assert(
      fc.property(stall, fc.nat(3), fc.boolean(), fc.boolean(), (one, start, back, repeats) => {
        const corners = [...stallRectangle(one)];
        const from = [...corners.slice(start), ...corners.slice(0, start)];
        const points = back ? from.reverse() : from;
        const line = repeats ? { layer: 'a', points: [...points, points[0]!], closed: false } : ring(points);
        const { stalls, rest } = turnedInto('stalls', [line], 0, false);
        expect([stalls.length, rest.length]).toEqual([1, 0]);
        const made = stalls[0]!;
        expect(made.width).toBeCloseTo(one.width, 6);
        expect(made.depth).toBeCloseTo(one.depth, 6);
        for (const corner of stallRectangle({ id: 'S1', ...made }))
          expect(Math.min(...corners.map(([x, y]) => Math.hypot(x - corner[0], y - corner[1])))).toBeLessThan(1e-6);
      }),
    );
  });
  const row = (y: number, count: number, depth = 18): ImportedLine[] =>
    Array.from({ length: count }, (_, i) =>
      ring([
        [9 * i, y],
        [9 * i + 9, y],
        [9 * i + 9, y + depth],
        [9 * i, y + depth],
      ]),
    );
  it('on two sides of an aisle head away from it, and the other way when flipped', () => {
    const lines = [...row(0, 8), ...row(42, 8)];
    const headings = (flip: boolean): number[] =>
      turnedInto('stalls', lines, 0, flip).stalls.map(({ heading }) => heading);
    expect(headings(false)).toEqual([...Array(8).fill(270), ...Array(8).fill(90)]);
    expect(headings(true)).toEqual([...Array(8).fill(90), ...Array(8).fill(270)]);
  });
  it('that stand head to head, as under a canopy, head at each other', () => {
    const { stalls } = turnedInto('stalls', [...row(0, 8), ...row(18, 8)], 0, false);
    expect(stalls.map(({ heading }) => heading)).toEqual([...Array(8).fill(90), ...Array(8).fill(270)]);
    for (const { at, heading, depth } of stalls) expect(at[1] + direction(heading)[1] * depth).toBeCloseTo(18, 9);
  });
  it('of other sides, or without a side, are left out', () => {
    const { stalls, rest } = turnedInto(
      'stalls',
      [
        ring([
          [0, 0],
          [4, 0],
          [4, 18],
          [0, 18],
        ]),
        {
          layer: 'a',
          points: [
            [0, 0],
            [9, 0],
            [9, 18],
            [0, 18],
          ],
          closed: false,
        },
        ring([
          [0, 0],
          [9, 0],
          [12, 18],
          [3, 18],
        ]),
        ring([
          [0, 0],
          [9, 0],
          [9, 18],
        ]),
      ],
      0,
      false,
    );
    // A slanted outline is a stall of a slanted row.
    expect([stalls.length, rest.length]).toEqual([1, 3]);
  });
});

describe('other lines', () => {
  it('become columns where they are small rectangles or round', () => {
    const circle = Array.from(
      { length: 48 },
      (_, i): Point2 => [3 + 0.75 * Math.cos((i * Math.PI) / 24), 0.75 * Math.sin((i * Math.PI) / 24)],
    );
    const { columns, rest } = turnedInto(
      'columns',
      [
        ring(circle),
        ring([
          [0, 0],
          [1, 0],
          [1, 2],
          [0, 2],
        ]),
        ring([
          [0, 0],
          [9, 0],
          [9, 18],
          [0, 18],
        ]),
      ],
      0,
      false,
    );
    expect(rest).toHaveLength(1);
    expect(columns[0]!.at[0]).toBeCloseTo(3, 6);
    expect(columns[0]!.size[0]).toBeCloseTo(1.5, 6);
    expect(columns[1]).toEqual({ at: [0.5, 1], size: [1, 2] });
  });
  it('become keep-outs and aisles where they are closed, and raceways at an elevation', () => {
    const open: ImportedLine = {
      layer: 'a',
      points: [
        [0, 0],
        [5, 0],
        [5, 0.001],
        [5, 9],
      ],
      closed: false,
    };
    const area = ring([
      [0, 0],
      [40, 0],
      [40, 24],
    ]);
    expect(turnedInto('keepouts', [open, area], 0, false)).toMatchObject({
      rest: [{ layer: 'a', closed: false }],
      keepouts: [{ outline: area.points }],
    });
    expect(turnedInto('aisles', [open, area], 0, false)).toMatchObject({
      rest: [{ layer: 'a', closed: false }],
      aisles: [{ outline: area.points }],
    });
    expect(turnedInto('raceways', [open], 11, false).raceways).toEqual([
      {
        path: [
          [0, 0, 11],
          [5, 0, 11],
          [5, 9, 11],
        ],
        method: 'EMT',
        place: 'overhead',
      },
    ]);
    expect(turnedInto('raceways', [open], -2, false).raceways[0]!.place).toBe('underground');
  });
  it('of any kind never give what a site cannot hold', () => {
    const at = fc.tuple(
      fc.double({ min: -1e4, max: 1e4, noNaN: true }),
      fc.double({ min: -1e4, max: 1e4, noNaN: true }),
    );
    const line = fc.record({ layer: fc.constant('a'), points: fc.array(at, { maxLength: 7 }), closed: fc.boolean() });
    fc.assert(
      fc.property(
        fc.array(line, { maxLength: 6 }),
        fc.constantFrom(
          'stalls' as const,
          'columns' as const,
          'keepouts' as const,
          'aisles' as const,
          'raceways' as const,
        ),
        (lines, kind) => {
          const turned = turnedInto(kind, lines, 10, false);
          expect(turned[kind].length + turned.rest.length).toBeLessThanOrEqual(lines.length);
          expect(JSON.stringify({ ...turned, gridlines: [] })).not.toMatch(/null/);
        },
      ),
    );
  });
});
