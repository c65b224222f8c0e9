import * as v from 'valibot';
import { sharedRoute } from '../../../routing/propose/shared-route.ts';
import { nonNegative, wholeNumber, wholePositive } from './fields.ts';
import { answer, kind, refuse } from './kind.ts';

const schema = v.strictObject({
  /** How many nodes there are; they are numbered from 0. */
  nodes: wholePositive,
  root: wholeNumber,
  terminals: v.array(wholeNumber),
  edges: v.array(v.strictTuple([wholeNumber, wholeNumber, nonNegative, nonNegative])),
  price: v.strictObject({
    raceway: nonNegative,
    conductor: nonNegative,
    conduit: nonNegative,
    circuitsPerConduit: wholePositive,
  }),
});

export const routeKind = kind(schema, (wish, tell) => {
  const { nodes, root, terminals, edges, price } = wish;
  const stray = (node: number): string => `there is no node ${node}; they are numbered 0 to ${nodes - 1}`;
  if (root >= nodes) return refuse('root', stray(root));
  for (const [k, node] of terminals.entries()) if (node >= nodes) return refuse(`terminals[${k}]`, stray(node));
  for (const [e, [u, w]] of edges.entries())
    if (u >= nodes || w >= nodes) return refuse(`edges[${e}]`, stray(Math.max(u, w)));
  const lost = firstUnreached(wish);
  if (lost !== undefined)
    return refuse(`terminals[${lost}]`, `node ${terminals[lost]} cannot be reached from the root`);
  const found = sharedRoute(wish);
  tell(() => ({
    find: 'cost of shared routes',
    formula:
      'sum over edges that carry q circuits of length x (raceway x multiplier + conductor x q + conduit x q / circuits per conduit, rounded up)',
    values: { ...price, circuits: terminals.length, bound: found.bound },
    result: found.cost,
    source:
      'local search, with a Lagrangian bound (Held, Wolfe and Crowder 1974) that proves how far from best it can be',
  }));
  return answer(found);
});

/** Index of the first terminal that no way leads to. */
function firstUnreached({ nodes, root, terminals, edges }: v.InferOutput<typeof schema>): number | undefined {
  const next: number[][] = Array.from({ length: nodes }, () => []);
  for (const [u, w] of edges) {
    next[u]?.push(w);
    next[w]?.push(u);
  }
  const seen = new Set([root]);
  for (const node of seen) for (const other of next[node] ?? []) seen.add(other);
  const lost = terminals.findIndex((node) => !seen.has(node));
  return lost < 0 ? undefined : lost;
}
