import type { Site } from '../../../routing/site/site.ts';
import type { Supply } from '../../plan-file/supply.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { coreWatts, HOURS_A_YEAR } from '../feeders/feeder-losses.ts';

/** Energy lost in feeders and transformers in a year, kWh. */
export interface YearlyLosses {
  /** With the chargers on: as many hours at the rate they are left as give what `chargingHours` give at full rate. */
  readonly load: number;
  /** In the cores of transformers, which are energized all the year. */
  readonly core: number;
}

/**
 * Energy lost in a year in what is drawn. Losses under load are those of the plan, every charger on at once; the hours
 * are a rule of the site (`chargingHours`). Branches and cords are not in it.
 */
export function yearlyLosses({ equipment, chargers, rules }: Site, supply: Supply, tables: CodeTables): YearlyLosses {
  const share = new Map(supply.equipment.map(({ id, chargerShare }) => [id, chargerShare]));
  let [rated, left] = [0, 0];
  for (const { from, amps, volts, phases } of chargers) {
    const va = amps * volts * (phases === 3 ? Math.sqrt(3) : 1);
    rated += va;
    left += va * (share.get(from) ?? 1);
  }
  const hours = left === 0 ? 0 : Math.min(HOURS_A_YEAR, (rules.chargingHours * rated) / left);
  const watts = [...supply.feeders, ...supply.transformers].reduce((sum, one) => sum + one.lossWatts, 0);
  const core = equipment.reduce(
    (sum, { kind, kva }) => sum + (kind === 'transformer' && kva !== undefined ? coreWatts(tables, kva) : 0),
    0,
  );
  return { load: (watts * hours) / 1000, core: (core * HOURS_A_YEAR) / 1000 };
}
