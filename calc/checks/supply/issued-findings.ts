import type { Finding } from '../../../routing/site/rules/finding.ts';
import type { Lines } from '../../../routing/site/schema/vocabulary.ts';
import type { IssuedCircuit } from '../../../routing/site/site.ts';
import type { PanelCircuit, PanelSchedule } from '../../supply/panels/panel-schedule.ts';
import type { SupplyFacts } from '../../supply/supply-facts.ts';
import { linesOfSpaces } from '../../supply/tree/issued-lines.ts';

/** What was issued and could not be kept, those of one panel that fell for one cause together. */
export function issuedFindings(facts: SupplyFacts): readonly Finding[] {
  if (facts.issued.circuits.size === 0) return [];
  const now = standing(facts);
  const causes = new Map<string, { readonly panel: string; readonly ids: string[]; readonly why: string }>();
  for (const [id, issued] of facts.issued.circuits) {
    const why = lost(id, issued, now.get(id), facts);
    if (why === null) continue;
    const key = JSON.stringify([issued.panel, why]);
    const cause = causes.get(key);
    if (cause === undefined) causes.set(key, { panel: issued.panel, ids: [id], why });
    else cause.ids.push(id);
  }
  const drawn = new Set(facts.tree.nodes.map(({ equipment }) => equipment.id));
  return [...causes.values()].map(({ panel, ids, why }) => ({
    severity: 'warn',
    rule: 'issued',
    about: [...ids.filter((id) => now.has(id)), ...(drawn.has(panel) ? [panel] : [])],
    says: `${ids.join(', ')}, issued in ${panel}, could not be kept: ${why}. The circuit moved back, or the schedule issued anew.`,
    source: 'circuits issued, as entered',
  }));
}

interface Standing {
  readonly from: string;
  readonly lines: Lines;
  readonly circuit?: PanelCircuit;
  readonly schedule?: PanelSchedule;
}

/** Every circuit that can be issued, where it is now. */
function standing({ tree, lines, chargers, loads, schedules }: SupplyFacts): ReadonlyMap<string, Standing> {
  const all = new Map<string, Standing>();
  const circuits = new Map<string, PanelCircuit>();
  for (const schedule of schedules.values()) for (const circuit of schedule.circuits) circuits.set(circuit.id, circuit);
  const add = (id: string, from: string, own: Lines): void => {
    const [circuit, schedule] = [circuits.get(id), schedules.get(from)];
    all.set(id, { from, lines: own, ...(circuit && { circuit }), ...(schedule && { schedule }) });
  };
  for (const { id, from } of chargers) add(id, from, lines.chargers.get(id) ?? 'ABC');
  for (const { id, from } of loads) add(id, from, lines.loads.get(id) ?? 'ABC');
  for (const { feeder, equipment } of tree.nodes)
    if (feeder !== null) add(feeder.id, feeder.from, lines.equipment.get(equipment.id) ?? 'ABC');
  return all;
}

/** Why a circuit is not where it was issued; null where it is. */
function lost(id: string, issued: IssuedCircuit, now: Standing | undefined, facts: SupplyFacts): string | null {
  const { panel, spaces, phases } = issued;
  if (now === undefined) return 'it is no longer drawn';
  if (now.from !== panel) return `it is fed from ${now.from}`;
  if (spaces !== undefined) {
    const [numbers, schedule] = [spaces.join(', '), now.schedule];
    if (schedule === undefined) return `${panel} has no spaces`;
    if (spaces.length !== now.lines.length) return `it has ${now.lines.length} poles and was issued ${spaces.length}`;
    const own = linesOfSpaces(spaces, schedule.rows);
    if (own === null) return `spaces ${numbers} do not lie one under another on one side`;
    if (own !== now.lines) return `spaces ${numbers} lie on ${own}, where it cannot be`;
    if (schedule.spaces !== undefined && Math.max(...spaces) > schedule.spaces)
      return `${panel} has ${schedule.spaces} spaces and none numbered ${Math.max(...spaces)}`;
    if (now.circuit?.spaces.join() !== spaces.join()) {
      const holders = schedule.circuits.filter(
        (other) => other.id !== id && other.spaces.some((space) => spaces.includes(space)),
      );
      return `spaces ${numbers} are issued to ${holders.map((other) => other.id).join(', ')}`;
    }
  }
  if (phases !== undefined && phases !== now.lines)
    return spaces === undefined
      ? `it cannot lie on ${phases} there`
      : `its spaces lie on ${now.lines} and it was issued on ${phases}`;
  return facts.tree.placeOf.has(panel) ? null : `${panel} is not fed`;
}
