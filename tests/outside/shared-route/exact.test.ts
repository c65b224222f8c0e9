import loadHighs from 'highs';
import { expect, test } from 'vitest';
import { type EdgeRow, homeGraph } from '../../../routing/propose/shared/home-graph.ts';
import { sharedBound } from '../../../routing/propose/shared/shared-bound.ts';
import { steadyNumbers } from '../../../routing/propose/shared/steady-numbers.ts';
import { sharedRoute } from '../../../routing/propose/shared-route.ts';

/** A seeded grid of 3 by 4 places, some raceway dearer, and 3 to 5 circuits from a corner. */
function grid(seed: number) {
  const random = steadyNumbers(seed);
  const edges: EdgeRow[] = [];
  for (let x = 0; x < 4; x++)
    for (let y = 0; y < 3; y++) {
      const n = 3 * x + y;
      const join = (to: number): void =>
        void edges.push([n, to, 5 + Math.floor(10 * random()), random() < 0.3 ? 3 : 1]);
      if (x < 3) join(n + 3);
      if (y < 2) join(n + 1);
    }
  const terminals = Array.from({ length: 3 + Math.floor(3 * random()) }, () => 1 + Math.floor(11 * random()));
  const price = {
    raceway: 1 + Math.floor(10 * random()),
    conductor: 1 + Math.floor(6 * random()),
    conduit: 2 + Math.floor(9 * random()),
    circuitsPerConduit: 2 + Math.floor(2 * random()),
  };
  return { nodes: 12, root: 0, terminals, edges, price, times: edges.map(() => (random() < 0.5 ? 1.5 : 1)) };
}

/** The cost of the best routes, by HiGHS: paths of whole circuits, raceway and whole conduits on each edge. */
function exact(
  highs: Awaited<ReturnType<typeof loadHighs>>,
  { nodes, root, terminals, edges, price }: ReturnType<typeof grid>,
  times: readonly number[],
): number {
  const flows = (e: number): string[] => terminals.flatMap((_, k) => [`f${k}_${e}`, `b${k}_${e}`]);
  const cost = edges.flatMap(([, , length, multiplier], e) => [
    `${length * price.raceway * multiplier} r${e}`,
    `${length * price.conduit * times[e]!} n${e}`,
    ...flows(e).map((x) => `${length * price.conductor} ${x}`),
  ]);
  const rows = terminals.flatMap((terminal, k) =>
    Array.from({ length: nodes }, (_, node) => {
      const terms = edges.flatMap(([u, v], e) =>
        u === node ? [`+ f${k}_${e} - b${k}_${e}`] : v === node ? [`- f${k}_${e} + b${k}_${e}`] : [],
      );
      return `${terms.join(' ')} = ${(node === root ? 1 : 0) - (node === terminal ? 1 : 0)}`;
    }),
  );
  edges.forEach((_, e) => {
    rows.push(
      `${flows(e)
        .map((x) => `+ ${x}`)
        .join(' ')} - ${price.circuitsPerConduit} n${e} <= 0`,
    );
    for (const x of flows(e)) rows.push(`${x} - r${e} <= 0`);
  });
  const binaries = edges.flatMap((_, e) => [`r${e}`, ...flows(e)]).join(' ');
  const program = `Minimize\n ${cost.join(' + ')}\nSubject To\n ${rows.join('\n ')}\nBinary\n ${binaries}\nGeneral\n ${edges.map((_, e) => `n${e}`).join(' ')}\nEnd`;
  const { Status, ObjectiveValue } = highs.solve(program);
  if (Status !== 'Optimal') throw new Error(Status);
  return ObjectiveValue;
}

test('no bound is over the cost of the best routes, which the search finds', async () => {
  const highs = await loadHighs();
  let [closest, farthest] = [0, 1];
  for (let seed = 1; seed <= 8; seed++) {
    const lot = grid(seed);
    const one = lot.edges.map(() => 1);
    const best = exact(highs, lot, one);
    const { cost, bound } = sharedRoute(lot);
    expect(cost).toBeCloseTo(best, 6);
    expect(bound).toBeLessThanOrEqual(best + 1e-6);
    // And where a conduit costs more on some edges than on others.
    const dearer = exact(highs, lot, lot.times);
    const graph = homeGraph(lot.nodes, lot.edges);
    const least = sharedBound(graph, lot.root, lot.terminals, lot.price, dearer, 600, () => true, lot.times);
    expect(least).toBeLessThanOrEqual(dearer + 1e-6);
    closest = Math.max(closest, least / dearer);
    farthest = Math.min(farthest, least / dearer);
  }
  expect(closest).toBeGreaterThan(0.99);
  expect(farthest).toBeGreaterThan(0.85);
});
