import type { Finding } from '../site/finding.ts';
import { hangingOf } from '../site/hanging.ts';
import type { Site } from '../site/site.ts';
import { coincidingBoxes, cordsPerDrop } from './crowded-drops.ts';
import { dropChecks, racewayChecks } from './kept-checks.ts';
import { type KeptReach, keptReach, work, workAll } from './kept-reach.ts';
import { nowOf } from './now.ts';
import type { Reach } from './reach-result.ts';

export interface SiteReach {
  /** In the chargers' order, and for each charger in the order of the stalls it serves. */
  readonly reach: readonly Reach[];
  readonly findings: readonly Finding[];
}

/**
 * The reach of every charger's cord to every stall it serves, and what is to be said of cords, drops and headroom.
 * Lengths in feet. A `Reach` is the same object as in the last call where nothing that had a say in it has changed:
 * moving one drop of thousands works one charger again, moving a stall those with a cord near it.
 *
 * Findings: `reach`, `low-cord`, `keepout-crossed` of cords and drops, `over-vehicle`, `cord-limit`, `rest-height`,
 * `clear-height`, `boxes-coincide`, `cords-per-drop`, `drop-idle`, `unserved`, `nothing-served`. Expects a site as read: a reference to an element that
 * is not there is a RangeError.
 */
export function reachOf(site: Site): SiteReach {
  const now = nowOf(site);
  const run = keptReach(now);
  const { reach, findings } = workAll(run);
  return {
    reach,
    findings: findings.concat(
      dropChecks(site.drops, now),
      racewayChecks(site.raceways, now),
      coincidingBoxes(site.drops, site.units),
      cordsPerDrop(site.drops, site.chargers, hangingOf(site.chargers, site.drops).at),
      unserved(site, run),
    ),
  };
}

/** The reach of one charger of a site, kept for `reachOf`: a page can work a large site in slices with it. */
export function reachOfCharger(site: Site, place: number): readonly Reach[] {
  const run = keptReach(nowOf(site));
  if (!run.chargers[place]) throw new RangeError(`no charger at place ${place}`);
  work(run, place);
  return run.reach.slice(run.first[place]!, run.first[place + 1]!);
}

/** Lots in which nothing is served, stalls that no charger serves, and chargers that serve none. */
function unserved(site: Site, { first, stallPlace }: KeptReach): Finding[] {
  const { stalls, chargers, drops } = site;
  const findings: Finding[] = [];
  const served = new Uint8Array(stalls.length);
  for (let k = 0; k < stallPlace.length; k++) served[stallPlace[k]!] = 1;
  const without: string[] = [];
  for (let i = 0; i < stalls.length; i++) if (served[i] === 0) without.push(stalls[i]!.id);
  if (stallPlace.length === 0 && stalls.length + chargers.length + drops.length > 0) findings.push(nothingServed(site));
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
  const idle: string[] = [];
  for (let i = 0; i < chargers.length; i++) if (first[i] === first[i + 1]) idle.push(chargers[i]!.id);
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
