import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type SharedRouteWish, sharedRoute } from '../../../routing/propose/shared-route.ts';

type Edges = SharedRouteWish['edges'];

/** The edges of all paths from a node to another that pass no node twice. */
function pathsBetween(edges: Edges, from: number, to: number, passed: readonly number[] = [from]): number[][] {
  if (from === to) return [[]];
  return edges.flatMap(([u, v], e) => {
    const next = u === from ? v : v === from ? u : from;
    if (passed.includes(next)) return [];
    return pathsBetween(edges, next, to, [...passed, next]).map((rest) => [e, ...rest]);
  });
}

/** Of routes, from the definition and nothing of ours. */
function costOf({ edges, price }: SharedRouteWish, paths: readonly (readonly number[])[]): number {
  return edges.reduce((sum, [, , length, multiplier], e) => {
    const q = paths.filter((path) => path.includes(e)).length;
    const conduits = Math.ceil(q / price.circuitsPerConduit);
    return q === 0 ? sum : sum + length * (price.raceway * multiplier + price.conductor * q + price.conduit * conduits);
  }, 0);
}

/** The least cost of all ways to choose paths, by going through all of them. */
function leastOf(wish: SharedRouteWish): number {
  const choices = wish.terminals.map((terminal) => pathsBetween(wish.edges, wish.root, terminal));
  let best = Number.POSITIVE_INFINITY;
  const choose = (k: number, chosen: readonly (readonly number[])[]): void => {
    if (k === choices.length) best = Math.min(best, costOf(wish, chosen));
    else for (const path of choices[k]!) choose(k + 1, [...chosen, path]);
  };
  choose(0, []);
  return best;
}

const NODES = 5;
const weight = fc.constantFrom(0, 0, 1, 4, 22);
const price = fc.record({
  raceway: weight,
  conductor: weight,
  conduit: weight,
  circuitsPerConduit: fc.integer({ min: 1, max: 3 }),
});
const node = fc.nat({ max: NODES - 1 });
/** Small graphs with edges of no length, of no or much raceway, side by side and from a node to itself; some in parts. */
const smallWish: fc.Arbitrary<SharedRouteWish> = fc.record({
  nodes: fc.constant(NODES),
  root: node,
  terminals: fc.array(node, { minLength: 1, maxLength: 3 }),
  edges: fc.array(fc.tuple(node, node, fc.constantFrom(0, 3, 10, 27, 27), fc.constantFrom(0, 1, 1, 1.6, 40)), {
    minLength: 3,
    maxLength: 8,
  }),
  price,
});

describe('small graphs, against all choices of paths', () => {
  test('what is found costs the least there is, no bound is over it, and every search ends', () => {
    fc.assert(
      fc.property(smallWish, (wish) => {
        const least = leastOf(wish);
        if (least === Number.POSITIVE_INFINITY) {
          expect(() => sharedRoute(wish)).toThrow(RangeError);
          return;
        }
        const found = sharedRoute(wish, { rounds: 150, steps: 60, keep: 4 });
        expect(found.cost).toBeCloseTo(least, 6);
        expect(found.bound).toBeLessThanOrEqual(least + 1e-6);
        for (const { cost, edges, paths } of [found, ...found.others]) {
          expect(cost).toBeCloseTo(costOf(wish, edges), 6);
          expect(cost).toBeGreaterThanOrEqual(found.cost - 1e-9);
          paths.forEach((path, k) => {
            expect([path[0], path.at(-1)]).toEqual([wish.root, wish.terminals[k]]);
            expect(new Set(path).size).toBe(path.length);
          });
        }
      }),
      { numRuns: 300 },
    );
  });
});

const SIDE = 6;
/** A square of lines 27 ft apart, entered at a corner over an edge of `lead` feet. */
const square = (terminals: readonly number[], weights: SharedRouteWish['price'], lead: number): SharedRouteWish => ({
  nodes: SIDE * SIDE + 1,
  root: SIDE * SIDE,
  terminals,
  edges: [
    [SIDE * SIDE, 0, lead, 1],
    ...Array.from({ length: SIDE * SIDE }, (_, n): [number, number, number, number][] => [
      ...(n % SIDE < SIDE - 1 ? [[n, n + 1, 27, 1] as [number, number, number, number]] : []),
      ...(n + SIDE < SIDE * SIDE ? [[n, n + SIDE, 27, 1] as [number, number, number, number]] : []),
    ]).flat(),
  ],
  price: weights,
});
const SPREAD = [3, 8, 11, 17, 20, 22, 27, 29, 30, 33, 35];

const hostile = [
  { raceway: 0, conductor: 0, conduit: 0, circuitsPerConduit: 3 },
  { raceway: 1, conductor: 0, conduit: 0, circuitsPerConduit: 3 },
  { raceway: 0, conductor: 1, conduit: 0, circuitsPerConduit: 3 },
  { raceway: 0, conductor: 0, conduit: 1, circuitsPerConduit: 3 },
  { raceway: 1e-9, conductor: 1e-9, conduit: 1e9, circuitsPerConduit: 1000 },
  { raceway: 1e9, conductor: 1e-9, conduit: 0, circuitsPerConduit: 1 },
];

describe('prices that leave much undecided, and ends that lie anywhere', () => {
  test.each(hostile)('%o', (weights) => {
    for (const terminals of [
      [7],
      [7, 7],
      [SIDE * SIDE, 7],
      [SIDE * SIDE, SIDE * SIDE],
      [0, 0, 0],
      SPREAD,
      SPREAD.map(() => 35),
    ])
      for (const lead of [0, 10]) {
        const wish = square(terminals, weights, lead);
        const { cost, bound, edges } = sharedRoute(wish, { rounds: 500, steps: 120 });
        const own = costOf(wish, edges);
        expect(Math.abs(cost - own)).toBeLessThanOrEqual(1e-9 * own);
        expect(bound).toBeLessThanOrEqual(cost);
        expect(bound).toBeGreaterThanOrEqual(0);
      }
  });

  test('an edge of no length changes neither the cost nor what is proved of it', () => {
    const weights = { raceway: 6, conductor: 6, conduit: 4, circuitsPerConduit: 3 };
    const at = square(SPREAD, weights, 0);
    const without = { ...at, root: 0, edges: at.edges.slice(1) };
    const [a, b] = [at, without].map((wish) => sharedRoute(wish, { rounds: 3000, steps: 400 }));
    expect(a!.cost).toBeCloseTo(b!.cost, 6);
    expect(a!.bound / b!.bound).toBeCloseTo(1, 3);
  });
});

test('the next best answers are all different and come in order', () => {
  const weights = { raceway: 6, conductor: 6, conduit: 4, circuitsPerConduit: 3 };
  const { cost, edges, others } = sharedRoute(square(SPREAD, weights, 10), { rounds: 2000, steps: 0, keep: 12 });
  expect(others).toHaveLength(11);
  const costs = [cost, ...others.map((one) => one.cost)];
  expect(costs).toEqual([...costs].sort((a, b) => a - b));
  const drawn = [edges, ...others.map((one) => one.edges)].map((ways) => [...new Set(ways.flat())].sort().join(' '));
  expect(new Set(drawn).size).toBe(drawn.length);
});

test('the same lot numbered another way gets the same routes at the same cost, also from a short search', () => {
  const lots = fc.record({
    terminals: fc.array(fc.nat({ max: SIDE * SIDE }), { minLength: 2, maxLength: 12 }),
    gone: fc.array(fc.integer({ min: 1, max: 2 * SIDE * (SIDE - 1) }), { maxLength: 6 }),
    nodes: fc.shuffledSubarray(
      Array.from({ length: SIDE * SIDE + 1 }, (_, n) => n),
      { minLength: SIDE * SIDE + 1 },
    ),
    turned: fc.func(fc.boolean()),
  });
  fc.assert(
    fc.property(lots, ({ terminals, gone, nodes, turned }) => {
      const whole = square(terminals, { raceway: 6, conductor: 6, conduit: 4, circuitsPerConduit: 3 }, 10);
      const wish = { ...whole, edges: whole.edges.filter((_, e) => !gone.includes(e)) };
      fc.pre(Number.isFinite(reach(wish)));
      const at = (node: number): number => nodes[node]!;
      const other = {
        ...wish,
        root: at(wish.root),
        terminals: terminals.map(at).reverse(),
        edges: wish.edges
          .map(
            ([u, v, ...rest], e) =>
              (turned(e) ? [at(v), at(u), ...rest] : [at(u), at(v), ...rest]) as [number, number, number, number],
          )
          .sort(([a], [b]) => a - b),
      };
      const [one, two] = [wish, other].map((each) => sharedRoute(each, { rounds: 10, steps: 30 }));
      expect(two!.cost).toBe(one!.cost);
      expect(two!.bound).toBe(one!.bound);
    }),
    { numRuns: 60 },
  );
});

/** Infinite where a terminal cannot be reached. */
function reach({ root, terminals, edges }: SharedRouteWish): number {
  const seen = new Set([root]);
  for (const from of seen)
    for (const [u, v] of edges) {
      if (u === from) seen.add(v);
      if (v === from) seen.add(u);
    }
  return terminals.every((terminal) => seen.has(terminal)) ? 0 : Number.POSITIVE_INFINITY;
}
