import type { Finding } from '../../routing/site/finding.ts';
import type { Feeder } from '../../routing/site/site.ts';
import { ampacity } from '../circuits/ampacity.ts';
import {
  compareSizes,
  findImpedance,
  isConductorSize,
  largestDeviceFor,
  standardRatingAtLeast,
} from '../tables/lookup.ts';
import { ampsText, type SupplyFacts } from './supply-facts.ts';

/** Conductors that carry current in each raceway of a feeder: three lines; the neutral carries only what they differ by. */
const CARRYING = 3;
/** Smallest conductor that may be run in parallel. */
const SMALLEST_PARALLEL = '1/0';

/** Feeders: load over the breaker, conductors that the breaker or the load is too large for, sizes the tables lack. */
export function feederFindings(facts: SupplyFacts): readonly Finding[] {
  return facts.tree.nodes.flatMap(({ feeder, equipment }, place) => {
    if (feeder === null) return [];
    const demand = facts.demands[place]!.feederAmps;
    return [...overload(feeder, demand, facts), ...conductor(feeder, demand, facts, equipment.id)];
  });
}

function overload({ id, to, breakerAmps }: Feeder, demand: number, { tables, lines, tree }: SupplyFacts): Finding[] {
  if (demand <= breakerAmps * (1 + 1e-9)) return [];
  const steady = breakerAmps / tables.continuous.factor;
  const needed = standardRatingAtLeast(tables, demand);
  const larger = Number.isFinite(needed) ? ` A ${needed} A feeder would do;` : '';
  const managed = tree.nodes[tree.placeOf.get(to)!]!.equipment.managedAmps;
  const ceiling =
    lines.chargers.size === 0
      ? ''
      : ` so would load management at ${to} to ${ampsText(steady)} at most${managed === undefined ? '' : ` instead of ${ampsText(managed)}`}, other loads deducted.`;
  return [
    {
      severity: 'fail',
      rule: 'feeder-overload',
      about: [id, to],
      says: `Feeder ${id} to ${to} is asked for ${ampsText(demand)}, continuous load counted ${tables.continuous.factor * 100}%, and its breaker is ${breakerAmps} A.${larger}${ceiling}`,
      value: demand,
      limit: breakerAmps,
      unit: 'A',
      source: `${tables.edition} 215.3, 625.42`,
    },
  ];
}

function conductor(feeder: Feeder, demand: number, facts: SupplyFacts, to: string): Finding[] {
  const { id, breakerAmps } = feeder;
  const { size, metal, sets, insulation } = feeder.conductor;
  const { tables, rules } = facts;
  const known = isConductorSize(size);
  const carried = known
    ? ampacity(tables, {
        conductor: { size, metal, insulation },
        ambientC: rules.ambientC,
        currentCarrying: CARRYING,
        terminalC: rules.terminalC,
      })
    : null;
  if (carried === null || findImpedance(tables, size, metal, 'PVC') === undefined) {
    const says = `The tables hold no ${size} ${metal} conductor: feeder ${id} is worked without its impedance and its ampacity is not checked. Sizes read "3/0" or "250".`;
    return [{ severity: 'warn', rule: 'feeder-size', about: [id, to], says, source: tables.impedances.source }];
  }
  const findings: Finding[] = [];
  const amps = carried.ampacity * sets;
  const words = `${sets > 1 ? `${sets} sets of ` : ''}${size} ${metal} ${insulation}, ${ampsText(amps)} at ${rules.ambientC} °C`;
  const largest = largestDeviceFor(tables, amps);
  if (breakerAmps > largest)
    findings.push({
      severity: 'fail',
      rule: 'feeder-conductor',
      about: [id, to],
      says: `The ${breakerAmps} A breaker of feeder ${id} is too large for its conductors: ${words}, may have ${largest} A. A ${largest} A breaker, a larger size or one more set.`,
      value: breakerAmps,
      limit: largest,
      unit: 'A',
      source: `${tables.edition} 240.4(B), (C), ${tables.ampacity.source}`,
    });
  if (demand > amps * (1 + 1e-9) && demand <= breakerAmps)
    findings.push({
      severity: 'fail',
      rule: 'feeder-conductor',
      about: [id, to],
      says: `Feeder ${id} is asked for ${ampsText(demand)}, which its breaker allows and its conductors do not: ${words}. A larger size or one more set.`,
      value: demand,
      limit: amps,
      unit: 'A',
      source: `${tables.edition} 215.2(A)(1)`,
    });
  if (sets > 1 && compareSizes(size, SMALLEST_PARALLEL) < 0)
    findings.push({
      severity: 'fail',
      rule: 'parallel-size',
      about: [id],
      says: `Feeder ${id} has ${sets} sets of ${size}; conductors in parallel are ${SMALLEST_PARALLEL} or larger. One set of a larger size.`,
      source: `${tables.edition} 310.10(G), from memory`,
    });
  return findings;
}
