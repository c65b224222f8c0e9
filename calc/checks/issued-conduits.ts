import { kept } from '../../routing/kept/kept.ts';
import type { Finding } from '../../routing/site/rules/finding.ts';
import { conduitKey, type IssuedConduits } from '../branches/conduit-names.ts';
import type { EquipmentBranches } from '../branches/equipment-branches.ts';

const NONE: readonly Finding[] = [];

/** Names of conduits that were issued and could not be kept. Nothing is looked at where none were. */
export const issuedConduitFindings = (
  branches: readonly EquipmentBranches[],
  issued: IssuedConduits,
): readonly Finding[] => (issued.size === 0 ? NONE : found(issued, branches));

const found = kept((issued: IssuedConduits, branches: readonly EquipmentBranches[]): readonly Finding[] => {
  const now = new Map<string, string>();
  const most = new Map<string, number>();
  for (const { circuits } of branches)
    for (const circuit of circuits) {
      if (circuit === null) continue;
      most.set(circuit.charger, circuit.conduits.length);
      circuit.conduits.forEach((id, i) => {
        now.set(conduitKey(circuit.charger, i + 1), id);
      });
    }
  const lost: { readonly key: string; readonly charger: string; readonly says: string }[] = [];
  for (const [key, name] of issued) {
    const id = now.get(key);
    if (id === name) continue;
    const charger = key.slice(0, key.lastIndexOf('/'));
    const count = most.get(charger);
    const why =
      count === undefined
        ? `${charger} has no circuit`
        : id === undefined
          ? `the way of ${charger} has ${count} and no ${key.slice(key.lastIndexOf('/') + 1)}`
          : `it is ${id} now, which was issued for another of its circuits, or that name stands elsewhere`;
    lost.push({ key, charger, says: `${name} (${key}): ${why}` });
  }
  if (lost.length === 0) return NONE;
  const told = lost.slice(0, 5).map(({ says }) => says);
  return [
    {
      severity: 'warn',
      rule: 'issued',
      about: [...new Set(lost.flatMap(({ charger }) => (most.has(charger) ? [charger] : [])))],
      says: `${lost.length === 1 ? 'The name of a conduit' : `The names of ${lost.length} conduits`} could not be kept as issued. ${told.join('; ')}${lost.length > told.length ? '; and more' : ''}. The way moved back, or the names issued anew.`,
      value: lost.length,
      source: 'conduits issued, as entered',
    },
  ];
});
