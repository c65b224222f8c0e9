import type { Charger, Feeder, Load, Site } from '../../routing/site/site.ts';
import type { Lines } from '../../routing/site/vocabulary.ts';
import { remembered } from '../memo.ts';
import type { PhasePair } from '../plan-shape.ts';
import { linesOf, type SupplyLines, treeOf } from './supply-lines.ts';
import type { SupplyTree } from './supply-tree.ts';

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
  /** Breakers by their first space; those without a space last. */
  readonly circuits: readonly PanelCircuit[];
  /** Poles of all breakers. */
  readonly poles: number;
  /** Spaces of the panel; undefined where the file does not say. */
  readonly spaces?: number;
}

const SERVING_KINDS: ReadonlySet<string> = new Set(['panelboard', 'switchboard']);

/**
 * The schedule of every panelboard and switchboard, and of other equipment that has spaces. Rows run A, B, C from the top,
 * so that a breaker of two poles in the first rows lies across AB, in the next CA, then BC (common practice, no source).
 * Outgoing feeders stand first, then chargers in the order of the file, then loads; a space that no breaker left could
 * use on its lines stays blank.
 */
export const panelSchedules = (site: Site): ReadonlyMap<string, PanelSchedule> =>
  schedulesOf(treeOf(site), linesOf(site), site.chargers, site.loads);

const schedulesOf = remembered(
  (
    tree: SupplyTree,
    lines: SupplyLines,
    chargers: readonly Charger[],
    loads: readonly Load[],
  ): ReadonlyMap<string, PanelSchedule> => {
    const wanted = new Map<string, Omit<PanelCircuit, 'spaces'>[]>();
    const add = (from: string, circuit: Omit<PanelCircuit, 'spaces'>): void => {
      const list = wanted.get(from);
      if (list === undefined) wanted.set(from, [circuit]);
      else list.push(circuit);
    };
    for (const { feeder, equipment } of tree.nodes) {
      const incoming = lines.equipment.get(equipment.id);
      if (feeder !== null && incoming !== undefined) add(feeder.from, outgoing(feeder, incoming));
    }
    for (const { id, from } of chargers) add(from, { id, serves: 'charger', lines: lines.chargers.get(id)! });
    for (const { id, from } of loads) add(from, { id, serves: 'load', lines: lines.loads.get(id)! });
    const schedules = new Map<string, PanelSchedule>();
    for (const { equipment, system } of tree.nodes) {
      const { id, kind, spaces } = equipment;
      if (!SERVING_KINDS.has(kind) && spaces === undefined) continue;
      const circuits = wanted.get(id) ?? [];
      const rows = system.phases === 3 ? 'ABC' : (lines.equipment.get(id) ?? 'AB');
      schedules.set(id, {
        equipment: id,
        circuits: placed(circuits, rows, spaces),
        poles: circuits.reduce((sum, circuit) => sum + circuit.lines.length, 0),
        ...(spaces === undefined ? {} : { spaces }),
      });
    }
    return schedules;
  },
);

const outgoing = ({ id }: Feeder, incoming: PhasePair): Omit<PanelCircuit, 'spaces'> => ({
  id,
  serves: 'feeder',
  lines: incoming,
});

/** Breakers down both sides, at each free row the first one left with most poles that fits its lines there. */
function placed(
  circuits: readonly Omit<PanelCircuit, 'spaces'>[],
  rows: string,
  spaces: number | undefined,
): PanelCircuit[] {
  // Breakers that fit where a line begins, in order, by poles and first line; more poles first.
  const queues = new Map<string, Omit<PanelCircuit, 'spaces'>[]>();
  for (const circuit of circuits) {
    const key = startKey(circuit.lines, rows);
    const queue = queues.get(key);
    if (queue === undefined) queues.set(key, [circuit]);
    else queue.push(circuit);
  }
  for (const queue of queues.values()) queue.reverse();
  const done: PanelCircuit[] = [];
  const next: [number, number] = [0, 0];
  const last = spaces === undefined ? Infinity : spaces;
  let left = circuits.length;
  while (left > 0) {
    const side = next[0] <= next[1] ? 0 : 1;
    const row = next[side]!;
    if (2 * row + side + 1 > last) {
      if (2 * next[1 - side]! + (1 - side) + 1 > last) break;
      next[side] = Infinity;
      continue;
    }
    const circuit = takeAt(queues, rows, row, (poles) => 2 * (row + poles - 1) + side + 1 <= last);
    if (circuit === undefined) {
      next[side] = row + 1;
      continue;
    }
    const poles = circuit.lines.length;
    done.push({ ...circuit, spaces: Array.from({ length: poles }, (_, i) => 2 * (row + i) + side + 1) });
    next[side] = row + poles;
    left -= 1;
  }
  const homeless = [...queues.values()].flatMap((queue) => queue.reverse());
  done.sort((a, b) => a.spaces[0]! - b.spaces[0]!);
  return [...done, ...homeless.map((circuit) => ({ ...circuit, spaces: [] }))];
}

/** Poles and the line that the first of them must be on; any line will do where all lines are taken. */
const startKey = (lines: Lines, rows: string): string =>
  lines.length === rows.length ? `${lines.length}` : `${lines.length}${lines[0]}`;

function takeAt(
  queues: ReadonlyMap<string, Omit<PanelCircuit, 'spaces'>[]>,
  rows: string,
  row: number,
  hasRoom: (poles: number) => boolean,
): Omit<PanelCircuit, 'spaces'> | undefined {
  const line = rows[row % rows.length]!;
  for (let poles = rows.length; poles >= 1; poles--) {
    const queue = queues.get(poles === rows.length ? `${poles}` : `${poles}${line}`);
    if (queue !== undefined && queue.length > 0 && hasRoom(poles)) return queue.pop();
  }
  return undefined;
}
