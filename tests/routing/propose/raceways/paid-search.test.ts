import fc from 'fast-check';
import { expect, test } from 'vitest';
import { searchPaid } from '../../../../routing/propose/raceways/paid-search.ts';
import type { Ways } from '../../../../routing/propose/raceways/ways-anew.ts';
import { type EdgeRow, homeGraph } from '../../../../routing/propose/shared/home-graph.ts';
import type { Point3 } from '../../../../routing/site/site.ts';

const SIDE = 6;
const PRICE = { raceway: 3, conductor: 2, conduit: 6, circuitsPerConduit: 3 };

/** A square of streets 10 ft apart, entered at its corner. */
function streets() {
  const points: Point3[] = [];
  const edges: EdgeRow[] = [];
  for (let i = 0; i < SIDE; i++)
    for (let j = 0; j < SIDE; j++) {
      const node = points.push([10 * i, 10 * j, 11]) - 1;
      if (j > 0) edges.push([node - 1, node, 10, 1]);
      if (i > 0) edges.push([node - SIDE, node, 10, 1]);
    }
  return { points, edges, graph: homeGraph(points.length, edges) };
}

const { points, edges, graph } = streets();

/** Along one way first, then the other. */
function straightTo(terminal: number, alongFirst: boolean): number[] {
  const [i, j] = [Math.floor(terminal / SIDE), terminal % SIDE];
  const nodes = [0];
  const along = (): void => {
    for (let k = 0; k < i; k++) nodes.push(nodes.at(-1)! + SIDE);
  };
  if (alongFirst) along();
  for (let k = 0; k < j; k++) nodes.push(nodes.at(-1)! + 1);
  if (!alongFirst) along();
  return nodes
    .slice(1)
    .map((node, k) => edges.findIndex(([a, b]) => a === Math.min(node, nodes[k]!) && b === Math.max(node, nodes[k]!)));
}

/** A price that no weight a foot tells: forks and corners of what is drawn, beside its feet. */
function priced(ways: Ways): number {
  const drawn = [...new Set(ways.flat())];
  const at = new Map<number, number[]>();
  for (const e of drawn) for (const node of [edges[e]![0], edges[e]![1]]) at.set(node, [...(at.get(node) ?? []), e]);
  const corners = [...at.values()].filter((own) => own.length === 2 && isAlong(own[0]!) !== isAlong(own[1]!)).length;
  const forks = [...at.values()].filter((own) => own.length > 2).length;
  return drawn.length * 30 + corners * 25 + forks * 60 + ways.reduce((sum, way) => sum + 4 * way.length, 0);
}

const isAlong = (e: number): boolean => edges[e]![1] - edges[e]![0] === SIDE;

const terminals = fc.uniqueArray(fc.integer({ min: 1, max: SIDE * SIDE - 1 }), { minLength: 2, maxLength: 8 });

const problemOf = (ends: readonly number[], fails: (ways: Ways) => number = () => 0) => ({
  graph,
  points,
  root: 0,
  terminals: ends,
  price: PRICE,
  isNew: edges.map(() => true),
  judge: (ways: Ways) => ({ cost: priced(ways), fails: () => fails(ways) }),
});

const poolOf = (ends: readonly number[]): Ways[] => [true, false].map((first) => ends.map((e) => straightTo(e, first)));

test('more answers that are judged never give what is dearer, and the best of those it began from is the most', () => {
  fc.assert(
    fc.property(terminals, (ends) => {
      const pool = poolOf(ends);
      const costs = [0, 5, 20, 300].map((rounds) => searchPaid(problemOf(ends), pool, rounds, () => true).cost);
      expect(costs[0]).toBe(Math.min(...pool.map(priced)));
      for (const [i, cost] of costs.slice(1).entries()) expect(cost).toBeLessThanOrEqual(costs[i]!);
    }),
    { numRuns: 12 },
  );
});

test('stopped early it gives what it had', () => {
  fc.assert(
    fc.property(terminals, fc.integer({ min: 0, max: 60 }), (ends, asked) => {
      const after = (times: number) => {
        let left = times;
        return searchPaid(problemOf(ends), poolOf(ends), 100, () => left-- > 0).cost;
      };
      expect(after(asked + 20)).toBeLessThanOrEqual(after(asked));
    }),
    { numRuns: 12 },
  );
});

test('every answer has a way to each end, and fails no more than the one it began from', () => {
  fc.assert(
    fc.property(terminals, fc.integer({ min: 0, max: edges.length - 1 }), (ends, shut) => {
      const fails = (ways: Ways): number => ways.filter((way) => way.includes(shut)).length;
      const pool = poolOf(ends);
      const { ways } = searchPaid(problemOf(ends, fails), pool, 60, () => true);
      expect(fails(ways)).toBeLessThanOrEqual(fails(pool[0]!));
      ways.forEach((way, k) => {
        let node = 0;
        for (const e of way) node = edges[e]![0] === node ? edges[e]![1] : edges[e]![0];
        expect(node).toBe(ends[k]);
      });
    }),
    { numRuns: 12 },
  );
});

test('ways are drawn as the raceways that come to less', () => {
  fc.assert(
    fc.property(terminals, (ends) => {
      const plain = problemOf(ends);
      const problem = {
        ...plain,
        judge: (ways: Ways, joining: string) => ({
          cost: priced(ways) - (joining === 'as circuits go' ? 1 : 0),
          fails: () => 0,
        }),
      };
      const { ways, joining, cost } = searchPaid(problem, poolOf(ends), 0, () => true);
      expect(joining).toBe('as circuits go');
      expect(cost).toBe(priced(ways) - 1);
    }),
    { numRuns: 12 },
  );
});

test('where all circuits through a stretch would do better by another, they are laid so at once', () => {
  // Three circuits share the street along the edge; only all of them together are cheaper by the next one.
  const ends = [4 * SIDE + 1, 5 * SIDE + 1, 5 * SIDE + 2];
  const along = ends.map((end) => straightTo(end, true));
  const shut = along[0]![1]!;
  const problem = {
    ...problemOf(ends),
    judge: (ways: Ways) => {
      const through = ways.filter((way) => way.includes(shut)).length;
      return {
        cost: priced(ways) + (through === 0 ? -200 : 0) + (through === 1 || through === 2 ? 200 : 0),
        fails: () => 0,
      };
    },
  };
  const { ways } = searchPaid(problem, [along], 40, () => true);
  expect(ways.filter((way) => way.includes(shut))).toEqual([]);
});

test('where parts of what is due by wholes are in the cost, that is given for which least is due, and more never give more', () => {
  const due = (ways: Ways): number => Math.ceil(priced(ways) / 40) + (new Set(ways.flat()).size % 3) * 2;
  fc.assert(
    fc.property(terminals, (ends) => {
      let least = Number.POSITIVE_INFINITY;
      const judge = (ways: Ways) => {
        least = Math.min(least, due(ways));
        return { cost: priced(ways), due: due(ways), fails: () => 0 };
      };
      let before = Number.POSITIVE_INFINITY;
      for (const rounds of [0, 5, 40]) {
        least = Number.POSITIVE_INFINITY;
        const found = searchPaid({ ...problemOf(ends), judge }, poolOf(ends), rounds, () => true);
        expect(found.due).toBe(least);
        expect(due(found.ways)).toBe(least);
        expect(least).toBeLessThanOrEqual(before);
        before = least;
      }
    }),
    { numRuns: 12 },
  );
});
