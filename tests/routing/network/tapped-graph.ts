import { graphOf, type RacewayGraph } from '../../../routing/network/graph.ts';
import { networkOf } from '../../../routing/network/network.ts';
import type { Charger, Point3, Site } from '../../../routing/site/site.ts';

const apart = (a: Point3, b: Point3) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

/** The closest point of a path, leg by leg; the first of equals. */
function closest(path: readonly Point3[], p: Point3): { readonly point: Point3; readonly gap: number } {
  let best = { point: path[0]!, gap: Number.POSITIVE_INFINITY };
  for (let i = 0; i + 1 < path.length; i++) {
    const a = path[i]!;
    const u = path[i + 1]!.map((c, axis) => c - a[axis]!);
    const square = u.reduce((sum, c) => sum + c * c, 0);
    const dot = u.reduce((sum, c, axis) => sum + c * (p[axis]! - a[axis]!), 0);
    const t = square === 0 ? 0 : Math.min(1, Math.max(0, dot / square));
    const point: Point3 = [a[0] + t * u[0]!, a[1] + t * u[1]!, a[2] + t * u[2]!];
    const gap = apart(point, p);
    if (gap < best.gap - 1e-9) best = { point, gap };
  }
  return best;
}

/** Puts a node at a point of a raceway, on every one of its edges that the point lies on, and ties `name` to it. */
function tap(graph: RacewayGraph, raceway: string, point: Point3, name: string, length: number): void {
  const node = `${name}>${raceway}`;
  graph.addNode(node, { x: point[0], y: point[1], z: point[2] });
  const place = (n: string): Point3 => {
    const { x, y, z } = graph.getNodeAttributes(n);
    return [x, y, z];
  };
  for (const edge of graph.edges()) {
    if (graph.getEdgeAttribute(edge, 'raceway') !== raceway) continue;
    const [a, b] = graph.extremities(edge) as [string, string];
    const before = apart(place(a), point);
    const after = apart(point, place(b));
    // Beside it by more than rounding is not on it: a raceway may come back along itself a hair's breadth away.
    if (closest([place(a), place(b)], point).gap > 1e-6) continue;
    graph.dropEdge(edge);
    graph.addEdge(a, node, { length: before, raceway });
    graph.addEdge(node, b, { length: after, raceway });
  }
  if (!graph.hasNode(name)) throw new Error(`no node ${name}`);
  graph.addEdge(name, node, { length, raceway: null });
}

/**
 * A copy of the network's public graph with the nodes `entry` and `box` of one charger and all its taps put in, found
 * by going through every raceway; null where the charger should have no run.
 */
export function tappedGraph(site: Site, charger: Charger): RacewayGraph | null {
  const network = networkOf(site.raceways, site.rules.joinTolerance);
  const graph = graphOf(network).copy() as RacewayGraph;
  const entry = site.equipment.find(({ id }) => id === charger.from)!.entry;
  const box = site.drops.find(({ id }) => id === charger.drop)!.box;
  const limit = site.rules.tapLimit + 1e-9;
  graph.addNode('entry', { x: entry[0], y: entry[1], z: entry[2] });
  graph.addNode('box', { x: box[0], y: box[1], z: box[2] });
  const sorted = site.raceways.toSorted((a, b) => (a.id < b.id ? -1 : 1));
  for (const { id, path } of sorted) {
    const { point, gap } = closest(path, entry);
    if (gap <= limit) tap(graph, id, point, 'entry', gap);
  }
  const reached = new Set<string>(['entry']);
  for (const node of reached) for (const next of graph.neighbors(node)) reached.add(next);
  const connected = sorted.filter(({ id }) =>
    graph.someEdge((_, attributes, a) => attributes.raceway === id && reached.has(a)),
  );
  const ends = connected.map(({ id, path }) => ({ id, ...closest(path, box) }));
  const least = Math.min(...ends.map(({ gap }) => gap));
  const end = ends.find(({ gap }) => gap <= least + 1e-9);
  if (!end || end.gap > limit) return null;
  tap(graph, end.id, end.point, 'box', end.gap);
  return graph;
}
