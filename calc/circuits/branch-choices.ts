import { keptByKey } from '../../routing/kept/kept.ts';
import type { Insulation } from '../../routing/site/schema/vocabulary.ts';
import type { Rules } from '../../routing/site/site.ts';
import type { CodeTables } from '../tables/code-tables.ts';
import { findConductorArea, findImpedance } from '../tables/conductor-of.ts';
import { sizesUpFrom } from '../tables/sizes.ts';
import type { PerRaceway } from '../tables/table.ts';
import type { Tell } from '../words/explain.ts';
import { ampacity, type PowerConductor, type Surroundings } from './ampacity.ts';
import { branch, branchBreaker, branchConductor, type ConductorDuty } from './branch.ts';
import { BY_A_HAIR, grounding } from './grounding.ts';

/** One way to build a branch: the breaker that its load asks for, and a conductor that may carry it. */
export interface BranchChoice {
  readonly breakerAmps: number;
  readonly conductor: { readonly size: string; readonly metal: Rules['metal']; readonly insulation: Insulation };
  readonly grounding: { readonly size: string };
  /** Whether the load asked for this size, or the length of some branch did. */
  readonly sizedBy: 'ampacity' | 'voltage drop';
  readonly factors: { readonly ambient: number; readonly bundling: number };
  /** Amperes after factors and terminal limit. */
  readonly ampacity: number;
  /** Of one line, ohms per 1000 ft (Chapter 9 Table 9). */
  readonly impedance: PerRaceway<{ readonly r: number; readonly x: number }>;
}

/**
 * The conductors that may carry a continuous load in some surroundings, smallest first: the one that its amperes ask for,
 * and those that a long branch may grow to. Empty where the tables hold no breaker or no single conductor for it. A lot
 * asks for the same few loads thousands of times.
 */
export const branchChoices = (
  tables: CodeTables,
  rules: Rules,
  amps: number,
  surroundings: Surroundings,
): readonly BranchChoice[] => choices(rules, tables, amps, surroundings);

const choices = keptByKey(
  ({ edition }: CodeTables, amps: number, { ambientC, currentCarrying }: Surroundings) =>
    `${edition} ${amps} ${ambientC} ${currentCarrying}`,
  (rules: Rules, tables: CodeTables, amps: number, surroundings: Surroundings): readonly BranchChoice[] =>
    worked(tables, rules, amps, surroundings),
);

function worked(tables: CodeTables, rules: Rules, amps: number, surroundings: Surroundings): readonly BranchChoice[] {
  const duty = dutyOf(tables, rules, amps, surroundings);
  if (!Number.isFinite(duty.breakerAmps)) return [];
  const needed = branchConductor(tables, duty);
  if (needed === null) return [];
  return sizesUpFrom(needed.size).flatMap((size) => choiceOf(tables, duty, { ...needed, size }, needed) ?? []);
}

function dutyOf(
  tables: CodeTables,
  { metal, insulation, terminalC }: Rules,
  amps: number,
  { ambientC, currentCarrying }: Surroundings,
): ConductorDuty & Pick<Rules, 'metal' | 'insulation'> {
  const breakerAmps = branchBreaker(tables, amps, true);
  return { amps, continuous: true, breakerAmps, metal, insulation, terminalC, ambientC, currentCarrying };
}

/** Null for a size that the tables do not know in full: its impedance, its area over the insulation, its ampacity. */
function choiceOf(
  tables: CodeTables,
  duty: ReturnType<typeof dutyOf>,
  conductor: PowerConductor,
  needed: PowerConductor,
): BranchChoice | null {
  const { breakerAmps, metal, insulation, terminalC, ambientC, currentCarrying } = duty;
  const { size } = conductor;
  const [PVC, aluminum, steel] = (['PVC', 'aluminum', 'steel'] as const).map((kind) =>
    findImpedance(tables, size, metal, kind),
  );
  const carried = ampacity(tables, { conductor, ambientC, currentCarrying, terminalC });
  if (PVC === undefined || aluminum === undefined || steel === undefined || carried === null) return null;
  if (findConductorArea(tables, insulation, size) === undefined) return null;
  return {
    breakerAmps,
    conductor: { size, metal, insulation },
    grounding: grounding(tables, {
      breakerAmps,
      metal,
      conductor: size,
      conductorNeeded: needed.size,
      slack: BY_A_HAIR,
    }),
    sizedBy: size === needed.size ? 'ampacity' : 'voltage drop',
    factors: { ambient: carried.temperatureFactor, bundling: carried.bundlingFactor },
    ampacity: carried.ampacity,
    impedance: { PVC, aluminum, steel },
  };
}

/** Tells how a choice came about: breaker and conductor for the load, and the grounding conductor that it takes. */
export function tellChoice(
  tables: CodeTables,
  rules: Rules,
  amps: number,
  surroundings: Surroundings,
  { breakerAmps, conductor }: BranchChoice,
  tell: Tell,
): void {
  const duty = dutyOf(tables, rules, amps, surroundings);
  const needed = branch(tables, duty, tell)?.conductor.size;
  if (needed !== conductor.size)
    grounding(
      tables,
      { breakerAmps, metal: rules.metal, conductor: conductor.size, conductorNeeded: needed, slack: BY_A_HAIR },
      tell,
    );
}
