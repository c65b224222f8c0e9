import type { Finding } from '../../../routing/site/rules/finding.ts';
import { counted } from '../../../routing/words/counted.ts';
import { connectedLoads } from '../../supply/panels/connected-lines.ts';
import { toNeutralAmps } from '../../supply/panels/neutral.ts';
import type { SupplyFacts } from '../../supply/supply-facts.ts';

/** Of a transformer, electronic loads past this share of its rating are asked about. Common practice, no source. */
const ASKED_FROM = 0.5;

/**
 * Transformers most of whose rating feeds rectifiers: chargers, and what lies from a line to neutral. What their
 * harmonics are is not in the site, so it is a question, with what decides it.
 */
export function harmonicFindings(facts: SupplyFacts): readonly Finding[] {
  const { tree, lines, chargers, loads, rules } = facts;
  if (!tree.nodes.some(({ primary }) => primary !== null)) return [];
  const connected = connectedLoads(tree, lines, chargers, loads);
  const neutral = toNeutralAmps(tree, lines, loads);
  return tree.nodes.flatMap(({ equipment, primary }, place): Finding[] => {
    const { id, kva } = equipment;
    if (primary === null || kva === undefined) return [];
    const { managedVa } = connected[place]!;
    const share = managedVa / (1000 * kva);
    if (share < ASKED_FROM) return [];
    const beyond = countBeyond(facts, place);
    const third = rules.thirdHarmonic * neutral[place]!;
    const also = third < 0.5 ? '' : ` Loads to neutral add ${third.toFixed(0)} A of third harmonic to its neutral.`;
    return [
      {
        severity: 'note',
        rule: 'harmonics',
        about: [id],
        says: `${Math.round(100 * share)}% of the rating of ${id} feeds ${counted(beyond, 'charger')}, whose rectifiers may draw harmonics that heat its windings: ask the maker of the chargers for their harmonic current, and from it whether ${id} is to have a K rating (K-4, K-13) or a larger size. Chargers with power factor correction draw little.${also}`,
        value: 100 * share,
        limit: 100 * ASKED_FROM,
        unit: '%',
        source:
          'K ratings of transformers for nonsinusoidal loads, IEEE C57.110 and UL 1561, from memory; when to ask: common practice, no source',
      },
    ];
  });
}

/** Chargers on a node and on what hangs beyond it. */
function countBeyond({ tree, chargers }: SupplyFacts, place: number): number {
  const inside = new Set([tree.nodes[place]!.equipment.id]);
  for (const { equipment, parent } of tree.nodes)
    if (parent >= 0 && inside.has(tree.nodes[parent]!.equipment.id)) inside.add(equipment.id);
  return chargers.filter(({ from }) => inside.has(from)).length;
}
