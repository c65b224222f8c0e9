import type { SiteFile } from '../../routing/site/site.ts';
import { toSite } from '../../routing/site/to-site.ts';
import { dayFigures } from '../day/figures/day-figures.ts';
import { type LoadWish, lineShare } from './panels/charger-amps.ts';

/**
 * Load management that gives every car of the charging days of a site what it would get at full rate: of each new panel the
 * least ceiling that its own cars need, held together, and of those the most for a charger. Null where there is no day that
 * can be worked, or no ceiling does.
 * @param file a whole proposal at full rate
 * @param fresh ids of its new panels
 */
export function dayLoad(file: SiteFile, fresh: ReadonlySet<string>): LoadWish | null {
  const managed: SiteFile = {
    ...file,
    equipment: (file.equipment ?? []).map((one) =>
      fresh.has(one.id) && one.mainAmps !== undefined ? { ...one, managedAmps: one.mainAmps } : one,
    ),
  };
  const chargers = new Map<string, number>();
  for (const { from } of file.chargers ?? []) chargers.set(from, (chargers.get(from) ?? 0) + 1);
  const each = dayFigures(toSite(managed)).flatMap(({ ceilings }) =>
    ceilings
      .filter(({ limit }) => fresh.has(limit))
      .map(({ limit, least }) => (least === null ? null : least / lineShare(chargers.get(limit) ?? 1))),
  );
  if (each.length === 0 || each.includes(null)) return null;
  return { kind: 'each', amps: Math.max(...each.map((one) => one!)) };
}

/** Whether a car of the days of a site is short of what it would get without limits. */
export const leavesShort = (file: SiteFile): boolean => dayFigures(toSite(file)).some(({ carsShort }) => carsShort > 0);

/** A little more for each charger, where a ceiling that was found for other panels leaves a car short. */
export const slightlyMore = (load: LoadWish): LoadWish =>
  load.kind === 'each' ? { ...load, amps: load.amps * 1.08 } : load;
