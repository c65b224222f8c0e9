import { arcSearch } from './arc-paths.ts';
import type { HomeGraph } from './home-graph.ts';

/** Lengths and multipliers that differ by less are alike: a lot that is turned has its lengths to about so much. */
const ALIKE = 1e-3;

/** So many nodes at most are told apart by nothing but the number they came with; the others keep their order. */
const MOST_SINGLED = 64;

/**
 * A place for each node that depends on the graph, its root and its terminals, not on how they were numbered: nodes are
 * told apart by how far they are from the root, how many circuits end there, and over and over by what they are joined to
 * (color refinement; Weisfeiler and Leman 1968). Where that leaves some alike, as in a lot of two like halves, one is
 * singled out: whichever, the rest follows from it.
 */
export function steadyOrder(graph: HomeGraph, root: number, terminals: readonly number[]): Int32Array {
  const { nodes } = graph;
  const search = arcSearch(graph, 'by edge');
  search.run(root, -1, graph.length);
  const ends = new Int32Array(nodes);
  for (const terminal of terminals) ends[terminal] = (ends[terminal] as number) + 1;
  const edgeKind = ranked(
    graph.edges,
    (e, f) => alike(graph.length, e, f) || alike(graph.multiplier, e, f) || alike(graph.room, e, f),
  );
  let kind = ranked(
    nodes,
    (n, m) =>
      Number(m === root) - Number(n === root) ||
      (ends[m] as number) - (ends[n] as number) ||
      alike(search.distance, n, m),
  );
  kind = refined(graph, edgeKind, kind);
  for (let singled = 0; singled < MOST_SINGLED; singled++) {
    const first = firstShared(kind);
    if (first < 0) break;
    const next = kind.map((k, n) => (n !== first && k === kind[first] ? k + 1 : k));
    kind = refined(graph, edgeKind, next);
  }
  const order = Array.from(kind, (_, n) => n).sort((n, m) => (kind[n] as number) - (kind[m] as number) || n - m);
  const place = new Int32Array(nodes);
  order.forEach((n, i) => {
    place[n] = i;
  });
  return place;
}

/** In rounded steps, so that what is alike stays so through a third; unreached nodes come last. */
function alike(values: Float64Array, a: number, b: number): number {
  const [p, q] = [Math.round((values[a] as number) / ALIKE), Math.round((values[b] as number) / ALIKE)];
  return p === q ? 0 : p < q ? -1 : 1;
}

/** The place of each of `count` things in an order, the same for those that it does not tell apart. */
function ranked(count: number, order: (a: number, b: number) => number): Int32Array {
  const sorted = Array.from({ length: count }, (_, i) => i).sort(order);
  const rank = new Int32Array(count);
  sorted.forEach((one, i) => {
    const before = sorted[i - 1];
    rank[one] = before !== undefined && order(before, one) === 0 ? (rank[before] as number) : i;
  });
  return rank;
}

/** A node of the first kind that several are of, the one that came first; -1 where each is of its own. */
function firstShared(kind: Int32Array): number {
  const count = new Int32Array(kind.length);
  for (const k of kind) count[k] = (count[k] as number) + 1;
  const shared = count.findIndex((n) => n > 1);
  return shared < 0 ? -1 : kind.indexOf(shared);
}

/** Kinds told apart by what nodes are joined to, until that tells no more apart. */
function refined(graph: HomeGraph, edgeKind: Int32Array, before: Int32Array): Int32Array {
  const { nodes, first, head, edge } = graph;
  const joined = new Float64Array(head.length);
  let kind = before;
  for (let kinds = new Set(kind).size; kinds < nodes; ) {
    for (let a = 0; a < head.length; a++)
      joined[a] = (edgeKind[edge[a] as number] as number) * nodes + (kind[head[a] as number] as number);
    for (let n = 0; n < nodes; n++) joined.subarray(first[n], first[n + 1]).sort();
    const now = kind;
    kind = ranked(nodes, (n, m) => (now[n] as number) - (now[m] as number) || byArcs(n, m));
    const more = new Set(kind).size;
    if (more === kinds) break;
    kinds = more;
  }
  return kind;

  function byArcs(n: number, m: number): number {
    const [a, b] = [first[n] as number, first[m] as number];
    const [own, other] = [(first[n + 1] as number) - a, (first[m + 1] as number) - b];
    if (own !== other) return own - other;
    for (let i = 0; i < own; i++) {
      const differ = (joined[a + i] as number) - (joined[b + i] as number);
      if (differ !== 0) return differ;
    }
    return 0;
  }
}
