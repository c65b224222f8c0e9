import { COINCIDENT } from '../plane/space.ts';
import { byId } from '../site/look-up.ts';
import { printLength } from '../site/numbers/feet-inches.ts';
import type { Finding } from '../site/rules/finding.ts';
import { siteRule } from '../site/rules/rule-notes.ts';
import type { Charger, Drop, Equipment, Raceway, Site } from '../site/site.ts';
import type { Run } from './run.ts';
import { closestTapAnywhere } from './taps.ts';
import type { WaysFrom } from './ways.ts';

/** What of a site a run goes by besides its ways. */
export type Planned = Pick<Site, 'rules' | 'units' | 'raceways'>;

const TAP_SOURCE = `${siteRule('tapLimit')} (common practice, no source)`;

/** Why a charger has no run: its equipment or its box is farther than the tap limit from what it should be tapped to. */
export function noRunFinding(site: Planned, charger: Charger, drop: Drop, from: Equipment, ways: WaysFrom): Finding {
  const limit = site.rules.tapLimit;
  const print = (feet: number): string => printLength(feet, site.units);
  const base = { severity: 'fail', rule: 'no-run', limit, unit: 'ft', source: TAP_SOURCE } as const;
  const { network } = ways;
  if (ways.taps.length === 0) {
    const nearest = closestTapAnywhere(network, from.entry, () => true);
    const about = [charger.id, from.id];
    if (!nearest)
      return {
        ...base,
        about,
        says: `${charger.id} has no run: the site has no raceway. Draw one from ${from.id} to within ${print(limit)} of ${drop.id}.`,
      };
    const raceway = network.legs.raceways[network.legs.rank[nearest.leg]!]!;
    return {
      ...base,
      about: [...about, raceway],
      value: nearest.length,
      says:
        `${charger.id} has no run: the entry of ${from.id} is ${print(nearest.length)} from the nearest raceway, ${raceway}, ` +
        `and a stub may be ${print(limit)}. Bring a raceway ${print(nearest.length - limit)} nearer.`,
    };
  }
  const nearest = closestTapAnywhere(network, drop.box, (component) => ways.parts.has(component))!;
  const raceway = network.legs.raceways[network.legs.rank[nearest.leg]!]!;
  const loose = closestTapAnywhere(network, drop.box, () => true)!;
  const looseId = network.legs.raceways[network.legs.rank[loose.leg]!]!;
  const hint =
    loose.length <= limit && loose.length < nearest.length
      ? ` ${looseId} is ${print(loose.length)} from it but is not joined to the raceways of ${from.id}.`
      : '';
  return {
    ...base,
    about: [charger.id, drop.id, raceway],
    value: nearest.length,
    says:
      `${charger.id} has no run: the box of ${drop.id} is ${print(nearest.length)} from the nearest raceway connected to ` +
      `${from.id}, ${raceway}, and a stub may be ${print(limit)}.${hint}`,
  };
}

/** The branch is longer than it may be; null where it is not. */
export function branchLimitFinding(site: Planned, charger: Charger, run: Run): Finding | null {
  if (run.ok || run.conductorLength === null) return null;
  const own = charger.branchLimit;
  const limit = own ?? site.rules.branchLimit;
  const print = (feet: number): string => printLength(feet, site.units);
  return {
    severity: 'fail',
    rule: 'branch-limit',
    about: [charger.id, run.drop, run.from],
    says:
      `The branch of ${charger.id} from ${run.from} is ${print(run.conductorLength)} of conductor, ` +
      `${print(run.conductorLength - limit)} over its limit of ${print(limit)}.`,
    value: run.conductorLength,
    limit,
    unit: 'ft',
    source:
      own === undefined
        ? `${siteRule('branchLimit')} (common practice, no source)`
        : `longest branch of ${charger.id}, as it is entered`,
  };
}

/** The raceway overhead that a pedestal's box is tapped from through the air; null where its branch comes to it otherwise. */
export function tappedFromAbove(site: Planned, drop: Drop, run: Run): Raceway | null {
  const tap = run.path.at(-2);
  if (drop.mount !== 'pedestal' || tap === undefined || run.taps === null || run.taps.box < COINCIDENT) return null;
  if (tap[2] <= site.rules.pedestalHeight) return null;
  const raceway = byId(site.raceways).get(run.raceways.at(-1) ?? '');
  return raceway?.place === 'overhead' ? raceway : null;
}

/** The branch of a pedestal comes to it through the air; null where it does not. */
export function pedestalFeedFinding(site: Planned, charger: Charger, drop: Drop, run: Run): Finding | null {
  const raceway = tappedFromAbove(site, drop, run);
  if (raceway === null) return null;
  const at = run.path.at(-2)![2];
  return {
    severity: 'fail',
    rule: 'pedestal-feed',
    about: [charger.id, drop.id, raceway.id],
    says:
      `The branch of ${charger.id} comes to pedestal ${drop.id} through the air, from ${raceway.id} at ` +
      `${printLength(at, site.units)}. Its way must come down: along a column to the ground, or in the ground from ` +
      `${run.from}, which raceways proposed for it do.`,
    value: at,
    limit: site.rules.pedestalHeight,
    unit: 'ft',
    source: `common practice, no source; ${siteRule('pedestalHeight')}`,
  };
}
