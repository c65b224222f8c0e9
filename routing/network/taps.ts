import { LENGTH_SLACK } from '../plane/space.ts';
import type { Point3 } from '../site/site.ts';
import { closestAlong, distanceTo, pointOf } from './legs.ts';
import type { Network } from './network.ts';

/** A straight tap from a point to the closest point of a raceway. Lengths in feet. */
export interface Tap {
  /** Leg that it meets, and where along it. */
  readonly leg: number;
  readonly along: number;
  readonly point: Point3;
  readonly length: number;
}

/**
 * A tap to every raceway whose closest point in space is within `limit` of `from`, in the order of their ids. Where
 * several points of one raceway are equally close, the first along it is tapped.
 */
export function tapsWithin(network: Network, from: Point3, limit: number): Tap[] {
  const taps: Tap[] = [];
  const { rank } = network.legs;
  const near = legsNear(network, from, limit + LENGTH_SLACK).sort((a, b) => a - b);
  for (let k = 0; k < near.length; ) {
    const own = rank[near[k]!];
    let end = k + 1;
    while (end < near.length && rank[near[end]!] === own) end++;
    const tap = closestOf(network, from, near.slice(k, end));
    if (tap && tap.length <= limit + LENGTH_SLACK) taps.push(tap);
    k = end;
  }
  return taps;
}

/**
 * The tap to the closest raceway of those of some components, if one is within `within` feet; null if not. Of equally
 * close raceways that of the least id is tapped.
 */
export function closestTap(
  network: Network,
  from: Point3,
  within: number,
  isOpen: (component: number) => boolean,
): Tap | null {
  const { rank } = network.legs;
  const near = legsNear(network, from, within + LENGTH_SLACK).filter((i) => isOpen(network.component[rank[i]!]!));
  const tap = closestOf(network, from, near);
  return tap && tap.length <= within + LENGTH_SLACK ? tap : null;
}

/** The tap to the closest raceway of those of some components, however far it is; null where there is none. */
export function closestTapAnywhere(network: Network, from: Point3, isOpen: (component: number) => boolean): Tap | null {
  const { index } = network.legs;
  if (!index) return null;
  const far =
    Math.abs(from[2]) +
    Math.max(Math.abs(from[0] - index.minX), Math.abs(from[0] - index.maxX)) +
    Math.max(Math.abs(from[1] - index.minY), Math.abs(from[1] - index.maxY));
  for (let within = 16; ; within *= 2) {
    const all = within >= far;
    const tap = closestTap(network, from, all ? Number.MAX_VALUE : within, isOpen);
    if (tap || all) return tap;
  }
}

function legsNear(network: Network, at: Point3, within: number): number[] {
  return network.legs.index?.search(at[0] - within, at[1] - within, at[0] + within, at[1] + within) ?? [];
}

/** The tap to the closest of some legs; of equally close ones the first, so that the order of the file does not tell. */
function closestOf(network: Network, from: Point3, candidates: readonly number[]): Tap | null {
  const { legs } = network;
  const x = from[0];
  const y = from[1];
  const z = from[2];
  let least = Number.POSITIVE_INFINITY;
  const off = new Array<number>(candidates.length);
  for (let k = 0; k < candidates.length; k++) {
    const i = candidates[k]!;
    const feet = distanceTo(legs, i, closestAlong(legs, i, x, y, z), x, y, z);
    off[k] = feet;
    if (feet < least) least = feet;
  }
  let leg = -1;
  for (let k = 0; k < candidates.length; k++)
    if (off[k]! <= least + LENGTH_SLACK && (leg === -1 || candidates[k]! < leg)) leg = candidates[k]!;
  if (leg === -1) return null;
  const along = closestAlong(legs, leg, x, y, z);
  return { leg, along, point: pointOf(legs, leg, along), length: distanceTo(legs, leg, along, x, y, z) };
}
