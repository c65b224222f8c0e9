import { kept } from '../kept/kept.ts';
import { nowOf, reachOfAll, unservedIds } from '../reach/kept-reach.ts';
import { hangingOf } from '../site/hanging.ts';
import type { Finding } from '../site/rules/finding.ts';
import type { Charger, Site } from '../site/site.ts';
import { coincidingBoxes, cordsPerDrop } from './drops/crowded-drops.ts';
import { dropChecks, racewayChecks } from './drops/kept-checks.ts';

/**
 * What is to be said of cords, drops, headroom, and of who is served: `reach`, `low-cord`, `keepout-crossed` of cords and
 * drops, `over-vehicle`, `cord-limit`, `rest-height`, `clear-height`, `boxes-coincide`, `cords-per-drop`, `drop-idle`,
 * `unserved`, `nothing-served`. Expects a site as read: a reference to an element that is not there is a RangeError.
 */
export function reachFindings(site: Site): readonly Finding[] {
  const now = nowOf(site);
  return reachOfAll(now).findings.concat(
    dropChecks(site.drops, now),
    racewayChecks(site.raceways, now),
    coincidingBoxes(site.drops, site.units),
    cordsPerDrop(site.drops, site.chargers, hangingOf(site.chargers, site.drops).at),
    unserved(site),
  );
}

/** Chargers that are meant for no stall. */
const idleChargers = kept((chargers: readonly Charger[]): readonly string[] =>
  chargers.filter(({ stalls }) => stalls.length === 0).map(({ id }) => id),
);

/** Lots in which nothing is served, stalls that no charger serves, and chargers that serve none. */
function unserved(site: Site): Finding[] {
  const { stalls, chargers, drops } = site;
  const findings: Finding[] = [];
  const without = unservedIds(chargers, stalls);
  const idle = idleChargers(chargers);
  if (idle.length === chargers.length && stalls.length + chargers.length + drops.length > 0)
    findings.push(nothingServed(site));
  else if (without.length > 0)
    findings.push({
      severity: 'note',
      rule: 'unserved',
      about: without,
      says: `No charger serves ${without.length === 1 ? `stall ${without[0]}` : `${without.length} of ${stalls.length} stalls`}.`,
      value: without.length,
      limit: 0,
      source: 'stalls and chargers that are drawn',
    });
  if (idle.length > 0)
    findings.push({
      severity: 'note',
      rule: 'unserved',
      about: idle,
      says: `${idle.join(', ')} ${idle.length === 1 ? 'is' : 'are'} meant for no stall, so no reach is worked.`,
      value: idle.length,
      limit: 0,
      source: 'stalls and chargers that are drawn',
    });
  return findings;
}

function nothingServed({ stalls, chargers, drops }: Site): Finding {
  const what =
    stalls.length === 0
      ? 'no stall is drawn'
      : `none of ${stalls.length === 1 ? 'its one stall' : `${stalls.length} stalls`} has a charger`;
  const cure =
    stalls.length === 0
      ? 'Draw the stalls.'
      : chargers.length > 0
        ? `Say which stalls ${chargers.length === 1 ? `${chargers[0]!.id} serves` : `the ${chargers.length} chargers serve`}.`
        : drops.length > 0
          ? 'Hang chargers at the drops.'
          : 'Hang drops with their chargers.';
  return {
    severity: 'warn',
    rule: 'nothing-served',
    about: [],
    says: `Nothing is served in this lot: ${what}. ${cure}`,
    value: 0,
    limit: stalls.length,
    source: 'stalls and chargers that are drawn',
  };
}
