import type { CodeTables } from '../../tables/code-tables.ts';
import type { FeederOption, FeederWish } from './feeder-options.ts';
import type { TrialLosses } from './feeder-trial.ts';

export const HOURS_A_YEAR = 8760;

/** Hours in which chargers at some rate give what they give at full rate, at the panel's volts, in the hours of a year. */
export function hoursFor(wish: FeederWish, amps: number, chargerVolts: number): number {
  if (wish.chargers === 0 || amps === 0) return 0;
  return Math.min(HOURS_A_YEAR, (wish.chargingHours * wish.amps * wish.panelVolts) / (amps * chargerVolts));
}

export const yearOf = ({ feeder, windings, core }: TrialLosses, hours: number): FeederOption['lossKwhAYear'] => ({
  load: ((feeder + windings) * hours) / 1000,
  core: (core * HOURS_A_YEAR) / 1000,
});

/**
 * Watts in the core of a transformer of standard size, lost as long as it is energized: half of its loss at 35% load at
 * the least efficiency that it may have, the load at which most have their best (common practice, no source).
 */
export function coreWatts(tables: CodeTables, kva: number | null): number {
  if (kva === null) return 0;
  const { rows } = tables.threePhaseTransformers;
  const known = rows.filter(({ lossAt35 }) => lossAt35 !== null);
  const row = known.find((other) => kva <= other.kva * (1 + 1e-9)) ?? known.at(-1)!;
  return (row.lossAt35! / 2) * (kva / row.kva);
}
