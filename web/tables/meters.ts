import { type ChargerUse, chargerUse } from '../../calc/day/figures/charger-use.ts';
import { decidingDay } from '../../calc/day/figures/deciding-day.ts';
import { groundOf, siteDay, strategyOf } from '../../calc/day/planned-days.ts';
import type { Site } from '../../routing/site/site.ts';

/** What the chargers meter on the charging day that decides. */
export interface Meters {
  readonly day: string;
  /** Of several days the table says which. */
  readonly isOnly: boolean;
  readonly isPriced: boolean;
  readonly uses: ReadonlyMap<string, ChargerUse>;
}

/** Null where there is no day that can be worked. */
export function metersOf(site: Site, wanted: string | null): Meters | null {
  const deciding = decidingDay([site], wanted);
  const day = site.days.find(({ id }) => id === deciding?.id);
  if (day === undefined) return null;
  const ground = groundOf(site);
  const read = siteDay(day, ground);
  if (!read.ok) return null;
  const uses = chargerUse(read.day, strategyOf(day, ground));
  return {
    day: day.id,
    isOnly: deciding?.of === 1,
    isPriced: read.day.tariff !== null,
    uses: new Map(uses.map((use) => [use.charger, use])),
  };
}
