import type { Units } from '../site/schema/vocabulary.ts';
import type { Aisle, Charger, Drop, Keepout, Rules, Site, Stall, Vehicle } from '../site/site.ts';
import type { Field } from './field.ts';

/** What the checks of every charger and drop share, besides what stands on the site. */
export interface Shared {
  readonly rules: Rules;
  readonly units: Units;
  readonly aisles: readonly Aisle[];
  /** Keep-outs that block cords. */
  readonly cordKeepouts: readonly Keepout[];
  /** Keep-outs that block drops. */
  readonly dropKeepouts: readonly Keepout[];
}

/** One charger with everything that its reach is worked from. */
export interface Served {
  readonly charger: Charger;
  readonly drop: Drop;
  readonly stalls: readonly { readonly stall: Stall; readonly vehicle: Vehicle }[];
  readonly field: Field;
  readonly shared: Shared;
}

let latest: Shared | null = null;

/** What the checks of a site share: the same object as the last time where nothing in it has changed. */
export function sharedOf(site: Pick<Site, 'rules' | 'units' | 'aisles' | 'keepouts'>): Shared {
  const { rules, units, aisles } = site;
  const next: Shared = {
    rules,
    units,
    aisles,
    cordKeepouts: site.keepouts.filter(({ blocks }) => blocks.includes('cord')),
    dropKeepouts: site.keepouts.filter(({ blocks }) => blocks.includes('drop')),
  };
  const same =
    latest !== null &&
    latest.units === units &&
    sameRules(latest.rules, rules) &&
    sameList(latest.aisles, aisles) &&
    sameList(latest.cordKeepouts, next.cordKeepouts) &&
    sameList(latest.dropKeepouts, next.dropKeepouts);
  if (!same || !latest) latest = next;
  return latest;
}

const sameList = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a === b || (a.length === b.length && a.every((item, i) => item === b[i]));

const sameRules = (a: Rules, b: Rules): boolean =>
  a === b ||
  (a.headClearance === b.headClearance &&
    a.cordSlack === b.cordSlack &&
    a.cordLimit === b.cordLimit &&
    a.coverage === b.coverage &&
    a.vehicle === b.vehicle &&
    a.pedestalHeight === b.pedestalHeight &&
    a.restHeight.low === b.restHeight.low &&
    a.restHeight.high === b.restHeight.high &&
    a.clearHeight.aisle === b.clearHeight.aisle &&
    a.clearHeight.stall === b.clearHeight.stall &&
    a.clearHeight.van === b.clearHeight.van &&
    a.clearHeight.walk === b.clearHeight.walk);
