import { kept } from '../kept/kept.ts';
import { byId } from '../site/look-up.ts';
import { printLength } from '../site/numbers/feet-inches.ts';
import type { Finding } from '../site/rules/finding.ts';
import { siteRule } from '../site/rules/rule-notes.ts';
import type { Equipment, Feeder, Site } from '../site/site.ts';
import { networkOf } from './network.ts';
import { tapsWithin } from './taps.ts';
import { shortestWay, type Way } from './way.ts';
import { type WaysFrom, waysFrom } from './ways.ts';

/** The way of a feeder along the raceways, from entry to entry. */
export interface FeederRoute {
  readonly feeder: string;
  /** Null where the raceways do not lead from the one to the other. */
  readonly way: Way | null;
}

/**
 * The routes of the feeders whose length the file does not give: the shortest path from entry to entry, tap + raceway +
 * tap, with a tap at either end to any raceway within `tapLimit`. Finding
 * `no-feeder-route` where there is none. In the order of the feeders; those with a length are passed over.
 */
export function feederRoutesOf(site: Site): {
  readonly routes: readonly FeederRoute[];
  readonly findings: readonly Finding[];
} {
  const equipment = byId(site.equipment);
  const routes: FeederRoute[] = [];
  const findings: Finding[] = [];
  for (const feeder of site.feeders) {
    if (feeder.length !== undefined) continue;
    const from = equipment.get(feeder.from);
    const to = equipment.get(feeder.to);
    if (!from || !to) throw new RangeError(`feeder ${feeder.id} joins equipment that is not in the site`);
    const way = feederWay(site, from, to);
    routes.push({ feeder: feeder.id, way });
    if (!way) findings.push(noRouteFinding(site, feeder));
  }
  return { routes, findings };
}

function feederWay(site: Site, from: Equipment, to: Equipment): Way | null {
  const { tapLimit, joinTolerance } = site.rules;
  return wayBetween(to, waysFrom(networkOf(site.raceways, joinTolerance), from, tapLimit), tapLimit);
}

const wayBetween = kept((to: Equipment, ways: WaysFrom, tapLimit: number): Way | null =>
  shortestWay(ways, tapsWithin(ways.network, to.entry, tapLimit), to.entry),
);

function noRouteFinding(site: Site, feeder: Feeder): Finding {
  return {
    severity: 'fail',
    rule: 'no-feeder-route',
    about: [feeder.id, feeder.from, feeder.to],
    says:
      `${feeder.id} has no length: no raceways lead from ${feeder.from} to ${feeder.to} with stubs of ` +
      `${printLength(site.rules.tapLimit, site.units)} or less. Give its length, or draw its raceway.`,
    limit: site.rules.tapLimit,
    unit: 'ft',
    source: `${siteRule('tapLimit')} (common practice, no source)`,
  };
}
