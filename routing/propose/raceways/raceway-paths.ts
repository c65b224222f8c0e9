import { addTo } from '../../lists/grouping.ts';
import { distance } from '../../plane/space.ts';
import type { Point3 } from '../../site/site.ts';

/** Straighter than this, as the cosine of the turn, two edges are one leg. */
const STRAIGHT = Math.cos((1 * Math.PI) / 180);

/** A straight that a raceway is to be drawn along, and which circuits go along it. */
export interface PathStraight {
  readonly a: Point3;
  readonly b: Point3;
  readonly circuits: readonly number[];
}

/**
 * Which straights that meet at a place are one raceway: those that go straight on, or those that the most circuits go along
 * both of, for a conduit that leaves a raceway wants supports on both sides. Which comes to less the steel tells.
 */
export type Joining = 'straight on' | 'as circuits go';

/**
 * The fewest polylines through all of some straights between shared points, none twice: edges that go on at a node are one
 * raceway, and so are two that meet at a corner where no other does. Vertices only where a raceway turns or ends. Feet.
 */
export function racewayPaths(straights: readonly PathStraight[], joining: Joining = 'straight on'): Point3[][] {
  const points = [...new Set(straights.flatMap(({ a, b }) => [a, b]))];
  const place = new Map(points.map((point, i) => [point, i]));
  const edges = straights.map(({ a, b }) => [place.get(a)!, place.get(b)!] as const);
  const at = new Map<number, number[]>();
  edges.forEach(([a, b], e) => {
    for (const node of [a, b]) addTo(at, node, e);
  });
  const far = (e: number, node: number): number => (edges[e]![0] === node ? edges[e]![1] : edges[e]![0]);
  const both = (e: number, f: number): number =>
    joining === 'straight on'
      ? 0
      : straights[e]!.circuits.filter((circuit) => straights[f]!.circuits.includes(circuit)).length;
  /** The edge that goes on from an edge at a node. */
  const onward = new Map<string, number>();
  for (const [node, own] of at) {
    const free = new Set(own);
    const pair = (e: number, f: number): void => {
      onward.set(`${e} ${node}`, f);
      onward.set(`${f} ${node}`, e);
      free.delete(e);
      free.delete(f);
    };
    const turns = own.flatMap((e, i) =>
      own.slice(i + 1).map((f) => ({
        e,
        f,
        together: both(e, f),
        cosine: onwardCosine(points, far(e, node), node, far(f, node)),
      })),
    );
    for (const { e, f, together, cosine } of turns.sort((a, b) => b.together - a.together || b.cosine - a.cosine))
      if ((together > 0 || cosine >= STRAIGHT) && free.has(e) && free.has(f)) pair(e, f);
    const [e, f] = free;
    if (own.length === 2 && e !== undefined && f !== undefined) pair(e, f);
  }
  const used = new Set<number>();
  const walk = (start: number, e: number): Point3[] => {
    const way = [start];
    for (let edge: number | undefined = e, node = start; edge !== undefined && !used.has(edge); ) {
      used.add(edge);
      node = far(edge, node);
      way.push(node);
      edge = onward.get(`${edge} ${node}`);
    }
    return withoutStraights(way.map((node) => points[node]!));
  };
  const paths: Point3[][] = [];
  edges.forEach((ends, e) => {
    for (const node of ends) if (!used.has(e) && !onward.has(`${e} ${node}`)) paths.push(walk(node, e));
  });
  // What is left are rings.
  edges.forEach(([a], e) => {
    if (!used.has(e)) paths.push(walk(a, e));
  });
  return paths;
}

/** Cosine of the turn at a node: 1 straight on. */
function onwardCosine(points: readonly Point3[], from: number, node: number, to: number): number {
  const [p, q, r] = [points[from]!, points[node]!, points[to]!];
  const dot = [0, 1, 2].reduce((sum, k) => sum + (q[k]! - p[k]!) * (r[k]! - q[k]!), 0);
  return dot / (distance(p, q) * distance(q, r));
}

function withoutStraights(path: readonly Point3[]): Point3[] {
  const kept: Point3[] = [];
  path.forEach((point, i) => {
    const before = kept.at(-1);
    const after = path[i + 1];
    if (before && after && onwardCosine([before, point, after], 0, 1, 2) > 1 - 1e-12) return;
    kept.push(point);
  });
  return kept;
}
