import { chargerReach } from '../../reach/charger-reach.ts';
import { cordStart } from '../../reach/cords/cord-start.ts';
import { obstaclesFor } from '../../reach/field.ts';
import { type Now, nowOf } from '../../reach/kept-reach.ts';
import { casesIn, covers, inletCases, inletsAt, stallReach } from '../../reach/stall-reach.ts';
import type { Drop, Site } from '../../site/site.ts';

/** A cord that a stall is looked at from. */
type Hung = Pick<Drop, 'box' | 'retractor' | 'cord' | 'mount'>;

/**
 * A function that gives the stalls, by their places in a list of some, that a cord covers as the rules want, going round
 * every parked vehicle and column and through no keep-out that blocks cords.
 */
export function coverer(site: Site, stalls: readonly number[]): (hung: Hung) => number[] {
  const now = nowOf(site);
  const { field, shared } = now;
  const wanted = stalls.map((place) => {
    const stall = site.stalls[place]!;
    const vehicle = field.vehicles[place]!;
    return { stall, vehicle, cases: inletCases(stall, vehicle, field.headClearance) };
  });
  return (hung) => {
    const start = cordStart(hung, site.rules);
    const [x, y] = start.from;
    const near = obstaclesFor(field, [x, y]);
    const found: number[] = [];
    wanted.forEach(({ stall, vehicle, cases }, i) => {
      const far = start.available + stall.depth + stall.width + vehicle.length;
      if (Math.abs(stall.at[0] - x) > far || Math.abs(stall.at[1] - y) > far) return;
      if (!covers(start, cases, near, site.rules.coverage).enough) return;
      if (shared.cordKeepouts.length > 0 && crosses(now, hung, stalls[i]!)) return;
      found.push(i);
    });
    return found;
  };
}

function crosses({ site, field, shared }: Now, { box, retractor, cord }: Hung, place: number): boolean {
  const stall = site.stalls[place]!;
  const drop: Drop = { id: '', box, ...(retractor && { retractor }), cord };
  const charger = { id: '', drop: '', stalls: [stall.id], from: '', amps: 1, volts: 1, phases: 1 as const };
  const served = { charger, drop, stalls: [{ stall, vehicle: field.vehicles[place]! }], field, shared };
  return chargerReach(served).findings.some(({ severity }) => severity === 'fail');
}

/** How far a cord falls short of a stall: the share of cases it covers and its least margin, feet; null margin: no way. */
export function shortOf(site: Site, hung: Hung, place: number): { coverage: number; margin: number | null } {
  const { field } = nowOf(site);
  const start = cordStart(hung, site.rules);
  const [stall, vehicle] = [site.stalls[place]!, field.vehicles[place]!];
  const cases = casesIn(stall, vehicle);
  const inlets = inletsAt(stall, vehicle, field.headClearance, cases);
  const near = obstaclesFor(field, [start.from[0], start.from[1]]);
  const { coverage, margin } = stallReach(start, cases, inlets, near);
  return { coverage, margin };
}
