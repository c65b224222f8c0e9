import { changedPlaces } from '../../../routing/lists/changed-places.ts';
import type { Charger } from '../../../routing/site/site.ts';
import type { BranchOhms } from '../../branches/branch-ohms.ts';
import { type BoxCase, type Desks, newDesks, worstDropAt } from './boxes.ts';
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

/** What changed since the drops of the same chargers were last asked for: some places, or all of them. */
export interface DropPercents {
  /** Worst percent from nominal to each box, as `worstDropAt`, in the order of the chargers, 0 where one has no branch; written over next time. */
  readonly percents: Float64Array;
  /** Places whose drop was worked anew; null: all. */
  readonly anew: readonly number[] | null;
}

/**
 * The worst drop from nominal to each box, percent. While the state of the supply is the same only boxes whose own branch changed are worked again.
 */
export function dropPercents(of: BoxCase, state: SupplyState, ohms: readonly (BranchOhms | null)[]): DropPercents {
  const last = known.get(of.chargers);
  const percents = last?.percents ?? new Float64Array(ohms.length);
  const figures = last?.figures ?? new Float64Array(2 * ohms.length);
  const desks = newDesks();
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
    percents[i] = worstDropAt(of, state, i, r, x, desks);
  };
  const same = last?.state === state && last.of.seats === of.seats && last.of.powerFactor === of.powerFactor;
  if (same) for (const i of changed) put(i);
  else for (let i = 0; i < ohms.length; i++) put(i);
  known.set(of.chargers, { of, state, ohms, figures, percents });
  return { percents, anew: same ? [...changed] : null };
}

/**
 * The worst drop of the charger at a place, percent, through a branch of so many ohms: the one kept with the last plan where
 * it was worked from the same, else worked.
 */
export function keptDrop(of: BoxCase, state: SupplyState, i: number, { r, x }: BranchOhms, desks: Desks): number {
  const last = known.get(of.chargers);
  const same =
    last?.state === state &&
    last.of.seats === of.seats &&
    last.of.powerFactor === of.powerFactor &&
    last.figures[2 * i] === r &&
    last.figures[2 * i + 1] === x;
  return same ? last.percents[i]! : worstDropAt(of, state, i, r, x, desks);
}
