import type { Point3 } from '../../site/site.ts';
import { arcSearch } from '../shared/arc-paths.ts';
import { type EdgeRow, homeGraph } from '../shared/home-graph.ts';
import { sharedBound } from '../shared/shared-bound.ts';
import { edgeCost, type SharedPrice } from '../shared/shared-cost.ts';

/** Prices a foot under which nothing can be had, off the ground; what lies lower than `high`, feet, costs a share of them. */
export interface FloorPrice {
  readonly price: SharedPrice;
  readonly low: number;
  readonly high: number;
  /** And what lies in the ground this share. */
  readonly ground: number;
  /** What each conduit adds to a foot of new raceway that hangs level. */
  readonly hung: number;
}

/** The shortest way to a charger, feet, and the feet of the cheapest one as floor prices count them. */
export interface FloorWay {
  readonly id: string;
  readonly feet: number;
  readonly counted: number;
}

/** The least that routes cost, and of the cheapest way to each terminal how long it is, feet, as floor prices count them. */
export interface LeastUnder {
  readonly least: number;
  readonly ways: readonly number[];
}

interface Laid {
  readonly points: readonly Point3[];
  readonly edges: readonly EdgeRow[];
  readonly isNew: readonly boolean[];
  readonly root: number;
  readonly terminals: readonly number[];
  /** Known routes, which the bound is sought up to. */
  readonly ways: readonly (readonly number[])[];
}

/** An edge that rises by more of its length than this has no supports that hang. */
const UPRIGHT = 0.1;

/**
 * What routes over a lattice cost at the least by floor prices: a proved bound, as `sharedBound` has it. Raceway is paid for
 * where it is new and level.
 */
export function leastUnder(
  { price, low, high, ground, hung }: FloorPrice,
  { points, edges, isNew, root, terminals, ways }: Laid,
  steps: number,
  mayGoOn: () => boolean,
): LeastUnder {
  const isHung = edges.map(([a, b, length], e): boolean => {
    const [p, q] = [points[a]!, points[b]!];
    return isNew[e]! && Math.abs(p[2] - q[2]) <= UPRIGHT * length && Math.min(p[2], q[2]) >= 0;
  });
  const rows = edges.map(([a, b, length, , room = 0], e): EdgeRow => {
    const bottom = Math.min(points[a]![2], points[b]![2]);
    return [a, b, length * (bottom > high ? 1 : bottom < 0 ? ground : low), isHung[e] ? 1 : 0, room];
  });
  const graph = homeGraph(points.length, rows);
  const conduitTimes = isHung.map((is) => (is && price.conduit > 0 ? 1 + hung / price.conduit : 1));
  const carried = new Int32Array(rows.length);
  for (const way of ways) for (const e of way) carried[e] = carried[e]! + 1;
  const known = carried.reduce(
    (sum, q, e) => sum + edgeCost(graph, { ...price, conduit: price.conduit * conduitTimes[e]! }, e, q),
    0,
  );
  const search = arcSearch(graph, 'by edge');
  search.run(root, -1, graph.length);
  return {
    least: Math.min(known, sharedBound(graph, root, terminals, price, known, steps, mayGoOn, conduitTimes)),
    ways: terminals.map((terminal) => search.distance[terminal]!),
  };
}
