import { networkOf } from '../../../network/network.ts';
import { tapsWithin } from '../../../network/taps.ts';
import { between, distance } from '../../../plane/space.ts';
import type { Point2, Point3, Site } from '../../../site/site.ts';
import type { LotFrame } from './lot-frame.ts';

/** A straight part of the raceways that are there, with the places on it where others may join, its ends among them. */
export interface StandingWay {
  readonly places: readonly Point3[];
}

export interface StandingWays {
  readonly ways: readonly StandingWay[];
  /** Where the equipment taps them. */
  readonly taps: readonly Point3[];
}

const ON = 1e-6;

/**
 * The raceways that an equipment's taps lead to, cut where a raceway of the lattice may meet them: on its lines, where
 * joints are, and at the taps themselves. Feet.
 */
export function standingWays(
  site: Site,
  entry: Point3,
  frame: LotFrame,
  us: readonly number[],
  vs: readonly number[],
): StandingWays {
  const network = networkOf(site.raceways, site.rules.joinTolerance);
  const found = tapsWithin(network, entry, site.rules.tapLimit);
  const taps = found.map(({ point }) => point);
  const open = new Set(found.map(({ leg }) => network.component[network.legs.rank[leg]!]!));
  const ways: StandingWay[] = [];
  for (const component of open)
    for (let node = network.firstNode[component]!; node < network.firstNode[component + 1]!; node++)
      for (let h = network.first[node]!; h < network.first[node + 1]!; h++) {
        if (h > network.twin[h]!) continue;
        const a = pointAt(network.tail[h]!);
        const b = pointAt(network.head[h]!);
        const shares = [
          0,
          1,
          ...sharesOn(a, b, taps),
          ...crossings(frame.into([a[0], a[1]]), frame.into([b[0], b[1]])),
        ];
        ways.push({ places: [...new Set(shares)].sort((s, t) => s - t).map((t) => between(a, b, t)) });
      }
  return { ways, taps };

  function pointAt(node: number): Point3 {
    return [network.x[node]!, network.y[node]!, network.z[node]!];
  }

  /** Shares of a straight at which it crosses a line of the lattice. */
  function crossings(a: Point2, b: Point2): number[] {
    const on = (lines: readonly number[], from: number, to: number): number[] =>
      Math.abs(to - from) < ON ? [] : lines.map((line) => (line - from) / (to - from)).filter((t) => t > 0 && t < 1);
    return [...on(us, a[0], b[0]), ...on(vs, a[1], b[1])];
  }
}

/** Shares of a straight at which one of some points lies on it. */
function sharesOn(a: Point3, b: Point3, points: readonly Point3[]): number[] {
  const length = distance(a, b);
  if (length < ON) return [];
  return points.flatMap((point) => {
    const t = distance(a, point) / length;
    return t <= 1 && distance(between(a, b, t), point) < ON ? [t] : [];
  });
}
