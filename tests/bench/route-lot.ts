import type { SharedRouteWish } from '../../routing/propose/shared-route.ts';

/**
 * A lot of lines to route circuits on, from a seed: rows of stalls 24 to 26 ft and, over an aisle (times 1.6), 36 to
 * 39 ft apart, a column each 27 ft, some lines missing, the root at the middle of the left side, ends at random nodes.
 * @throws RangeError where there are fewer nodes that can be reached than circuits
 */
export function routeLot({
  rows,
  columns,
  circuits,
  price,
  seed,
}: {
  readonly rows: number;
  readonly columns: number;
  readonly circuits: number;
  readonly price: SharedRouteWish['price'];
  readonly seed: number;
}): SharedRouteWish {
  const random = numbersFrom(seed * 7919 + 13);
  const edges: [number, number, number, number][] = [];
  for (let r = 0; r < rows; r++) {
    for (let c = 0; c + 1 < columns; c++)
      if (random() > 0.03) edges.push([r * columns + c, r * columns + c + 1, 27, 1]);
    if (r + 1 === rows) continue;
    const aisle = r % 2 === 1;
    const gap = aisle ? 36 + Math.floor(random() * 4) : 24 + Math.floor(random() * 3);
    for (let c = 0; c < columns; c++)
      if (random() > 0.2 || c === 0) edges.push([r * columns + c, (r + 1) * columns + c, gap, aisle ? 1.6 : 1]);
  }
  const root = Math.floor(rows / 2) * columns;
  const open = reached(root, edges).filter((node) => node !== root);
  if (open.length < circuits) throw new RangeError(`${open.length} nodes can be reached, for ${circuits} circuits`);
  const terminals = Array.from(
    { length: circuits },
    () => open.splice(Math.floor(random() * open.length), 1)[0] as number,
  );
  return { nodes: rows * columns, root, terminals, edges, price };
}

function numbersFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

/** All nodes that edges join to the root, by number. */
function reached(root: number, edges: readonly (readonly number[])[]): number[] {
  const near = new Map<number, number[]>();
  for (const [u, v] of edges as readonly (readonly [number, number])[]) {
    near.set(u, [...(near.get(u) ?? []), v]);
    near.set(v, [...(near.get(v) ?? []), u]);
  }
  const seen = new Set([root]);
  for (const node of seen) for (const next of near.get(node) ?? []) seen.add(next);
  return [...seen].sort((a, b) => a - b);
}
