import { useMemo, useState } from 'react';
import { dayView } from '../../../calc/day/figures/day-view.ts';
import { dayGround, managedLimits, siteDay, strategyOf } from '../../../calc/day/planned-days.ts';
import { linesOf, treeOf } from '../../../calc/supply/tree/supply-lines.ts';
import type { ChargingDay, Site } from '../../../routing/site/site.ts';

/**
 * A day of charging under one of its limits: which limit it is, how far its ceiling is dragged (null where it is as it
 * is drawn), and the day as it goes under it. Where the day cannot be read, `view` and `input` are null.
 */
export function useUnderLimit(day: ChargingDay, site: Site) {
  const [ceiling, setCeiling] = useState<number | null>(null);
  const [limitId, setLimitId] = useState<string | null>(null);
  const ground = dayGround(treeOf(site), linesOf(site), site.chargers, site.loads);
  const read = siteDay(day, ground);
  const strategy = strategyOf(day, ground);
  const limits = day.limits ?? ground.supply.limits;
  const wanted = limits.findIndex(({ id }) => id === limitId);
  const index = wanted >= 0 ? wanted : (managedLimits(limits, site.equipment)[0] ?? 0);
  const limit = limits[index];
  const view = useMemo(
    () => (read.ok ? dayView(read.day, strategy, limit === undefined ? -1 : index, ceiling) : null),
    [read, strategy, limit, index, ceiling],
  );
  // The best is looked for under the limit as it is dragged.
  const input = useMemo(() => {
    if (!read.ok || ceiling === null) return read.ok ? read.day : null;
    return { ...read.day, limits: read.day.limits.map((one, i) => (i === index ? { ...one, most: ceiling } : one)) };
  }, [read, ceiling, index]);
  const managed = day.limits === undefined && site.equipment.some(({ id }) => id === limit?.id) ? limit?.id : undefined;
  const setLimit = (id: string): void => {
    setLimitId(id);
    setCeiling(null);
  };
  return { read, strategy, limits, limit, managed, view, input, ceiling, setCeiling, setLimit };
}
