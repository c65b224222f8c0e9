import type { Point3 } from '../../site/site.ts';
import type { ProposedRaceway, ProposedStringer, RacewaysProposal } from './raceway-make.ts';
import { besideStanding } from './walked.ts';

/**
 * A proposal with what another one laid for the branches of some equipment in place of its own. Both are of one site, and of
 * one way to lay feeders; what both laid, each for another piece of equipment, is there once. Whether the pieces meet is for
 * a plan to tell.
 * @param isOf whether a charger or a piece of equipment is one of those that the other one serves
 */
export function mixed(own: RacewaysProposal, other: RacewaysProposal, isOf: (id: string) => boolean): RacewaysProposal {
  const pick = <T>(
    from: (one: RacewaysProposal) => readonly T[],
    idOf: (row: T) => string | undefined,
    beside: (its: readonly T[], stay: readonly T[]) => readonly T[] = (its) => its,
  ): readonly T[] => {
    const isOther = (row: T): boolean => {
      const id = idOf(row);
      return id !== undefined && isOf(id);
    };
    const stay = from(own).filter((row) => !isOther(row));
    return [...stay, ...beside(from(other).filter(isOther), stay)];
  };
  const routed = pick(
    (one) => one.routed,
    ({ of }) => of,
  );
  return {
    raceways: pick(
      (one) => one.raceways,
      ({ of }) => of,
      racewaysBeside,
    ),
    stringers: pick(
      (one) => one.stringers,
      ({ of }) => of,
      stringersBeside,
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

/** What was laid for some equipment, and for some more beside that. */
export function joined(first: RacewaysProposal, then: RacewaysProposal): RacewaysProposal {
  const routed = [...first.routed, ...then.routed];
  return {
    raceways: [...first.raceways, ...then.raceways],
    stringers: [...first.stringers, ...stringersBeside(then.stringers, first.stringers)],
    inAir: [...first.inAir, ...then.inAir],
    routed,
    cost: routed.reduce((sum, one) => sum + one.cost, 0),
    bound: routed.reduce((sum, one) => sum + one.bound, 0),
    paid: [...first.paid, ...then.paid],
    isSteady: first.isSteady && then.isSteady,
    without: [...first.without, ...then.without],
  };
}

/** What of some raceways does not lie on others, in as many pieces as that leaves of each. */
function racewaysBeside(its: readonly ProposedRaceway[], stay: readonly ProposedRaceway[]): readonly ProposedRaceway[] {
  const there = stay.map(({ path }) => path);
  return its.flatMap((one) => {
    const straights = one.path.slice(1).map((to, i): readonly [Point3, Point3] => [one.path[i]!, to]);
    const left = besideStanding(straights, there);
    if (left.length === straights.length && left.every((straight, i) => straight === straights[i])) return [one];
    const paths: Point3[][] = [];
    for (const [a, b] of left)
      if (paths.at(-1)?.at(-1) === a) paths.at(-1)!.push(b);
      else paths.push([a, b]);
    return paths.map((path) => ({ ...one, path }));
  });
}

function stringersBeside(
  its: readonly ProposedStringer[],
  stay: readonly ProposedStringer[],
): readonly ProposedStringer[] {
  const keyOf = ({ from, to }: ProposedStringer): string => JSON.stringify([from, to]);
  const there = new Set(stay.map(keyOf));
  return its.filter((one) => !there.has(keyOf(one)));
}
