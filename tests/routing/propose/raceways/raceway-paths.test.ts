import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Joining, racewayPaths } from '../../../../routing/propose/raceways/raceway-paths.ts';
import type { Point3 } from '../../../../routing/site/site.ts';

const pathsOf = (
  edges: readonly (readonly [number, number])[],
  joining: Joining = 'straight on',
  circuitsOn: (edge: number) => readonly number[] = () => [],
): Point3[][] =>
  racewayPaths(
    edges.map(([a, b], e) => ({ a: points[a]!, b: points[b]!, circuits: circuitsOn(e) })),
    joining,
  );

const SIDE = 5;
const points: Point3[] = Array.from({ length: SIDE * SIDE }, (_, n) => [n % SIDE, Math.floor(n / SIDE), 11]);
const all = points.flatMap((_, n): [number, number][] => [
  ...(n % SIDE < SIDE - 1 ? [[n, n + 1] as [number, number]] : []),
  ...(n + SIDE < points.length ? [[n, n + SIDE] as [number, number]] : []),
]);

/** The unit edges that polylines go along, each as its two ends in order. */
const edgesOn = (paths: readonly (readonly Point3[])[]): string[] =>
  paths.flatMap((path) =>
    path.slice(1).flatMap((to, i) => {
      const from = path[i]!;
      const steps = Math.abs(to[0] - from[0]) + Math.abs(to[1] - from[1]);
      return Array.from({ length: steps }, (_, k) => {
        const at = (s: number): string =>
          [0, 1].map((axis) => from[axis]! + ((to[axis]! - from[axis]!) * s) / steps).join(',');
        return [at(k), at(k + 1)].sort().join(' ');
      });
    }),
  );

test('a trunk with a leg off it is two raceways, with vertices only where they turn or end', () => {
  const trunk: [number, number][] = [
    [0, 1],
    [1, 2],
    [2, 3],
    [2, 7],
    [7, 12],
  ];
  expect(pathsOf(trunk)).toEqual([
    [
      [0, 0, 11],
      [3, 0, 11],
    ],
    [
      [2, 0, 11],
      [2, 2, 11],
    ],
  ]);
});

test('a corner that nothing else meets is a bend of one raceway, a crossing is two, a ring is one', () => {
  expect(
    pathsOf([
      [0, 1],
      [1, 6],
    ]),
  ).toHaveLength(1);
  expect(
    pathsOf([
      [5, 6],
      [6, 7],
      [1, 6],
      [6, 11],
    ]),
  ).toHaveLength(2);
  expect(
    pathsOf([
      [0, 1],
      [1, 6],
      [6, 5],
      [5, 0],
    ]),
  ).toHaveLength(1);
});

test('polylines go along every edge once, and along nothing else', () => {
  fc.assert(
    fc.property(fc.subarray(all), fc.constantFrom<Joining>('straight on', 'as circuits go'), (edges, joining) => {
      const wanted = edges.map(([a, b]) =>
        [points[a]!, points[b]!]
          .map(([x, y]) => `${x},${y}`)
          .sort()
          .join(' '),
      );
      expect(edgesOn(pathsOf(edges, joining, (e) => [e % 3, e % 2])).sort()).toEqual(wanted.sort());
    }),
  );
});

test('a trunk that ends between two legs goes on into one of them where circuits do, and else the legs are one', () => {
  const tee: [number, number][] = [
    [5, 6],
    [6, 7],
    [7, 2],
    [7, 12],
  ];
  const circuitsOn = (e: number): readonly number[] => [[1, 2], [1, 2], [1], [2]][e]!;
  const bent = pathsOf(tee, 'as circuits go', circuitsOn);
  expect(bent.map((path) => path.length).sort()).toEqual([2, 3]);
  const straight = pathsOf(tee, 'straight on', circuitsOn);
  expect(straight.map((path) => path.length)).toEqual([2, 2]);
});
