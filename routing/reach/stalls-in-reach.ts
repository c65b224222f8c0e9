import type { Drop, Site } from '../site/site.ts';
import { cordStart } from './cords/cord-start.ts';
import { fieldOf, obstaclesFor } from './field.ts';
import { casesIn, inletsAt, stallReach } from './stall-reach.ts';

/** What a drop can do for one stall. */
export interface StallInReach {
  readonly stall: string;
  /** Share of parking directions and inlets that the cord reaches. */
  readonly coverage: number;
  /** Least of the cord's margins, feet; null where there is no way round to some inlet. */
  readonly margin: number | null;
}

/**
 * The stalls that a cord from a place would reach at least in part, the best covered first; of equally covered ones
 * that with the most cord to spare, then in the site's order. The drop need not be on the site.
 */
export function stallsInReach(site: Site, drop: Pick<Drop, 'box' | 'retractor' | 'cord' | 'mount'>): StallInReach[] {
  const start = cordStart(drop, site.rules);
  const [x, y] = start.from;
  if (!(start.available > 0)) return [];
  const field = fieldOf(site);
  const near = obstaclesFor(field, [x, y]);
  const found: StallInReach[] = [];
  site.stalls.forEach((stall, i) => {
    // No inlet is farther from the entry than the stall and its vehicle are long together.
    const far = start.available + stall.depth + stall.width + field.vehicles[i]!.length;
    if (Math.abs(stall.at[0] - x) > far || Math.abs(stall.at[1] - y) > far) return;
    const vehicle = field.vehicles[i]!;
    const cases = casesIn(stall, vehicle);
    const inlets = inletsAt(stall, vehicle, field.headClearance, cases);
    const { coverage, margin } = stallReach(start, cases, inlets, near);
    if (coverage > 0) found.push({ stall: stall.id, coverage, margin });
  });
  const spare = ({ margin }: StallInReach): number => margin ?? Number.NEGATIVE_INFINITY;
  return found.sort((a, b) => b.coverage - a.coverage || spare(b) - spare(a));
}
