import { kept, keptByKey } from '../../../routing/kept/kept.ts';
import type { Rules } from '../../../routing/site/site.ts';
import type { BranchChoice } from '../../circuits/branch-choices.ts';
import { type BranchSize, branchSize, type LengthByKind } from '../../circuits/branch-size.ts';
import { methodRaceway } from '../../tables/conductor-of.ts';
import { hottestOn } from '../ambient.ts';
import type { Design } from '../design.ts';
import type { ConduitWay } from '../way.ts';
import type { InstalledCost } from './installed-cost.ts';

/** The branch of one member of a home run, beside so many others. */
export interface Occupant extends BranchSize {
  /** Current-carrying conductors in the fullest conduit on the way, nipples aside. */
  readonly currentCarrying: number;
  readonly ambientC: number;
  readonly poles: number;
  readonly pilot: boolean;
  /** Dollars of its line conductors in place. */
  readonly dollars: number;
  /** Feet of its conductors by what the raceways are made of. */
  readonly lengths: LengthByKind;
  /** What it puts in a conduit: members alike here fill one alike. */
  readonly load: string;
}

/** Conductors of a circuit that carry current: two lines of a line-to-line charger, three of a three-phase one. */
export const polesOf = (phases: 1 | 3): number => (phases === 3 ? 3 : 2);

/** More conductors than these are in no conduit that is weighed, so that a number tells a gauge and a count. */
const MOST_CARRYING = 4096;

/**
 * The branch along a way with `currentCarrying` conductors in its fullest conduit; null where no conductor will do. The same
 * for ways that are alike: a row of boxes asks for a few lengths, and the groupings that are weighed put the same few
 * numbers of others beside each again and again.
 */
export const memberOf = keptByKey(
  ({ gauge }: ConduitWay, currentCarrying: number) => gauge * MOST_CARRYING + currentCarrying,
  sized,
);

function sized({ tables, rules, cost }: Design, way: ConduitWay, currentCarrying: number): Occupant | null {
  const { charger } = way;
  const surroundings = { ambientC: hottestOn(tables, rules, way.like), currentCarrying };
  const lengths = lengthByKind(way, rules.allowance);
  const size = branchSize(tables, rules, charger, surroundings, lengths);
  if (size === null) return null;
  const { choice, ohms, dropPercent } = size;
  const poles = polesOf(charger.phases);
  const pilot = charger.pilot === true;
  return {
    choice,
    ohms,
    dropPercent,
    currentCarrying,
    ambientC: surroundings.ambientC,
    poles,
    pilot,
    lengths,
    dollars: poles * way.run.conductorLength! * footOf(choice, cost),
    load: loadOf(choice, poles, pilot),
  };
}

/** What a choice costs a foot of one line. */
const footOf = kept((choice: BranchChoice, cost: InstalledCost): number => {
  const { size, metal, insulation } = choice.conductor;
  return cost.conductorFoot(size, metal, insulation);
});

/** One string for members alike, not one for each. */
const loadOf = kept(
  ({ conductor, grounding }: BranchChoice, poles: number, pilot: boolean): string =>
    `${poles}x${conductor.size} ${grounding.size}${pilot ? ' pilot' : ''}`,
);

/** Conductor length by raceway kind; the allowances belong to the kinds at the ends. */
export function lengthByKind(way: ConduitWay, allowance: Rules['allowance']): LengthByKind {
  const lengths: Partial<Record<'PVC' | 'aluminum' | 'steel', number>> = {};
  const add = (leg: number, feet: number): void => {
    const kind = methodRaceway(way.methods[leg] ?? 'EMT');
    lengths[kind] = (lengths[kind] ?? 0) + feet;
  };
  way.legs.forEach((_, leg) => {
    add(leg, way.at[leg + 1]! - way.at[leg]!);
  });
  add(0, allowance.equipment);
  add(way.legs.length - 1, allowance.box);
  return lengths;
}
