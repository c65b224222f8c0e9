import { kept } from '../../../../routing/kept/kept.ts';
import type { Finding } from '../../../../routing/site/rules/finding.ts';
import { siteRule } from '../../../../routing/site/rules/rule-notes.ts';
import type { Rules } from '../../../../routing/site/site.ts';
import type { EquipmentBranches } from '../../../branches/equipment-branches.ts';
import { branchFault } from '../../../supply/fault/branch-faults.ts';
import type { NodeFault } from '../../../supply/fault/fault.ts';
import { ampsText, type SupplyFacts } from '../../../supply/supply-facts.ts';
import type { CodeTables } from '../../../tables/code-tables.ts';
import { cited } from '../../../tables/sections.ts';

/**
 * One note for each piece of equipment with branches at whose end the least fault current, of two lines or to ground, is
 * below what its breaker is sure to trip at on its instantaneous part; the branch with the least of it first.
 */
export const tripFindings = (
  branches: readonly EquipmentBranches[],
  { tree, faults, rules, tables }: SupplyFacts,
): readonly Finding[] =>
  branches.flatMap((own) => {
    const place = tree.placeOf.get(own.equipment.id);
    const feeding = place === undefined ? null : (faults[place] ?? null);
    if (place === undefined || feeding === null) return [];
    return tripsOf(own, feeding, rules.fault, tables);
  });

const tripsOf = kept(
  (
    { equipment, chargers, circuits }: EquipmentBranches,
    feeding: NodeFault,
    fault: Rules['fault'],
    tables: CodeTables,
  ): readonly Finding[] => {
    const slow: Slow[] = [];
    chargers.forEach((charger, i) => {
      const circuit = circuits[i] ?? null;
      const amps = circuit && branchFault(circuit, charger, feeding, { fault }, tables);
      if (circuit === null || amps === null) return;
      const { lineToLine, lineToGround = Infinity } = amps.least;
      const [least, trips] = [Math.min(lineToLine, lineToGround), fault.tripTimes * circuit.breakerAmps];
      if (least < trips * (1 - 1e-9))
        slow.push({
          charger: charger.id,
          least,
          trips,
          breaker: circuit.breakerAmps,
          isGround: lineToGround < lineToLine,
        });
    });
    return slow.length === 0 ? [] : [finding(equipment.id, slow, fault.tripTimes, tables)];
  },
);

interface Slow {
  readonly charger: string;
  readonly least: number;
  readonly trips: number;
  readonly breaker: number;
  readonly isGround: boolean;
}

function finding(equipment: string, slow: readonly Slow[], times: number, tables: CodeTables): Finding {
  const worst = slow.reduce((most, one) => (one.least / one.trips < most.least / most.trips ? one : most));
  const others = slow.filter((one) => one !== worst).map(({ charger }) => charger);
  const more = others.length === 0 ? '' : ` ${slow.length} branches of ${equipment} are like that.`;
  return {
    severity: 'note',
    rule: 'fault-trip',
    about: [worst.charger, ...others, equipment],
    says: `A fault at the box of ${worst.charger}, ${worst.isGround ? 'from a line to ground' : 'between two lines'}, may be as little as ${ampsText(worst.least)}, and its breaker is sure to trip at once only from ${ampsText(worst.trips)} on (${times} x ${worst.breaker} A): below that it takes the time of its slow part.${more} Look at its time-current curve; a larger grounding conductor or branch raises it.`,
    value: worst.least,
    limit: worst.trips,
    unit: 'A',
    source: `${cited(tables, 'faultPath')}, from memory; ${siteRule('fault.tripTimes')}`,
  };
}
