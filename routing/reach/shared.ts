import { kept, keptByKey } from '../kept/kept.ts';
import type { Units } from '../site/schema/vocabulary.ts';
import type { Aisle, Charger, Drop, Keepout, Rules, Site, Stall, Vehicle } from '../site/site.ts';
import type { CordField } from './field.ts';

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
  readonly field: CordField;
  readonly shared: Shared;
}

/** What the checks of a site share: the same object while nothing of it changes. */
export const sharedOf = ({
  rules,
  units,
  aisles,
  keepouts,
}: Pick<Site, 'rules' | 'units' | 'aisles' | 'keepouts'>): Shared =>
  sharedBy(
    alikeRules(REACH, rules),
    units,
    aisles,
    keepouts.filter(({ blocks }) => blocks.includes('cord')),
    keepouts.filter(({ blocks }) => blocks.includes('drop')),
  );

const sharedBy = kept(
  (
    rules: Rules,
    units: Units,
    aisles: readonly Aisle[],
    cordKeepouts: readonly Keepout[],
    dropKeepouts: readonly Keepout[],
  ): Shared => ({ rules, units, aisles, cordKeepouts, dropKeepouts }),
);

/** Rules that say the same of reach are one: the price of a conduit moves no cord. */
const alikeRules = keptByKey(
  ({
    headClearance,
    cordSlack,
    cordLimit,
    coverage,
    vehicle,
    pedestalHeight,
    restHeight: { low, high },
    clearHeight: { aisle, stall, van, walk },
  }: Rules) =>
    [headClearance, cordSlack, cordLimit, coverage, vehicle, pedestalHeight, low, high, aisle, stall, van, walk].join(),
  (_: object, rules: Rules) => rules,
);
const REACH = {};
