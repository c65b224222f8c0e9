import { UndirectedGraph } from 'graphology';
import dijkstra from 'graphology-shortest-path/dijkstra';
import createGraph from 'ngraph.graph';
import { aStar } from 'ngraph.path';
import { distancesFrom } from '../../routing/network/distances.ts';
import { type Network, networkOf } from '../../routing/network/network.ts';
import { straightestOf } from '../../routing/network/straightest.ts';
import type { Point3, Raceway } from '../../routing/site/site.ts';

export interface NetworkRow {
  readonly nodes: number;
  readonly edges: number;
  readonly chargers: number;
  readonly what: string;
  /** Milliseconds for the lengths of all chargers; scaled up where only some were asked for. */
  readonly ms: number;
  /** Calls that were timed, of those that all chargers would take. */
  readonly calls: string;
  /** Times as long as the first row of the same network. */
  readonly ratio: number;
  /** Sum of the lengths of the chargers that were asked for by every method: the same, or one of them is wrong. */
  readonly checksum: number;
}

/** Chargers whose lengths every method finds, for the checksum. */
const CHECKED = 20;

/**
 * All run lengths from one panel, on raceways that cross as streets do at uneven distances: this project's one pass
 * against the same network in the peers' own graphs. The fastest of some repeats; what takes one call a charger is timed
 * on some and scaled.
 */
export function networkBench(): NetworkRow[] {
  return [...rowsOf(streets(50, 60), 401), ...rowsOf(streets(150, 200), 61)];
}

function rowsOf(raceways: readonly Raceway[], repeats: number): NetworkRow[] {
  const network = networkOf(raceways, 0.25);
  const { nodes, head } = network;
  const chargers = Array.from({ length: nodes / 10 }, (_, i) => 10 * i + 7);
  const step = Math.floor(chargers.length / CHECKED);
  const checked = chargers.filter((_, i) => i % step === 0).slice(0, CHECKED);
  const rows: NetworkRow[] = [];
  const row = (what: string, ms: number, checksum: number, calls = '1 of 1'): void => {
    const ratio = ms / (rows[0]?.ms ?? ms);
    rows.push({ nodes, edges: head.length / 2, chargers: chargers.length, what, ms, calls, ratio, checksum });
  };
  const sum = (lengthTo: (node: number) => number): number =>
    checked.reduce((total, node) => total + lengthTo(node), 0);

  const seeds = [{ node: 0, distance: 0 }];
  const ours = timed(repeats, () => distancesFrom(network, 0, seeds));
  row(
    'this project: one pass, all lengths',
    ours.ms,
    sum((node) => ours.result.distance[node]!),
  );
  const start = { tap: { leg: 0, along: 0, point: [0, 0, 11] as const, length: 0 }, node: 0, rank: -1, length: 0 };
  const steps = [{ ...start, distance: 0, heading: [0, 0, 0] as const, bends: 0 }];
  const straightest = timed(repeats, () => straightestOf(network, distancesFrom(network, 0, seeds), steps));
  row(
    'this project: the same, with fewest bends',
    straightest.ms,
    sum((node) => ours.result.distance[node]!),
  );

  const graph = graphologyOf(network);
  const along = (path: readonly string[]): number =>
    path.slice(1).reduce((total, node, i) => total + graph.getEdgeAttribute(path[i]!, node, 'length'), 0);
  const single = timed(5, () => dijkstra.singleSource(graph, '0', 'length'));
  row(
    'graphology-shortest-path: single source',
    single.ms,
    sum((node) => along(single.result[node]!)),
  );
  const calls = `${CHECKED} of ${chargers.length}`;
  const scale = chargers.length / CHECKED;
  const each = timed(3, () => checked.map((node) => dijkstra.bidirectional(graph, '0', String(node), 'length')));
  const byCall = new Map(checked.map((node, i) => [node, each.result[i]!]));
  row(
    'graphology-shortest-path: a call a charger',
    each.ms * scale,
    sum((node) => along(byCall.get(node)!)),
    calls,
  );
  const finder = aStar<null, number>(ngraphOf(network), { distance: (_a, _b, link) => link.data });
  const peer = timed(3, () => checked.map((node) => finder.find(0, node)));
  const byPeer = new Map(checked.map((node, i) => [node, peer.result[i]!.map(({ id }) => String(id))]));
  row(
    'ngraph.path: a call a charger',
    peer.ms * scale,
    sum((node) => along(byPeer.get(node)!)),
    calls,
  );
  return rows;
}

/** The least time of some repeats, milliseconds, and the last result. */
function timed<T>(repeats: number, work: () => T): { readonly ms: number; readonly result: T } {
  let result = work();
  let ms = Number.POSITIVE_INFINITY;
  for (let i = 0; i < repeats; i++) {
    const from = performance.now();
    result = work();
    ms = Math.min(ms, performance.now() - from);
  }
  return { ms, result };
}

function graphologyOf({ nodes, head, tail, twin, weight }: Network): UndirectedGraph<object, { length: number }> {
  const graph = new UndirectedGraph<object, { length: number }>();
  for (let n = 0; n < nodes; n++) graph.addNode(n);
  for (let h = 0; h < head.length; h++) if (h < twin[h]!) graph.addEdge(tail[h], head[h], { length: weight[h]! });
  return graph;
}

function ngraphOf({ nodes, head, tail, twin, weight }: Network) {
  const graph = createGraph<null, number>();
  for (let n = 0; n < nodes; n++) graph.addNode(n, null);
  for (let h = 0; h < head.length; h++) if (h < twin[h]!) graph.addLink(tail[h]!, head[h]!, weight[h]!);
  return graph;
}

/** Raceways along `rows` rows and `columns` columns, at distances that a fixed seed makes uneven. */
function streets(rows: number, columns: number): Raceway[] {
  let state = 1;
  // Park and Miller's generator: the same sites every time.
  const uneven = (): number => {
    state = (state * 16807) % 2147483647;
    return (3 * state) / 2147483647;
  };
  const ys = Array.from({ length: rows }, (_, i) => 20 * i + uneven());
  const xs = Array.from({ length: columns }, (_, i) => 9 * i + uneven());
  const raceway = (id: string, from: Point3, to: Point3): Raceway => ({
    id,
    path: [from, to],
    method: 'EMT',
    place: 'overhead',
  });
  return [
    ...ys.map((y, i) => raceway(`R${i}`, [xs[0]!, y, 11], [xs.at(-1)!, y, 11])),
    ...xs.map((x, i) => raceway(`C${i}`, [x, ys[0]!, 11], [x, ys.at(-1)!, 11])),
  ];
}
