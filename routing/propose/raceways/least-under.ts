import type { Point3 } from '../../site/site.ts';
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
  { price, low, high, ground }: FloorPrice,
  { points, edges, isNew, root, terminals, ways }: Laid,
  steps: number,
  mayGoOn: () => boolean,
): number {
  const rows = edges.map(([a, b, length, , room = 0], e): EdgeRow => {
    const [p, q] = [points[a]!, points[b]!];
    const isLevel = Math.abs(p[2] - q[2]) <= UPRIGHT * length;
    const bottom = Math.min(p[2], q[2]);
    const isHung = isNew[e] && isLevel && bottom >= 0;
    return [a, b, length * (bottom > high ? 1 : bottom < 0 ? ground : low), isHung ? 1 : 0, room];
  });
  const graph = homeGraph(points.length, rows);
  const carried = new Int32Array(rows.length);
  for (const way of ways) for (const e of way) carried[e] = carried[e]! + 1;
  const known = carried.reduce((sum, q, e) => sum + edgeCost(graph, price, e, q), 0);
  return Math.min(known, sharedBound(graph, root, terminals, price, known, steps, mayGoOn));
}
