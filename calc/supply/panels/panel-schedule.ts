import { kept } from '../../../routing/kept/kept.ts';
import { addTo } from '../../../routing/lists/grouping.ts';
import type { Lines } from '../../../routing/site/schema/vocabulary.ts';
import type { Charger, Equipment, Issued, Load, Site } from '../../../routing/site/site.ts';
import type { PhasePair } from '../../plan-file/branches.ts';
import { startsWithout } from '../devices/device-place.ts';
import { linesOf, type SupplyLines, treeOf } from '../tree/supply-lines.ts';
import type { SupplyTree } from '../tree/supply-tree.ts';
import { keptSpaces } from './kept-spaces.ts';

/** One breaker of a panel. */
export interface PanelCircuit {
  /** Id of the charger, load or feeder that it serves. */
  readonly id: string;
  readonly serves: 'charger' | 'load' | 'feeder';
  readonly lines: Lines;
  /** Space numbers, one a pole; empty where the panel has no room for it on its lines. */
  readonly spaces: readonly number[];
}

/** A panel as its door card shows it: odd spaces on the left, even on the right, lines in turn down each side. */
export interface PanelSchedule {
  readonly equipment: string;
  /** Its lines, in turn down each side. */
  readonly rows: PhasePair;
  /** Breakers by their first space; those without a space last. */
  readonly circuits: readonly PanelCircuit[];
  /** Poles of all breakers. */
  readonly poles: number;
  /** Spaces of the panel; undefined where the file does not say. */
  readonly spaces?: number;
}

const SERVING_KINDS: ReadonlySet<string> = new Set(['service', 'panelboard', 'switchboard']);

/**
 * The schedule of every panelboard and switchboard, and of other equipment that has spaces. Rows run A, B, C from the top,
 * so that a breaker of two poles in the first rows lies across AB, in the next CA, then BC (common practice, no source).
 * Outgoing feeders stand first, then chargers in the order of the file, then loads; a space that no breaker left could
 * use on its lines stays blank. What was issued keeps its spaces where it can, and the others stay where they would be
 * without it but where it takes their place.
 */
export const panelSchedules = (site: Site): ReadonlyMap<string, PanelSchedule> =>
  schedulesOf(treeOf(site), linesOf(site), site.chargers, site.loads, site.issued);

type Wanted = Omit<PanelCircuit, 'spaces'>;

const schedulesOf = kept(
  (
    tree: SupplyTree,
    lines: SupplyLines,
    chargers: readonly Charger[],
    loads: readonly Load[],
    issued: Issued,
  ): ReadonlyMap<string, PanelSchedule> => {
    const wanted = wantedBy(tree, lines, chargers, loads);
    const schedules = new Map<string, PanelSchedule>();
    for (const { equipment, system } of tree.nodes) {
      const { id, kind, spaces } = equipment;
      if (!SERVING_KINDS.has(kind) && spaces === undefined) continue;
      const circuits = wanted.get(id) ?? [];
      const rows = system.phases === 3 ? 'ABC' : (lines.equipment.get(id) ?? 'AB');
      const spread: string[] = [];
      for (const circuit of circuits) {
        const own = issued.circuits.get(circuit.id);
        const spaces = own?.panel === id && own.spaces !== undefined ? own.spaces.join(' ') : '';
        const dealt = lines.dealt.get(circuit.id) ?? circuit.lines;
        spread.push(circuit.id, circuit.serves, circuit.lines, dealt, spaces);
      }
      schedules.set(id, scheduleOf(equipment, rows, spread));
    }
    return schedules;
  },
);

/** The breakers of each piece of equipment: outgoing feeders with their device there, chargers, loads. */
function wantedBy(
  tree: SupplyTree,
  lines: SupplyLines,
  chargers: readonly Charger[],
  loads: readonly Load[],
): ReadonlyMap<string, readonly Wanted[]> {
  const wanted = new Map<string, Wanted[]>();
  const add = (from: string, circuit: Wanted): void => {
    addTo(wanted, from, circuit);
  };
  for (const { feeder, equipment, parent } of tree.nodes) {
    // One whose device stands where it ends is tapped from the busbar and takes no space.
    if (feeder !== null && !startsWithout(feeder, tree.nodes[parent]!.equipment))
      add(feeder.from, { id: feeder.id, serves: 'feeder', lines: lines.equipment.get(equipment.id) ?? 'ABC' });
  }
  for (const { id, from } of chargers) add(from, { id, serves: 'charger', lines: lines.chargers.get(id)! });
  for (const { id, from } of loads) add(from, { id, serves: 'load', lines: lines.loads.get(id)! });
  return wanted;
}

/** What `spread` holds of each breaker in turn: id, what is served, lines, the lines it was dealt, spaces it was issued. */
const SPREAD = 5;

const NOT_ISSUED: readonly number[] = [];

/** The schedule of one panel, remembered for it. */
const scheduleOf = kept((equipment: Equipment, rows: PhasePair, spread: readonly string[]): PanelSchedule => {
  const wanted: Wanted[] = [];
  const dealt: Lines[] = [];
  const issued: (readonly number[])[] = [];
  for (let i = 0; i < spread.length; i += SPREAD) {
    const [id, serves, lines] = [spread[i]!, spread[i + 1], spread[i + 2]] as [string, Wanted['serves'], Lines];
    wanted.push({ id, serves, lines });
    dealt.push(spread[i + 3] as Lines);
    issued.push(spread[i + 4] === '' ? NOT_ISSUED : spread[i + 4]!.split(' ').map(Number));
  }
  const words = wanted.map(({ lines }) => lines);
  const spaces = keptSpaces(words, dealt, issued, rows, equipment.spaces);
  const circuits = wanted.map((circuit, i) => ({
    id: circuit.id,
    serves: circuit.serves,
    lines: circuit.lines,
    spaces: spaces[i]!,
  }));
  return {
    equipment: equipment.id,
    rows,
    circuits: circuits.sort((a, b) => (a.spaces[0] ?? Infinity) - (b.spaces[0] ?? Infinity) || 0),
    poles: words.reduce((sum, { length }) => sum + length, 0),
    ...(equipment.spaces === undefined ? {} : { spaces: equipment.spaces }),
  };
});
