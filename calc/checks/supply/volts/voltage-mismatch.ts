import { addTo } from '../../../../routing/lists/grouping.ts';
import type { Finding } from '../../../../routing/site/rules/finding.ts';
import type { Charger, Load } from '../../../../routing/site/site.ts';
import type { SupplyFacts } from '../../../supply/supply-facts.ts';
import { type System, suitsVolts, systemName, toNeutral } from '../../../supply/tree/system.ts';

/** Chargers and loads whose rated voltage or phases their equipment does not have: one finding for each kind on each. */
export function mismatchFindings({ tree, chargers, loads }: SupplyFacts): readonly Finding[] {
  const systemAt = (id: string): System | undefined => tree.nodes[tree.placeOf.get(id) ?? -1]?.system;
  return [
    ...told(chargers, systemAt, ({ volts, phases }, system) => chargerSuits(volts, phases, system), 'charger'),
    ...told(loads, systemAt, loadSuits, 'load'),
  ];
}

const chargerSuits = (volts: number, phases: 1 | 3, system: System): boolean =>
  suitsVolts(volts, system.volts) && phases <= system.phases;

function loadSuits({ volts, phases }: Load, system: System): boolean {
  if (phases === 3) return system.phases === 3 && suitsVolts(volts, system.volts);
  return suitsVolts(volts, system.volts) || (system.neutral !== null && suitsVolts(volts, toNeutral(system)));
}

function told<T extends Charger | Load>(
  items: readonly T[],
  systemAt: (id: string) => System | undefined,
  suits: (item: T, system: System) => boolean,
  word: string,
): Finding[] {
  const wrong = new Map<string, T[]>();
  for (const item of items) {
    const system = systemAt(item.from);
    if (system === undefined || suits(item, system)) continue;
    const key = `${item.from} ${item.volts} ${item.phases}`;
    addTo(wrong, key, item);
  }
  return [...wrong.values()].map((list) => finding(list, systemAt(list[0]!.from)!, word));
}

function finding(list: readonly (Charger | Load)[], system: System, word: string): Finding {
  const { id, from, volts, phases } = list[0]!;
  const who =
    list.length === 1
      ? `${word === 'charger' ? 'Charger' : 'Load'} ${id} is`
      : `${list.length} ${word}s from ${id} on are`;
  const lines = phases === 3 ? 'three-phase' : 'single-phase';
  return {
    severity: 'fail',
    rule: 'voltage-mismatch',
    about: [...list.map((item) => item.id), from],
    says: `${who} rated ${volts} V ${lines} and ${from} has ${systemName(system)}, ${system.phases === 3 ? 'three-phase' : 'single-phase'}. Their drop and load are worked at what ${from} has. Another rating, other equipment to feed from, or a transformer.`,
    value: volts,
    limit: system.volts,
    unit: 'V',
    source: 'ratings as entered; within 5% of nominal, common practice, no source',
  };
}
