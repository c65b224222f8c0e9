import { addTo } from '../../routing/lists/grouping.ts';
import { printLength } from '../../routing/site/numbers/feet-inches.ts';
import { printTemperature } from '../../routing/site/numbers/temperature.ts';
import type { Finding } from '../../routing/site/rules/finding.ts';
import type { Units } from '../../routing/site/schema/vocabulary.ts';
import type { Charger, Drop, Rules } from '../../routing/site/site.ts';
import type { Design } from '../branches/design.ts';
import type { EquipmentBranches } from '../branches/equipment-branches.ts';
import type { BranchCircuit } from '../branches/named.ts';
import { branchDropLimit, branchDropSource } from '../circuits/branch-size.ts';
import type { CodeTables } from '../tables/code-tables.ts';

/** Branch drop past its limit in any size, loads past the tables, and pilots past their capacitance budget. */
export function circuitFindings(
  branches: EquipmentBranches,
  drops: readonly Drop[],
  { tables, rules }: Design,
  units: Units,
): readonly Finding[] {
  const findings: Finding[] = branches.unsized.map((charger) => unsized(charger, branches.equipment.id, tables, rules));
  for (const circuit of branches.circuits)
    if (circuit !== null && circuit.branchDropPercent > branchDropLimit(rules, circuit.way.charger))
      findings.push(branchDrop(circuit, tables, rules));
  return [...findings, ...pilotFindings(branches, drops, rules, units)];
}

const unsized = ({ id, amps }: Charger, from: string, tables: CodeTables, rules: Rules): Finding => ({
  severity: 'fail',
  rule: 'circuit-size',
  about: [id, from],
  says: `${id} asks for more than one conductor of the tables carries: ${amps} A continuous at ${printTemperature(rules.ambientC)} in ${rules.metal} ${rules.insulation}. Feed it as a feeder, with conductors in parallel.`,
  value: amps,
  unit: 'A',
  source: tables.ampacity.source,
});

function branchDrop(circuit: BranchCircuit, tables: CodeTables, rules: Rules): Finding {
  const { charger, from, conductor, branchDropPercent, way } = circuit;
  const limit = branchDropLimit(rules, way.charger);
  return {
    severity: 'fail',
    rule: 'branch-drop',
    about: [charger, from],
    says: `The branch of ${charger} drops ${branchDropPercent.toFixed(2)}% with ${conductor.size}, the largest conductor of the tables; the limit is ${limit}%. Feed it from nearer by or at a higher voltage.`,
    value: branchDropPercent,
    limit,
    unit: '%',
    source: `${tables.dropAdvice.source}; ${branchDropSource(way.charger)}`,
  };
}

/** Longest branch, ft, that leaves a pilot within its capacitance budget behind a cord of so many feet; may be under 0. */
export const longestPilotBranch = ({ pilot }: Rules, cord: number): number =>
  (pilot.budgetPicofarads - pilot.sourcePicofarads - pilot.cordPicofaradsPerFoot * cord) /
  pilot.branchPicofaradsPerFoot;

/** One finding for all pilots of the equipment behind cords of one length, so that a row of them does not drown the rest. */
function pilotFindings(
  branches: EquipmentBranches,
  drops: readonly Drop[],
  rules: Rules,
  units: Units,
): readonly Finding[] {
  const past = new Map<number, BranchCircuit[]>();
  branches.circuits.forEach((circuit, i) => {
    const { cord } = drops[i]!;
    if (circuit?.pilot !== true || circuit.way.run.conductorLength! <= longestPilotBranch(rules, cord)) return;
    addTo(past, cord, circuit);
  });
  return [...past].map(([cord, circuits]) => {
    const longest = circuits.reduce((most, { way }) => Math.max(most, way.run.conductorLength!), 0);
    const limit = Math.max(0, longestPilotBranch(rules, cord));
    const { sourcePicofarads, cordPicofaradsPerFoot, branchPicofaradsPerFoot, budgetPicofarads } = rules.pilot;
    const length = (feet: number): string => printLength(feet, units);
    return {
      severity: 'warn',
      rule: 'pilot-budget',
      about: [...circuits.map(({ charger }) => charger), branches.equipment.id],
      says: `${circuits.length === 1 ? `The pilot of ${circuits[0]!.charger} is` : `The pilots of ${circuits.length} chargers of ${branches.equipment.id} are`} longer than the capacitance budget allows: up to ${length(longest)} of branch, where ${length(limit)} would do behind a ${length(cord)} cord. Assumed: ${sourcePicofarads} pF at the source, ${cordPicofaradsPerFoot} pF/ft of cord, ${branchPicofaradsPerFoot} pF/ft of branch, ${budgetPicofarads} pF in all. Put the pilot's source at the drop, or go by the limit that the equipment's maker lists.`,
      value: longest,
      limit,
      unit: 'ft',
      source: 'IEC 61851-1 Annex A budget of source and cable; capacitance per foot is a guess unless measured',
    };
  });
}
