import { addTo } from '../../../routing/lists/grouping.ts';
import type { Finding } from '../../../routing/site/finding.ts';
import { siteRule } from '../../../routing/site/rule-notes.ts';
import type { Charger, Site } from '../../../routing/site/site.ts';
import type { BranchOhms } from '../../branches/branch-ohms.ts';
import type { BoxCase } from '../../supply/load-flow/boxes.ts';
import { dropPercents } from '../../supply/load-flow/drop-percents.ts';
import type { SupplyState } from '../../supply/load-flow/supply-solve.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { tablesOf } from '../../tables/editions.ts';

/** The circuits of one piece of equipment. */
interface Fed {
  readonly equipment: string;
  /** Of the chargers that it feeds, ascending. */
  readonly places: readonly number[];
  /** Places over the limit, ascending, and what is said of them; null where there is none. */
  over: { readonly places: readonly number[]; readonly finding: Finding } | null;
}

interface Told {
  readonly feds: ReadonlyMap<string, Fed>;
  limit: number;
  tables: CodeTables | null;
  findings: readonly Finding[];
}

const told = new WeakMap<readonly Charger[], Told>();

/**
 * One finding for each piece of equipment with circuits whose worst drop, from nominal to the box, is past the limit, the
 * worst circuit first. What is said of equipment
 * whose circuits fare as at the last plan stays the same object.
 */
export function totalDropFindings(
  { rules }: Site,
  of: BoxCase,
  state: SupplyState,
  ohms: readonly (BranchOhms | null)[],
): readonly Finding[] {
  const limit = rules.dropLimit.total;
  const tables = tablesOf(rules);
  const { chargers } = of;
  const { percents, anew } = dropPercents(of, state, ohms);
  const last = told.get(chargers) ?? { feds: fedsOf(chargers), limit: Number.NaN, tables: null, findings: [] };
  const { feds } = last;
  const concerns = (i: number): boolean =>
    percents[i]! > limit || (feds.get(chargers[i]!.from)?.over?.places.includes(i) ?? false);
  const stale =
    anew === null || last.limit !== limit || last.tables !== tables
      ? feds.values()
      : new Set(anew.filter(concerns).map((i) => feds.get(chargers[i]!.from)!));
  let any = false;
  for (const fed of stale) {
    any = true;
    fed.over = overOf(fed, of, state, percents, limit, tables);
  }
  if (any) {
    const over = [...feds.values()].flatMap((fed) => fed.over ?? []);
    last.findings = over.sort((a, b) => a.places[0]! - b.places[0]!).map(({ finding }) => finding);
  }
  last.limit = limit;
  last.tables = tables;
  told.set(chargers, last);
  return last.findings;
}

function fedsOf(chargers: readonly Charger[]): Map<string, Fed> {
  const places = new Map<string, number[]>();
  chargers.forEach(({ from }, i) => {
    addTo(places, from, i);
  });
  return new Map([...places].map(([equipment, own]) => [equipment, { equipment, places: own, over: null }]));
}

function overOf(
  { equipment, places }: Fed,
  { chargers, seats }: BoxCase,
  { full }: SupplyState,
  percents: Float64Array,
  limit: number,
  tables: CodeTables,
): Fed['over'] {
  const over = places.filter((i) => percents[i]! > limit);
  if (over.length === 0) return null;
  const list = over.map((i): Over => ({ charger: chargers[i]!.id, percent: percents[i]! }));
  const managed = full.share[seats.bus[over[0]!]!] !== 1;
  return { places: over, finding: finding(equipment, list, limit, managed, tables) };
}

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
