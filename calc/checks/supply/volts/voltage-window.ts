import { keptEach } from '../../../../routing/kept/kept-list.ts';
import type { Finding } from '../../../../routing/site/rules/finding.ts';
import type { Charger } from '../../../../routing/site/site.ts';
import type { BranchOhms } from '../../../branches/equipment-branches.ts';
import { feedsOf } from '../../../branches/feeds.ts';
import { type BoxSupply, dropPercents } from '../../../supply/load-flow/box-voltages.ts';
import { VOLTAGE_RANGE, voltageRange } from '../../../tables/voltage-range.ts';

/**
 * One finding for each piece of equipment with chargers whose box has less than the lowest volts of ordinary service, the
 * charger at its rating and the rest of what is managed with it at the ceiling.
 */
export function boxWindowFindings(
  supply: BoxSupply,
  ohms: readonly (readonly (BranchOhms | null)[])[],
): readonly Finding[] {
  const feeds = feedsOf(supply.of.chargers);
  const percents = dropPercents(supply, ohms, feeds.partition.places);
  return underEach([feeds.equipment, feeds.chargers, feeds.partition.places, percents], [supply]).filter(
    (finding) => finding !== null,
  );
}

const underEach = keptEach(
  (
    [equipment, chargers, places, percents]: readonly [
      string,
      readonly Charger[],
      readonly number[],
      readonly number[],
    ],
    [{ of }]: readonly [BoxSupply],
  ): Finding | null => {
    const nominal = of.seats.nominal[places[0]!]!;
    const { least } = voltageRange(nominal);
    const limit = 100 * (1 - least / nominal);
    const under = chargers.flatMap(({ id }, i) =>
      percents[i]! > limit * (1 + 1e-9) ? [{ id, percent: percents[i]! }] : [],
    );
    if (under.length === 0) return null;
    const worst = under.reduce((most, one) => (one.percent > most.percent ? one : most));
    const volts = nominal * (1 - worst.percent / 100);
    const others = under.filter((one) => one !== worst).map(({ id }) => id);
    return {
      severity: 'fail',
      rule: 'voltage-window',
      about: [worst.id, ...others, equipment],
      says: `The box of ${worst.id} has ${volts.toFixed(1)} V with the charger at its rating, under ${least} V, the lowest that equipment has in ordinary service: it may fail to charge.${others.length === 0 ? '' : ` ${under.length} boxes of ${equipment} are under it.`} Larger conductors, a higher feeder voltage, load management, or equipment nearer by.`,
      value: volts,
      limit: least,
      unit: 'V',
      source: VOLTAGE_RANGE.source,
    };
  },
);
