import { kept } from '../../routing/kept/kept.ts';
import type { Charger, ChargingDay, Equipment, Load, Site } from '../../routing/site/site.ts';
import type { PlannedDay } from '../plan-file/day.ts';
import { linesOf, type SupplyLines, treeOf } from '../supply/tree/supply-lines.ts';
import type { SupplyTree } from '../supply/tree/supply-tree.ts';
import type { ChargerLines, DayCharger, DayInput } from './day-input.ts';
import { dayFindings } from './figures/day-findings.ts';
import { type ReadDay, readDay } from './read-day.ts';
import type { Strategy } from './rules/rules.ts';
import { byRules } from './simulated/by-rules.ts';
import { type SiteLimits, siteLimits } from './site-limits.ts';

/** Common practice and SAE J1772, which has no signal for less. */
const LEAST_AMPS = 6;

/** What days of a site are worked from. Parts stay the same objects while what they are read from does. */
export interface DayGround {
  readonly chargers: readonly DayCharger[];
  readonly supply: SiteLimits;
  readonly isManaged: boolean;
}

/** Chargers with the lines that they hang on, and the limits of the supply above them. */
export const dayGround = kept(
  (tree: SupplyTree, lines: SupplyLines, chargers: readonly Charger[], loads: readonly Load[]): DayGround => ({
    chargers: chargers.map(({ id, amps, volts, stalls, minAmps }) => ({
      id,
      lines: (lines.chargers.get(id) ?? 'AB') as ChargerLines,
      amps,
      volts,
      stalls: stalls.length,
      minAmps: minAmps ?? LEAST_AMPS,
    })),
    supply: siteLimits(tree, lines, chargers, loads),
    isManaged: tree.nodes.some(({ equipment }) => equipment.managedAmps !== undefined),
  }),
);

/** The ground of a site's days. */
export const groundOf = (site: Site): DayGround => dayGround(treeOf(site), linesOf(site), site.chargers, site.loads);

/** A day of a site made whole, with its own limits or those of the supply. */
export const siteDay = kept(
  (day: ChargingDay, ground: DayGround): ReadDay => readDay(day, ground.chargers, day.limits ?? ground.supply.limits),
);

/** The rule that the lot is run by: what the day says, else equal shares where anything is managed. */
export const strategyOf = (day: ChargingDay, { isManaged }: DayGround): Strategy =>
  day.strategy ?? (isManaged ? 'equal' : 'unmanaged');

/** Places of the limits that one would ask about: those that management sets, else the first. */
export function managedLimits(
  limits: readonly { readonly id: string }[],
  equipment: readonly Equipment[],
): readonly number[] {
  const held = new Set(equipment.flatMap(({ id, managedAmps }) => (managedAmps === undefined ? [] : [id])));
  const places = limits.flatMap(({ id }, place) => (held.has(id) ? [place] : []));
  return places.length > 0 || limits.length === 0 ? places : [0];
}

/** A day under each rule, without the searches and the best schedule, so that a plan stays live. */
export const plannedDay = kept((day: ChargingDay, ground: DayGround): PlannedDay => {
  const read = siteDay(day, ground);
  const strategy = strategyOf(day, ground);
  const limits = day.limits ?? ground.supply.limits;
  if (!read.ok) {
    const findings = read.errors.map(({ place, says }) => ({
      severity: 'fail' as const,
      rule: 'charging-day' as const,
      about: [],
      says: `Day ${day.id} is not worked: ${place}: ${says}.`,
      source: 'the day as entered',
    }));
    return { id: day.id, strategy, limits, cars: [], strategies: {}, findings };
  }
  const { cars, strategies } = byRules(read.day);
  const notRead = day.limits === undefined ? ground.supply.notRead : [];
  return {
    id: day.id,
    strategy,
    limits,
    cars,
    strategies,
    findings: dayFindings(day, read.day as DayInput, strategy, { cars, strategies }, notRead),
  };
});
