import { kept } from '../../../routing/kept/kept.ts';
import type { Metal } from '../../../routing/site/schema/vocabulary.ts';
import type { Charger, Rules } from '../../../routing/site/site.ts';
import type { EquipmentBranches } from '../../branches/equipment-branches.ts';
import type { Occupant } from '../../branches/home-runs/member.ts';
import type { BranchCircuit } from '../../branches/named.ts';
import type { LengthByKind } from '../../circuits/branch-size.ts';
import type { ChargerFault, FaultAmps } from '../../plan-file/supply.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { findImpedance, resistanceShare } from '../../tables/conductor-of.ts';
import { RACEWAY_KINDS } from '../../tables/table.ts';
import { type Phasor, plus } from '../load-flow/phasor.ts';
import type { SupplyFacts } from '../supply-facts.ts';
import { ampsOf, type NodeFault } from './fault.ts';
import { type FaultCase, faultCases } from './fault-case.ts';
import { endOfBranch, type FaultLoops } from './fault-loops.ts';

/**
 * Fault currents at the end of a branch, at its box: the loops of what feeds it, and two lines (three of a three-phase
 * charger) and the grounding conductor of the branch by Table 9. The steel of its raceways, which takes part of a fault to
 * ground, is left out: the least errs to less. The same object for branches alike behind what is alike.
 */
export const branchFault = (
  circuit: BranchCircuit,
  { phases }: Charger,
  feeding: NodeFault,
  { fault }: Pick<Rules, 'fault'>,
  tables: CodeTables,
): FaultAmps | null => faultAt(circuit.branch, phases, feeding, fault, tables);

const faultAt = kept(
  (
    branch: Occupant,
    phases: Charger['phases'],
    feeding: NodeFault,
    fault: Rules['fault'],
    tables: CodeTables,
  ): FaultAmps | null => {
    const ends = loopsAtEnd(branch, feeding, { fault }, tables);
    const { system } = feeding;
    return ampsOf(ends.most, ends.least, phases === 3 ? system : { ...system, phases: 1 as const });
  },
);

/** The loops of a fault at the end of a branch, in both cases. */
export function loopsAtEnd(
  { ohms: { r, x }, lengths, choice: { conductor, grounding } }: Occupant,
  feeding: Pick<NodeFault, 'most' | 'least'>,
  rules: Pick<Rules, 'fault'>,
  tables: CodeTables,
): Pick<NodeFault, 'most' | 'least'> {
  const { most, least } = faultCases(rules.fault);
  const { metal } = conductor;
  const ground = groundOhms(lengths, grounding.size, metal, tables);
  const after = (loops: FaultLoops, { conductorC }: FaultCase): FaultLoops => {
    const share = resistanceShare(tables, metal, conductorC);
    const line = { re: r * share, im: x };
    return endOfBranch(loops, line, ground && { re: ground.re * share, im: ground.im });
  };
  return { most: after(feeding.most, most), least: after(feeding.least, least) };
}

/** Of the grounding conductor of branches alike, end to end; null where the table has no row for it. */
const groundOhms = kept((lengths: LengthByKind, size: string, metal: Metal, tables: CodeTables): Phasor | null => {
  let ohms: Phasor = { re: 0, im: 0 };
  for (const kind of RACEWAY_KINDS) {
    const feet = lengths[kind];
    if (feet === undefined) continue;
    const found = findImpedance(tables, size, metal, kind);
    if (found === undefined) return null;
    ohms = plus(ohms, { re: (found.r * feet) / 1000, im: (found.x * feet) / 1000 });
  }
  return ohms;
});

type FaultFacts = Pick<SupplyFacts, 'tree' | 'faults' | 'rules' | 'tables'>;

/** One branch with what feeds it, for the steps of its fault currents. */
export interface FoundBranch {
  readonly charger: Charger;
  readonly circuit: BranchCircuit;
  readonly place: number;
  readonly feeding: NodeFault;
}

/** The branch of a charger; null where it has none, or nothing is known of what feeds it. */
export function branchFaultOf(
  branches: readonly EquipmentBranches[],
  { tree, faults }: FaultFacts,
  charger: string,
): FoundBranch | null {
  for (const { equipment, chargers, circuits } of branches) {
    const at = chargers.findIndex(({ id }) => id === charger);
    const circuit = circuits[at] ?? null;
    const place = tree.placeOf.get(equipment.id);
    const feeding = place === undefined ? null : (faults[place] ?? null);
    if (at >= 0)
      return circuit === null || place === undefined || feeding === null
        ? null
        : { charger: chargers[at]!, circuit, place, feeding };
  }
  return null;
}

/** Fault currents at the boxes of all chargers that have a branch behind a supply of which something is known. */
export const chargerFaults = (
  branches: readonly EquipmentBranches[],
  { tree, faults, rules, tables }: FaultFacts,
): readonly ChargerFault[] =>
  branches.flatMap(({ equipment, chargers, circuits }) => {
    const place = tree.placeOf.get(equipment.id);
    const feeding = place === undefined ? null : (faults[place] ?? null);
    if (place === undefined || feeding === null) return [];
    return chargers.flatMap((charger, i) => {
      const circuit = circuits[i] ?? null;
      const fault = circuit && branchFault(circuit, charger, feeding, rules, tables);
      return fault === null ? [] : [{ charger: charger.id, ...fault }];
    });
  });
