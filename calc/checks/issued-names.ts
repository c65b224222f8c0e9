import { kept } from '../../routing/kept/kept.ts';
import type { Finding } from '../../routing/site/rules/finding.ts';
import type { Issued } from '../../routing/site/site.ts';
import type { EquipmentBranches } from '../branches/equipment-branches.ts';
import type { IssuedConduits } from '../branches/home-runs/conduit-names.ts';

const NONE: readonly Finding[] = [];

/** Names of conduits and junction boxes that were issued and could not be kept. Nothing is looked at where none were. */
export const issuedNameFindings = (
  branches: readonly EquipmentBranches[],
  { conduits, boxes }: Pick<Issued, 'conduits' | 'boxes'>,
): readonly Finding[] =>
  conduits.size === 0 && boxes.size === 0
    ? NONE
    : [
        ...(conduits.size === 0 ? NONE : lostConduits(conduits, branches)),
        ...(boxes.size === 0 ? NONE : lostBoxes(boxes, branches)),
      ];

const lostConduits = kept((issued: IssuedConduits, branches: readonly EquipmentBranches[]): readonly Finding[] => {
  const now = new Map<string, readonly string[]>();
  for (const { circuits } of branches)
    for (const circuit of circuits) if (circuit !== null) now.set(circuit.charger, circuit.conduits);
  return lost(issued, now, 'conduit');
});

const lostBoxes = kept((issued: IssuedConduits, branches: readonly EquipmentBranches[]): readonly Finding[] => {
  const now = new Map<string, readonly string[]>();
  for (const { homeRuns } of branches)
    for (const { circuits, junctions } of homeRuns)
      circuits.forEach(({ charger }, i) => {
        now.set(charger, junctions[i]!);
      });
  return lost(issued, now, 'junction box');
});

/** What was issued and is not in its place, `now` being the names along the way of each charger that has a circuit. */
function lost(
  issued: IssuedConduits,
  now: ReadonlyMap<string, readonly string[]>,
  noun: 'conduit' | 'junction box',
): readonly Finding[] {
  const gone: { readonly charger: string; readonly says: string }[] = [];
  for (const [key, name] of issued) {
    const at = key.lastIndexOf('/');
    const charger = key.slice(0, at);
    const own = now.get(charger);
    const id = own?.[Number(key.slice(at + 1)) - 1];
    if (id === name) continue;
    const why =
      own === undefined
        ? `${charger} has no circuit`
        : id === undefined
          ? `the way of ${charger} has ${own.length} and no ${key.slice(at + 1)}`
          : `it is ${id} now, which was issued for another of its circuits, or that name stands elsewhere`;
    gone.push({ charger, says: `${name} (${key}): ${why}` });
  }
  if (gone.length === 0) return NONE;
  const told = gone.slice(0, 5).map(({ says }) => says);
  const nouns = noun === 'conduit' ? 'conduits' : 'junction boxes';
  return [
    {
      severity: 'warn',
      rule: 'issued',
      about: [...new Set(gone.flatMap(({ charger }) => (now.has(charger) ? [charger] : [])))],
      says: `${gone.length === 1 ? `The name of a ${noun}` : `The names of ${gone.length} ${nouns}`} could not be kept as issued. ${told.join('; ')}${gone.length > told.length ? '; and more' : ''}. The way moved back, or the names issued anew.`,
      value: gone.length,
      source: `${nouns} issued, as entered`,
    },
  ];
}
