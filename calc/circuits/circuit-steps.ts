import type { Rules } from '../../routing/site/site.ts';
import { explained, type Step } from '../explain.ts';
import type { Circuit } from '../plan-shape.ts';
import { NEC_2023 } from '../tables/nec-2023.ts';
import { branch } from './branch.ts';

/**
 * The steps by which a charger's breaker, conductor and grounding conductor were found, from the code that finds them;
 * where the voltage drop asked for a larger conductor, that is the last. Empty where the tables hold no such circuit.
 */
export function circuitSteps(rules: Rules, circuit: Circuit, amps: number): readonly Step[] {
  const { ambientC, currentCarrying, conductor, sizedBy, branchDropPercent } = circuit;
  const { metal, insulation, terminalC } = rules;
  const { steps } = explained((tell) =>
    branch(NEC_2023, { amps, continuous: true, metal, insulation, ambientC, currentCarrying, terminalC }, tell),
  );
  if (sizedBy === 'ampacity') return steps;
  return [
    ...steps,
    {
      find: 'conductor for voltage drop',
      formula: 'the smallest from there up whose drop on the branch is within the limit',
      values: { limit: `${rules.dropLimit.branch} %`, drop: `${branchDropPercent.toFixed(2)} %` },
      result: `${conductor.size} ${conductor.metal} ${conductor.insulation}`,
      source: `${NEC_2023.dropAdvice.source}; site rule dropLimit.branch`,
    },
  ];
}
