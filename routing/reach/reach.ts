import type { Finding } from '../site/finding.ts';
import type { Charger, Site } from '../site/site.ts';
import { coincidingBoxes, cordsPerDrop } from './crowded-drops.ts';
import { keptDropChecks, keptRacewayChecks } from './kept-checks.ts';
import { keptReach } from './kept-reach.ts';
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
 * `clear-height`, `boxes-coincide`, `cords-per-drop`, `unserved`. Expects a site as read: a reference to an element that
 * is not there is a RangeError.
 */
export function reachOf(site: Site): SiteReach {
  const now = nowOf(site);
  const kept = keptReach.all(site.chargers, now);
  const reach: Reach[] = [];
  const findings: Finding[] = [];
  const drops: number[] = [];
  const served = new Uint8Array(site.stalls.length);
  for (const one of kept) {
    for (const row of one.reach) reach.push(row);
    for (const finding of one.findings) findings.push(finding);
    for (const at of one.places.stalls) served[at] = 1;
    drops.push(one.places.drop);
  }
  for (const { findings: said } of keptDropChecks.all(site.drops, now)) findings.push(...said);
  for (const { findings: said } of keptRacewayChecks.all(site.raceways, now)) findings.push(...said);
  findings.push(...coincidingBoxes(site.drops, site.units), ...cordsPerDrop(site.drops, site.chargers, drops));
  findings.push(...unserved(site, served));
  return { reach, findings };
}

/** The reach of one charger of a site, kept for `reachOf`: a page can work a large site in slices with it. */
export function reachOfCharger(site: Site, charger: Charger): readonly Reach[] {
  return keptReach.one(charger, nowOf(site)).reach;
}

function unserved({ stalls, chargers }: Site, served: Uint8Array): Finding[] {
  const findings: Finding[] = [];
  const without = stalls.filter((_, i) => served[i] === 0).map(({ id }) => id);
  if (without.length > 0 && chargers.length > 0)
    findings.push({
      severity: 'note',
      rule: 'unserved',
      about: without,
      says: `No charger serves ${without.length === 1 ? `stall ${without[0]}` : `${without.length} of ${stalls.length} stalls`}.`,
      value: without.length,
      source: 'chargers of the site',
    });
  const idle = chargers.filter((charger) => charger.stalls.length === 0).map(({ id }) => id);
  if (idle.length > 0)
    findings.push({
      severity: 'note',
      rule: 'unserved',
      about: idle,
      says: `${idle.join(', ')} ${idle.length === 1 ? 'is' : 'are'} meant for no stall, so no reach is worked.`,
      value: idle.length,
      source: 'chargers of the site',
    });
  return findings;
}
