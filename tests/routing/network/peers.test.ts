import fc from 'fast-check';
import dijkstra from 'graphology-shortest-path/dijkstra';
import createGraph from 'ngraph.graph';
import { aStar } from 'ngraph.path';
import { describe, expect, test } from 'vitest';
import type { RacewayGraph } from '../../../routing/network/graph.ts';
import type { Run } from '../../../routing/network/run.ts';
import { runsOf } from '../../../routing/network/runs.ts';
import { drawings, siteOfDrawing, squareDrawings, streetDrawings } from './random-sites.ts';
import { tappedGraph } from './tapped-graph.ts';

const along = (graph: RacewayGraph, nodes: readonly string[]): number =>
  nodes.slice(1).reduce((sum, node, i) => {
    const between = graph.edges(nodes[i]!, node).map((edge) => graph.getEdgeAttribute(edge, 'length'));
    return sum + Math.min(...between);
  }, 0);

function byGraphology(graph: RacewayGraph): number | null {
  const nodes = dijkstra.bidirectional(graph, 'entry', 'box', 'length');
  return nodes && along(graph, nodes);
}

function byNgraph(graph: RacewayGraph): number | null {
  const peer = createGraph<null, number>({ multigraph: true });
  graph.forEachNode((node) => peer.addNode(node, null));
  graph.forEachEdge((_, { length }, a, b) => peer.addLink(a, b, length));
  const nodes = aStar<null, number>(peer, { distance: (_a, _b, link) => link.data }).find('entry', 'box');
  return nodes.length === 0 ? null : along(graph, nodes.map(({ id }) => String(id)).reverse());
}

describe('on the same network', () => {
  test('run lengths equal those of graphology-shortest-path and of ngraph.path', () => {
    let compared = 0;
    fc.assert(
      fc.property(drawings, (drawing) => {
        const site = siteOfDrawing(drawing);
        runsOf(site).runs.forEach((run, i) => {
          const graph = tappedGraph(site, site.chargers[i]!);
          if (!graph) {
            expect(run.length).toBeNull();
            return;
          }
          compared++;
          expect(run.length).toBeCloseTo(byGraphology(graph)!, 6);
          expect(run.length).toBeCloseTo(byNgraph(graph)!, 6);
        });
      }),
      { numRuns: 150 },
    );
    expect(compared).toBeGreaterThan(300);
  });
});

interface Listed {
  readonly bends: number;
  /** Raceways read from the box back to the equipment; a joint's gap parts two stretches of one raceway. */
  readonly ids: readonly string[];
}

/** Every shortest way from entry to box, by walking all tight edges backwards; null where there are very many. */
function allShortest(graph: RacewayGraph, length: number): Listed[] | null {
  const distances = new Map<string, number>();
  graph.forEachNode((node) => distances.set(node, Number.POSITIVE_INFINITY));
  distances.set('entry', 0);
  // Bellman and Ford: slow, and needs no queue to be right.
  for (let changed = true; changed; ) {
    changed = false;
    graph.forEachEdge((_, { length: w }, a, b) => {
      for (const [p, q] of [
        [a, b],
        [b, a],
      ] as const)
        if (distances.get(p)! + w < distances.get(q)! - 1e-12) {
          distances.set(q, distances.get(p)! + w);
          changed = true;
        }
    });
  }
  expect(distances.get('box')).toBeCloseTo(length, 6);
  const listed: Listed[] = [];
  let steps = 0;
  const walk = (
    node: string,
    way: readonly string[],
    ids: readonly (string | null)[],
    seen: ReadonlySet<string>,
  ): boolean => {
    if (++steps > 20_000) return false;
    if (node === 'entry') {
      listed.push({ bends: bendsAlong(graph, way), ids: parted(ids.slice(1, -1)) });
      return true;
    }
    for (const edge of graph.edges(node)) {
      const { length: w, raceway } = graph.getEdgeAttributes(edge);
      const before = graph.opposite(node, edge);
      if (seen.has(before) || distances.get(before)! + w > distances.get(node)! + 1e-8) continue;
      // An edge of no length is a place met twice, not a step.
      if (
        !walk(
          before,
          [...way, before],
          w < 1e-7 && raceway !== null ? ids : [...ids, raceway],
          new Set(seen).add(before),
        )
      )
        return false;
    }
    return true;
  };
  return walk('box', ['box'], [], new Set(['box'])) ? listed : null;
}

/** Without the taps' and the gaps' nulls, and without repeats, but those that a gap parts. */
function parted(ids: readonly (string | null)[]): string[] {
  return ids.flatMap((id, i) => (id === null || id === ids[i - 1] ? [] : [id]));
}

function bendsAlong(graph: RacewayGraph, way: readonly string[]): number {
  const points = way.map((node) => graph.getNodeAttributes(node));
  const legs = points
    .slice(1)
    .map(({ x, y, z }, i) => [x - points[i]!.x, y - points[i]!.y, z - points[i]!.z] as const)
    .filter((leg) => Math.hypot(...leg) > 1e-7);
  return legs.slice(1).filter((leg, i) => {
    const before = legs[i]!;
    const cosine =
      leg.reduce((sum, c, axis) => sum + c * before[axis]!, 0) / (Math.hypot(...leg) * Math.hypot(...before));
    return Math.acos(Math.min(1, Math.max(-1, cosine))) > Math.PI / 180;
  }).length;
}

const idsOf = ({ legs }: Run): string[] => {
  const inner = legs.slice(legs[0] === null ? 1 : 0, legs.at(-1) === null ? -1 : undefined);
  return parted(inner.toReversed());
};

const first = (a: readonly string[], b: readonly string[]): number => {
  for (let i = 0; i < Math.min(a.length, b.length); i++) if (a[i] !== b[i]) return a[i]! < b[i]! ? -1 : 1;
  return a.length - b.length;
};

test('of all equally short ways the run takes one of fewest bends, and of these the first by ids from the box', () => {
  let several = 0;
  let decided = 0;
  fc.assert(
    fc.property(fc.oneof(squareDrawings, streetDrawings), (drawing) => {
      const site = siteOfDrawing(drawing);
      runsOf(site).runs.forEach((run, i) => {
        const graph = tappedGraph(site, site.chargers[i]!);
        if (!graph || run.length === null) return;
        const listed = allShortest(graph, run.length);
        if (!listed) return;
        const bends = Math.min(...listed.map((way) => way.bends));
        expect(run.bends).toBe(bends);
        const straightest = listed.filter((way) => way.bends === bends).map(({ ids }) => ids);
        expect(idsOf(run)).toEqual(straightest.toSorted(first)[0]);
        if (new Set(listed.map((way) => way.bends)).size > 1) several++;
        if (new Set(straightest.map((ids) => ids.join())).size > 1) decided++;
      });
    }),
    { numRuns: 250, seed: 11 },
  );
  // The site families are such that both rules have something to decide.
  expect(several).toBeGreaterThan(20);
  expect(decided).toBeGreaterThan(20);
});
