import type { Finding } from '../../../routing/site/rules/finding.ts';
import type { SupplyFacts } from '../../supply/supply-facts.ts';
import { eitherIsOver, feederIsOver } from '../../supply/tree/over-limit.ts';

/** One finding of all that works over the voltage at which the tables end: what is worked of it, and what is refused. */
export function overLimitFindings({ tree, tables }: SupplyFacts): readonly Finding[] {
  const over = tree.nodes.filter((node) => eitherIsOver(tables, node));
  if (over.length === 0) return [];
  const feeders = over.flatMap((node) => (feederIsOver(tables, node) ? [node.feeder!.id] : []));
  const equipment = over.map((node) => node.equipment.id);
  const volts = Math.max(...over.map(({ system, primary }) => Math.max(system.volts, primary?.volts ?? 0)));
  const { upToVolts, source } = tables.lowVoltage;
  const conductors =
    feeders.length === 0
      ? ''
      : ` Of ${feeders.length === 1 ? 'feeder' : 'feeders'} ${feeders.join(', ')} no ampacity, device, raceway, fill or grounding conductor is worked, drawn or priced, and the ohms are those of low-voltage conductors of the size.`;
  return [
    {
      severity: 'warn',
      rule: 'over-limit',
      about: [...feeders, ...equipment],
      says: `${equipment.join(', ')} ${equipment.length === 1 ? 'works' : 'work'} at up to ${volts} V, over the ${upToVolts} V at which the tables of this planner end. Volts, amperes and fault current are worked there.${conductors} Protection of the transformer there, clearances and working space are not looked at either: the utility or who designs for that voltage says them.`,
      value: volts,
      limit: upToVolts,
      unit: 'V',
      source: `${source}, from memory`,
    },
  ];
}
