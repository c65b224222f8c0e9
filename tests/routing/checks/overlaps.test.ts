import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lengthInPlaceOf } from '../../../routing/checks/overlaps/laid-along.ts';
import { overlapFindings } from '../../../routing/checks/overlaps/overlap-findings.ts';
import { areaOf } from '../../../routing/plane/area.ts';
import { clippedToBox } from '../../../routing/plane/clip.ts';
import { overlapDepth } from '../../../routing/plane/overlap-depth.ts';
import { rectangleAt } from '../../../routing/plane/rectangle.ts';
import type { Column, Equipment, Point3, Raceway, SiteFile, Stall } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { fleetYard } from '../../bench/samples/fleet-yard.ts';
import { hospitalLot } from '../../bench/samples/hospital-lot.ts';
import { libraryLot } from '../../bench/samples/library-lot.ts';

const found = (parts: Partial<SiteFile>) =>
  overlapFindings(toSite({ format: 'overrow/site', version: 1, units: 'ft', name: 'x', ...parts }));
const stall = (id: string, x: number, y = 18, more: Partial<Stall> = {}): Stall => ({
  id,
  at: [x, y],
  width: 9,
  depth: 18,
  heading: 270,
  ...more,
});
const column = (id: string, x: number): Column => ({ id, at: [x, 0], size: [1, 1] });
const panel = (id: string, x: number, y: number): Equipment => ({
  id,
  kind: 'panelboard',
  at: [x, y],
  size: [3, 1, 6],
  entry: [x, y, 6],
});
const raceway = (id: string, ...path: Point3[]): Raceway => ({ id, path, method: 'EMT', place: 'overhead' });

describe('stalls', () => {
  test('side by side, head to head and aslant in a row touch and do not overlap', () => {
    const rows = [0, 1, 2, 3].flatMap((i) => [stall(`A${i}`, 9 * i), stall(`B${i}`, 9 * i, -18, { heading: 90 })]);
    expect(found({ stalls: rows })).toEqual([]);
    for (const file of [libraryLot(), hospitalLot(), fleetYard()]) expect(found(file)).toEqual([]);
  });

  test('on one another are told, with how far one lies into the other', () => {
    expect(found({ stalls: [stall('S1', 0), stall('S2', 8.95)] })).toEqual([]);
    expect(found({ stalls: [stall('S1', 0), stall('S2', 7)] })).toMatchObject([
      { severity: 'fail', rule: 'stalls-overlap', about: ['S2', 'S1'], value: 2, unit: 'ft' },
    ]);
    expect(found({ stalls: [stall('S1', 0), stall('S2', 7)] })[0]!.says).toContain('S2 lies on S1, 2\' 0" into it');
  });

  test('two thousand in one place are one finding, and a lot copied on itself is told in bounds', () => {
    const heap = Array.from({ length: 2000 }, (_, i) => stall(`S${i}`, 0));
    const [one, ...more] = found({ stalls: heap });
    expect(more).toEqual([]);
    expect(one!.says).toMatch(/^1999 stalls lie on S0, .*: S1, S2, S3 and 1996 more/);
    const lot = Array.from({ length: 240 }, (_, i) => stall(`S${i}`, 9 * i));
    const twice = found({ stalls: [...lot, ...lot.map((each) => ({ ...each, id: `${each.id}b` }))] });
    expect(twice).toHaveLength(51);
    expect(twice.at(-1)!.says).toContain('And 190 more stalls lie on others, at 190 more places.');
  });

  test('are told as from nothing while one of many is dragged about', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(29), fc.nat(60)), { maxLength: 30 }), (moves) => {
        let stalls = Array.from({ length: 30 }, (_, i) => stall(`S${i}`, 9 * i));
        for (const [i, x] of moves) {
          stalls = stalls.map((one, k) => (k === i ? stall(one.id, 4.5 * x) : one));
          const told = found({ stalls }).map(({ about }) => about.join(' '));
          // Stalls of one row overlap where their middles are less than a width apart.
          const first = stalls.map((b, k) => stalls.slice(0, k).findIndex((a) => Math.abs(a.at[0] - b.at[0]) < 9));
          const expected = stalls.flatMap((a, k) => {
            const others = stalls.filter((_, j) => first[j] === k).map(({ id }) => id);
            return others.length === 0 ? [] : [[...others, a.id].join(' ')];
          });
          expect(told).toEqual(expected);
        }
      }),
      { numRuns: 60 },
    );
  });
});

describe('what stands', () => {
  test('columns in one place, equipment in a stall, on a column and in the place of other equipment', () => {
    expect(found({ columns: [column('C1', 0), column('C2', 1)] })).toEqual([]);
    expect(found({ columns: [column('C1', 0), column('C2', 0.25)] })).toMatchObject([
      { rule: 'overlap', about: ['C2', 'C1'], value: 0.75 },
    ]);
    const [stands, twin, ...more] = found({
      stalls: [stall('S1', 0)],
      columns: [column('C1', 40)],
      equipment: [
        panel('P1', 0, 9),
        panel('P2', 40, 0),
        panel('P3', 39.5, 0.2),
        panel('P4', 60, 0),
        panel('P5', 63, 0),
      ],
    });
    expect(stands).toMatchObject({ severity: 'fail', rule: 'overlap', about: ['P1', 'S1'] });
    expect(stands!.says).toContain('P1 stands in stall S1');
    expect(twin!.says).toContain('P2 stands on column C1');
    expect(more.map(({ about }) => about)).toEqual([['P3', 'C1', 'P2']]);
  });
});

describe('raceways', () => {
  const trunk = raceway('R1', [0, 0, 11], [60, 0, 11]);

  test('laid along one another are told with the length; crossing, meeting, above and beside are not', () => {
    expect(found({ raceways: [trunk, raceway('R2', [30, -9, 11], [30, 9, 11])] })).toEqual([]);
    expect(found({ raceways: [trunk, raceway('R2', [60, 0, 11], [90, 0, 11])] })).toEqual([]);
    expect(found({ raceways: [trunk, raceway('R2', [0, 0, 12], [60, 0, 12])] })).toEqual([]);
    expect(found({ raceways: [trunk, raceway('R2', [0, 0.5, 11], [60, 0.5, 11])] })).toEqual([]);
    expect(found({ raceways: [trunk, raceway('R2', [80, 0, 11], [50, 0, 11], [50, 9, 11])] })).toMatchObject([
      { severity: 'warn', rule: 'raceways-overlap', about: ['R2', 'R1'], value: 10, unit: 'ft' },
    ]);
    expect(found({ raceways: [trunk, { ...trunk, id: 'R2' }] })[0]).toMatchObject({ value: 60 });
  });

  test('the length is the same whichever way each is drawn', () => {
    const points = fc.array(fc.tuple(fc.integer({ max: 6, min: 0 }), fc.integer({ max: 3, min: 0 }), fc.constant(11)), {
      minLength: 2,
      maxLength: 5,
    });
    fc.assert(
      fc.property(points, points, (a, b) => {
        expect(lengthInPlaceOf(a, b)).toBeCloseTo(lengthInPlaceOf(b, [...a].reverse()), 9);
      }),
    );
  });
});

test('how far rectangles lie into each other agrees with the area they share, and turns with them', () => {
  const part = fc.double({ min: 1, max: 20, noNaN: true });
  fc.assert(
    fc.property(part, part, part, part, part, part, (x, y, w, h, u, v) => {
      const a = rectangleAt([0, 0], [w, h], 0);
      const b = rectangleAt([x - 10, y - 10], [u, v], 0);
      const shared = areaOf(clippedToBox(b, { minX: -w / 2, maxX: w / 2, minY: -h / 2, maxY: h / 2 }));
      const depth = overlapDepth(a, b);
      expect(depth > 1e-9).toBe(shared > 1e-7);
      const turn = (points: readonly (readonly [number, number])[]) =>
        points.map(([px, py]) => [0.6 * px - 0.8 * py, 0.8 * px + 0.6 * py] as const);
      expect(overlapDepth(turn(a), turn(b))).toBeCloseTo(depth, 9);
    }),
  );
});
