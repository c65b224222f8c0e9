/** An undirected graph in flat arrays: the arcs of node n are `first[n] .. first[n + 1]`; arc a lies on edge `edge[a]`. */
export interface HomeGraph {
  readonly nodes: number;
  readonly edges: number;
  readonly first: Int32Array;
  readonly head: Int32Array;
  readonly edge: Int32Array;
  /** The two ends of edge e, at 2 e and 2 e + 1. */
  readonly ends: Int32Array;
  readonly length: Float64Array;
  /** Factor on the raceway's price along each edge. */
  readonly multiplier: Float64Array;
  /** So many circuits find room in conduits that lie along each edge. */
  readonly room: Float64Array;
}

export type EdgeRow = readonly [u: number, v: number, length: number, multiplier: number, room?: number];

/** Builds the arrays from rows of edges between nodes `0 .. nodes - 1`. */
export function homeGraph(nodes: number, rows: readonly EdgeRow[]): HomeGraph {
  const first = new Int32Array(nodes + 1);
  for (const [u, v] of rows) {
    first[u + 1] = (first[u + 1] as number) + 1;
    first[v + 1] = (first[v + 1] as number) + 1;
  }
  for (let n = 0; n < nodes; n++) first[n + 1] = (first[n + 1] as number) + (first[n] as number);
  const next = first.slice(0, nodes);
  const head = new Int32Array(2 * rows.length);
  const edge = new Int32Array(2 * rows.length);
  const ends = new Int32Array(2 * rows.length);
  const put = (from: number, to: number, e: number): void => {
    const a = next[from] as number;
    next[from] = a + 1;
    head[a] = to;
    edge[a] = e;
  };
  rows.forEach(([u, v], e) => {
    put(u, v, e);
    put(v, u, e);
    ends[2 * e] = u;
    ends[2 * e + 1] = v;
  });
  return {
    nodes,
    edges: rows.length,
    first,
    head,
    edge,
    ends,
    length: Float64Array.from(rows, ([, , length]) => length),
    multiplier: Float64Array.from(rows, ([, , , multiplier]) => multiplier),
    room: Float64Array.from(rows, ([, , , , room = 0]) => room),
  };
}

/** The end of an edge that is not `node`. */
export function otherEnd({ ends }: HomeGraph, edge: number, node: number): number {
  const u = ends[2 * edge] as number;
  return u === node ? (ends[2 * edge + 1] as number) : u;
}
