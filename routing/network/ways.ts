import { kept } from '../kept/kept.ts';
import { addTo } from '../lists/grouping.ts';
import type { Equipment, Point3 } from '../site/site.ts';
import { type Distances, distancesFrom } from './distances.ts';
import type { Network } from './network.ts';
import { type Straightest, stepsFrom, straightestOf } from './straightest.ts';
import { type Tap, tapsWithin } from './taps.ts';

/** What leads from one piece of equipment into the network: one pass that serves everything it feeds. */
export interface WaysFrom {
  readonly network: Network;
  readonly entry: Point3;
  readonly taps: readonly Tap[];
  /** By component of the network, for those that a tap reaches. */
  readonly parts: ReadonlyMap<number, WaysInPart>;
}

/** The shortest ways to every node of one component, and the taps that lead into it. */
export interface WaysInPart {
  readonly taps: readonly Tap[];
  readonly distances: Distances;
  readonly straightest: Straightest;
}

/**
 * The ways from a piece of equipment: a tap to every raceway within `tapLimit` feet of its entry, and from these the
 * shortest ways through what they reach.
 */
export const waysFrom = (network: Network, equipment: Equipment, tapLimit: number): WaysFrom =>
  waysOf(equipment, network, tapLimit);

const waysOf = kept(
  (equipment: Equipment, network: Network, tapLimit: number): WaysFrom =>
    workOutWays(network, equipment.entry, tapLimit),
);

function workOutWays(network: Network, entry: Point3, tapLimit: number): WaysFrom {
  const taps = tapsWithin(network, entry, tapLimit);
  const byComponent = new Map<number, Tap[]>();
  for (const tap of taps) {
    const component = componentOf(network, tap);
    addTo(byComponent, component, tap);
  }
  const parts = new Map<number, WaysInPart>();
  for (const [component, own] of byComponent) {
    const base = network.firstNode[component]!;
    const steps = own.flatMap((tap) => stepsFrom(network, entry, tap, base));
    const seeds = steps.map(({ node, distance }) => ({ node: node + base, distance }));
    const distances = distancesFrom(network, component, seeds);
    parts.set(component, { taps: own, distances, straightest: straightestOf(network, distances, steps) });
  }
  return { network, entry, taps, parts };
}

/** Component of the network that a tap leads into. */
export const componentOf = ({ component, legs }: Network, tap: Tap): number => component[legs.rank[tap.leg]!]!;
