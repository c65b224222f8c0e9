import { kept } from '../../../../routing/kept/kept.ts';
import { keptEach } from '../../../../routing/kept/kept-list.ts';
import type { Finding } from '../../../../routing/site/rules/finding.ts';
import { siteRule } from '../../../../routing/site/rules/rule-notes.ts';
import type { Charger, Site } from '../../../../routing/site/site.ts';
import type { BranchOhms } from '../../../branches/equipment-branches.ts';
import { feedsOf } from '../../../branches/feeds.ts';
import { type BoxSupply, dropPercents } from '../../../supply/load-flow/box-voltages.ts';
import type { CodeTables } from '../../../tables/code-tables.ts';
import { tablesOf } from '../../../tables/editions.ts';

/**
 * One finding for each piece of equipment with circuits whose worst drop, from nominal to the box, is past the limit, the
 * worst circuit first. In the order of the first of them.
 * @param ohms of the chargers of each piece of equipment, as `feedsOf` has them
 */
export function totalDropFindings(
  { rules }: Site,
  supply: BoxSupply,
  ohms: readonly (readonly (BranchOhms | null)[])[],
): readonly Finding[] {
  const { equipment, chargers, partition } = feedsOf(supply.of.chargers);
  const percents = dropPercents(supply, ohms, partition.places);
  return overEach([equipment, chargers, partition.places, percents], [supply, rules.dropLimit.total, tablesOf(rules)])
    .filter((over) => over !== null)
    .sort((a, b) => a.first - b.first)
    .map(({ finding }) => finding);
}

const overEach = keptEach(
  (
    [equipment, chargers, places, percents]: readonly [
      string,
      readonly Charger[],
      readonly number[],
      readonly number[],
    ],
    [{ of, state }, limit, tables]: readonly [BoxSupply, number, CodeTables],
  ): { readonly first: number; readonly finding: Finding } | null => {
    const over = chargers.flatMap((_, i) => (percents[i]! > limit ? [i] : []));
    if (over.length === 0) return null;
    const first = places[over[0]!]!;
    const managed = state.full.share[of.seats.bus[first]!] !== 1;
    const most = over.map((i) => percents[i]!);
    return { first, finding: findingOf(chargers, over, most, equipment, limit, managed, tables) };
  },
);

/** The same object while the same circuits are over by as much. */
const findingOf = kept(
  (
    chargers: readonly Charger[],
    over: readonly number[],
    percents: readonly number[],
    equipment: string,
    limit: number,
    managed: boolean,
    tables: CodeTables,
  ): Finding =>
    finding(
      equipment,
      over.map((i, k) => ({ charger: chargers[i]!.id, percent: percents[k]! })),
      limit,
      managed,
      tables,
    ),
);

interface Over {
  readonly charger: string;
  readonly percent: number;
}

function finding(
  equipment: string,
  list: readonly Over[],
  limit: number,
  managed: boolean,
  tables: CodeTables,
): Finding {
  const worst = list.reduce((most, one) => (one.percent > most.percent ? one : most));
  const others = list.filter((one) => one !== worst).map(({ charger }) => charger);
  const more = others.length === 0 ? '' : ` ${list.length} circuits of ${equipment} are over it.`;
  return {
    severity: 'fail',
    rule: 'total-drop',
    about: [worst.charger, ...others, equipment],
    says: `${worst.charger} sees a drop of ${worst.percent.toFixed(2)}% from nominal to its box ${managed ? 'at its rating, the rest of what is managed with it at the ceiling' : 'with everything on'}; the limit is ${limit}%.${more} Larger feeder conductors, a higher feeder voltage, load management, or equipment nearer by.`,
    value: worst.percent,
    limit,
    unit: '%',
    source: `${siteRule('dropLimit.total')}; ${tables.dropAdvice.source}`,
  };
}
