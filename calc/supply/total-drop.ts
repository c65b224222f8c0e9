import { changedPlaces } from '../../routing/lists/changed-places.ts';
import type { Finding } from '../../routing/site/finding.ts';
import type { Charger, Site } from '../../routing/site/site.ts';
import { type BranchOhms, newDesk } from './box-volts.ts';
import { type BoxCase, totalDropAt } from './boxes.ts';
import type { SupplyState } from './supply-solve.ts';

/** Drops to the boxes, and what they were worked from. */
interface Drops {
  readonly of: BoxCase;
  readonly state: SupplyState;
  readonly ohms: readonly (BranchOhms | null)[];
  /** The same as numbers, resistance and reactance in turn; NaN where there is no branch. */
  readonly figures: Float64Array;
  /** Percent, in the order of the chargers, 0 where one has no branch; written over at the next plan. */
  readonly percents: Float64Array;
}

const known = new WeakMap<readonly Charger[], Drops>();

/** Drop to each box, the greater of the cases with generation and without. */
function percentsOf(of: BoxCase, state: SupplyState, ohms: readonly (BranchOhms | null)[]): Float64Array {
  const { full, withoutGeneration: dark } = state;
  const last = known.get(of.chargers);
  const percents = last?.percents ?? new Float64Array(ohms.length);
  const figures = last?.figures ?? new Float64Array(2 * ohms.length);
  // One for each case: what feeds a box is kept there for the next.
  const [desk, darkDesk] = [newDesk(), newDesk()];
  const changed = last === undefined ? ohms.keys() : changedPlaces(ohms, last.ohms);
  for (const i of changed) {
    figures[2 * i] = ohms[i]?.r ?? Number.NaN;
    figures[2 * i + 1] = ohms[i]?.x ?? Number.NaN;
  }
  const put = (i: number): void => {
    const [r, x] = [figures[2 * i]!, figures[2 * i + 1]!];
    if (Number.isNaN(r)) {
      percents[i] = 0;
      return;
    }
    const percent = totalDropAt(of, full, i, r, x, desk);
    percents[i] = dark === null ? percent : Math.max(percent, totalDropAt(of, dark, i, r, x, darkDesk));
  };
  const same = last?.state === state && last.of.seats === of.seats && last.of.powerFactor === of.powerFactor;
  if (same) for (const i of changed) put(i);
  else for (let i = 0; i < ohms.length; i++) put(i);
  known.set(of.chargers, { of, state, ohms, figures, percents });
  return percents;
}

/**
 * One finding for each piece of equipment with circuits whose drop, from nominal to the box, is past the limit, the worst
 * circuit first. Of the case with generation and that without, the one with more drop counts.
 */
export function totalDropFindings(
  { rules }: Site,
  of: BoxCase,
  state: SupplyState,
  ohms: readonly (BranchOhms | null)[],
): readonly Finding[] {
  const limit = rules.dropLimit.total;
  const percents = percentsOf(of, state, ohms);
  const over = new Map<string, Over[]>();
  for (let i = 0; i < percents.length; i++) {
    const percent = percents[i]!;
    if (percent <= limit) continue;
    const { id, from } = of.chargers[i]!;
    const list = over.get(from);
    if (list === undefined) over.set(from, [{ charger: id, percent }]);
    else list.push({ charger: id, percent });
  }
  return [...over].map(([equipment, list]) => finding(equipment, list, limit));
}

interface Over {
  readonly charger: string;
  readonly percent: number;
}

function finding(equipment: string, list: readonly Over[], limit: number): Finding {
  const worst = list.reduce((most, one) => (one.percent > most.percent ? one : most));
  const others = list.filter((one) => one !== worst).map(({ charger }) => charger);
  const more = others.length === 0 ? '' : ` ${list.length} circuits of ${equipment} are over it.`;
  return {
    severity: 'fail',
    rule: 'total-drop',
    about: [worst.charger, ...others, equipment],
    says: `${worst.charger} sees a drop of ${worst.percent.toFixed(2)}% from nominal to its box with everything on; the limit is ${limit}%.${more} Larger feeder conductors, a higher feeder voltage, load management, or equipment nearer by.`,
    value: worst.percent,
    limit,
    unit: '%',
    source: 'site rule dropLimit.total; NEC 2023 210.19 and 215.2 informational notes',
  };
}
