import { siteRule } from '../../../routing/site/rules/rule-notes.ts';
import type { Rules } from '../../../routing/site/site.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import type { Step } from '../../words/explain.ts';
import { measured } from '../../words/measured.ts';
import type { SupplyTree } from '../tree/supply-tree.ts';
import { branchFault, type FoundBranch, loopsAtEnd } from './branch-faults.ts';
import { caseWords, faultCases } from './fault-case.ts';
import { leastSteps, ohmText } from './fault-steps.ts';

/** How the fault currents at the end of a branch were found, and what its breaker needs to trip at once. */
export function branchFaultSteps(
  { charger, circuit, place, feeding }: FoundBranch,
  { nodes }: SupplyTree,
  rules: Rules,
  tables: CodeTables,
): readonly Step[] {
  const { system } = nodes[place]!;
  const there = charger.phases === 3 ? system : { ...system, phases: 1 as const };
  const amps = branchFault(circuit, charger, feeding, rules, tables);
  if (amps === null) return [];
  const ends = loopsAtEnd(circuit.branch, feeding, rules, tables);
  const cases = faultCases(rules.fault);
  const { r, x } = circuit.branch.ohms;
  return [
    {
      find: 'available fault current at the box',
      formula:
        there.phases === 3
          ? 'volts to neutral / magnitude of the ohms of one line from the supply, R and X added'
          : 'volts / (2 x magnitude of the ohms of one line from the supply), R and X added',
      values: {
        [`at ${circuit.from}`]: ohmText(feeding.most.line),
        'one line of the branch, by the table': ohmText({ re: r, im: x }),
        'in all': ohmText(ends.most.line),
        'taken with': caseWords(cases.most),
        volts: measured(system.volts, 'V'),
      },
      result: amps.most,
      unit: 'A',
      source: `I = V / |Z|, standard theory; ${tables.impedances.source}`,
    },
    ...leastSteps(ends, amps, there, cases.least),
    {
      find: 'trips at once from',
      formula: 'times the rating of the breaker at which its instantaneous part is sure to trip',
      values: { breaker: measured(circuit.breakerAmps, 'A'), times: rules.fault.tripTimes },
      result: rules.fault.tripTimes * circuit.breakerAmps,
      unit: 'A',
      source: siteRule('fault.tripTimes'),
    },
  ];
}
