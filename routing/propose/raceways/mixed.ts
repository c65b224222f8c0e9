import type { RacewaysProposal } from './raceway-make.ts';

/**
 * A proposal with what another one laid for the branches of some equipment in place of its own. Both are of one site, and of
 * one way to lay feeders; whether the pieces meet is for a plan to tell.
 * @param isOf whether a charger or a piece of equipment is one of those that the other one serves
 */
export function mixed(own: RacewaysProposal, other: RacewaysProposal, isOf: (id: string) => boolean): RacewaysProposal {
  const pick = <T>(
    from: (one: RacewaysProposal) => readonly T[],
    idOf: (row: T) => string | undefined,
  ): readonly T[] => {
    const isOther = (row: T): boolean => {
      const id = idOf(row);
      return id !== undefined && isOf(id);
    };
    return [...from(own).filter((row) => !isOther(row)), ...from(other).filter(isOther)];
  };
  const routed = pick(
    (one) => one.routed,
    ({ of }) => of,
  );
  return {
    raceways: pick(
      (one) => one.raceways,
      ({ of }) => of,
    ),
    stringers: pick(
      (one) => one.stringers,
      ({ of }) => of,
    ),
    inAir: pick(
      (one) => one.inAir,
      (id) => id,
    ),
    routed,
    cost: routed.reduce((sum, one) => sum + one.cost, 0),
    // Lines that were looked at are the same in both: so is the least that any routes along them cost.
    bound: own.bound,
    paid: pick(
      (one) => one.paid,
      ({ from }) => from,
    ),
    isSteady: own.isSteady && other.isSteady,
    without: pick(
      (one) => one.without,
      ({ id }) => id,
    ),
  };
}
