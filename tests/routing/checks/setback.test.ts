import fc from 'fast-check';
import { expect, test } from 'vitest';
import { setbackFindings } from '../../../routing/checks/setback-findings.ts';
import type { Boundary, Equipment, Point2, Site } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';
import { boundaryDistance } from '../../../routing/standing/boundary-distance.ts';
import { footprintOf } from '../../../routing/standing/footprint.ts';

const board = (more: Partial<Equipment> = {}): Equipment => ({
  id: 'P1',
  kind: 'panelboard',
  at: [0, 0],
  size: [4, 2, 6],
  entry: [0, 0, 6],
  ...more,
});
const line = (path: readonly Point2[], more: Partial<Boundary> = {}): Boundary => ({
  id: 'BL1',
  path: [...path],
  ...more,
});

const SOUTH: readonly Point2[] = [
  [-50, -11],
  [50, -11],
];

test('the distance is from the nearest side or corner to the nearest place of the line', () => {
  // Half of a depth of 2 ft from the middle: 11 less 1.
  expect(boundaryDistance(board(), line(SOUTH)).feet).toBeCloseTo(10, 9);
  // From the corner at [2, -1] to a corner of the line at [5, -5]: 3 and 4.
  const corner: readonly Point2[] = [
    [5, -40],
    [5, -5],
    [40, -5],
  ];
  expect(boundaryDistance(board(), line(corner)).feet).toBeCloseTo(5, 9);
  // Through it.
  const through: readonly Point2[] = [
    [-9, 0],
    [9, 0.5],
  ];
  expect(boundaryDistance(board(), line(through)).feet).toBe(0);
});

test('is what two thousand places along each side and along the line come to', () => {
  const place = fc.tuple(fc.integer({ min: -60, max: 60 }), fc.integer({ min: -60, max: 60 }));
  fc.assert(
    fc.property(fc.array(place, { minLength: 2, maxLength: 4 }), fc.integer({ min: 0, max: 359 }), (path, rotation) => {
      const one = board({ rotation });
      const { feet } = boundaryDistance(one, line(path));
      const along = (points: readonly Point2[], each: number): Point2[] =>
        points.slice(1).flatMap(([x, y], i) => {
          const [a, b] = points[i]!;
          return Array.from(
            { length: each + 1 },
            (_, k): Point2 => [a + ((x - a) * k) / each, b + ((y - b) * k) / each],
          );
        });
      const corners = footprintOf(one);
      const sides = along([...corners, corners[0]!], 40);
      const least = Math.min(...along(path, 200).flatMap(([x, y]) => sides.map(([u, v]) => Math.hypot(u - x, v - y))));
      expect(feet).toBeLessThanOrEqual(least + 1e-9);
      // Samples lie within half a step of the nearest places: a step of the line is at most 170 / 200 ft.
      expect(feet).toBeGreaterThan(least - 0.6);
    }),
    { numRuns: 60 },
  );
});

test('new equipment within a setback that the site states is told; what stands there, and a line without one, is not', () => {
  const site = (equipment: readonly Equipment[], boundary: Boundary): Site =>
    toSite({
      format: 'overrow/site',
      version: 1,
      units: 'ft',
      name: 'Setback',
      equipment: [...equipment],
      boundaries: [boundary],
    } as never);
  const asked = line(SOUTH, { kind: 'right-of-way', name: 'Elm Street', setback: 10.5 });
  const [finding, ...more] = setbackFindings(site([board()], asked));
  expect(more).toEqual([]);
  expect(finding).toMatchObject({ severity: 'fail', rule: 'setback', about: ['P1', 'BL1'], limit: 10.5 });
  expect(finding!.value).toBeCloseTo(10, 9);
  expect(finding!.says).toBe(
    'P1 stands 10\' 0" from the right-of-way line Elm Street, nearer than the setback of 10\' 6" that the site states for it.',
  );
  expect(setbackFindings(site([board({ existing: true })], asked))).toEqual([]);
  expect(setbackFindings(site([board()], line(SOUTH)))).toEqual([]);
  expect(setbackFindings(site([board()], line(SOUTH, { setback: 10 })))).toEqual([]);
});
