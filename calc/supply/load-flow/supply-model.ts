import { kept } from '../../../routing/kept/kept.ts';
import type { PhasePair } from '../../plan-file/branches.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { findImpedance } from '../../tables/conductor-of.ts';
import type { RacewayKind } from '../../tables/table.ts';
import type { SupplyLines } from '../tree/supply-lines.ts';
import type { SupplyNode, SupplyTree } from '../tree/supply-tree.ts';
import { nominalPhasors, toNeutral } from '../tree/system.ts';
import { singlePhaseWinding, threePhaseWinding, windingOhms } from '../tree/windings.ts';
import { fourWire, uncoupled } from './phase-matrix.ts';
import { type Phasor, scaled } from './phasor.ts';
import type { Bus } from './sweep.ts';

/** The electrical network of a supply tree. Node and bus lists run from the roots out. */
export interface SupplyModel {
  readonly buses: readonly Bus[];
  /** Bus that the chargers and loads of each node hang on: a transformer's secondary. */
  readonly loadBus: readonly number[];
  /** Bus where the feeder of each node arrives: a transformer's primary. */
  readonly feedBus: readonly number[];
  /** Ohms of one line of each node's feeder; null where none comes in or nothing is known of it. */
  readonly feederOhms: readonly (Phasor | null)[];
  /** Ohms of one line of each transformer, on its secondary; null where they are not known, and for other equipment. */
  readonly windingOhms: readonly (Phasor | null)[];
}

/**
 * Buses of a supply tree. A feeder has Table 9 resistance and reactance, by its sets and length, in each line and, where
 * its system has one, in the neutral. A transformer has its percent impedance on the secondary. A feeder without a length
 * or of a conductor that the tables lack has none, which findings say.
 */
export const supplyModel = kept(
  (
    tree: SupplyTree,
    lines: SupplyLines,
    lengths: readonly (number | null)[],
    kinds: readonly RacewayKind[],
    tables: CodeTables,
  ): SupplyModel => {
    const buses: Bus[] = [];
    const loadBus: number[] = [];
    const feedBus: number[] = [];
    const feeders: (Phasor | null)[] = [];
    const windings: (Phasor | null)[] = [];
    tree.nodes.forEach((node, place) => {
      const ohms = feederOhms(node, lengths[place] ?? null, kinds[place] ?? 'PVC', tables);
      const system = node.primary ?? node.system;
      const above = node.parent < 0 ? null : tree.nodes[node.parent]!.system;
      buses.push({
        parent: node.parent < 0 ? -1 : loadBus[node.parent]!,
        nominal: toNeutral(system),
        held: above === null ? heldVolts(node) : null,
        ratio: null,
        back: null,
        impedance: ohms === null ? null : above?.neutral == null ? uncoupled(ohms) : fourWire(ohms),
      });
      feedBus.push(buses.length - 1);
      feeders.push(ohms);
      const inside = node.primary === null ? null : transformerOhms(node, tables);
      if (node.primary !== null)
        buses.push(secondaryBus(node, buses.length - 1, inside, lines.equipment.get(node.equipment.id) ?? 'ABC'));
      windings.push(inside);
      loadBus.push(buses.length - 1);
    });
    return { buses, loadBus, feedBus, feederOhms: feeders, windingOhms: windings };
  },
);

/** The same network with nothing in the way: for sums at nominal voltage. */
export const withoutImpedance = kept((buses: readonly Bus[]): readonly Bus[] =>
  buses.map((bus) => ({ ...bus, impedance: null })),
);

const heldVolts = ({ primary, system }: SupplyNode): Float64Array =>
  new Float64Array(nominalPhasors(primary ?? system).flatMap(({ re, im }) => [re, im]));

/** Ohms of one line of a feeder: Table 9 over its sets, times its length in feet. */
function feederOhms(
  { feeder }: SupplyNode,
  length: number | null,
  kind: RacewayKind,
  tables: CodeTables,
): Phasor | null {
  if (feeder === null || length === null) return null;
  const { size, metal, sets } = feeder.conductor;
  const found = findImpedance(tables, size, metal, kind);
  return found === undefined ? null : scaled({ re: found.r, im: found.x }, length / 1000 / sets);
}

/** X/R of a transformer whose nameplate figure is not given: the middle of the plausible band of the nearest size. */
export function usualXr(tables: CodeTables, kva: number): number {
  const rows = tables.threePhaseImpedances.rows;
  const row = rows.find((other) => kva <= other.kva) ?? rows.at(-1);
  return row === undefined ? 1 : (row.xr[0] + row.xr[1]) / 2;
}

function transformerOhms({ equipment, system }: SupplyNode, tables: CodeTables): Phasor | null {
  const { kva, impedancePercent, xr } = equipment;
  if (kva === undefined || impedancePercent === undefined) return null;
  const ohms = windingOhms(impedancePercent, xr ?? usualXr(tables, kva), { kva, secondaryVolts: system.volts });
  return system.phases === 3 ? ohms : scaled(ohms, 0.5);
}

function secondaryBus(node: SupplyNode, parent: number, ohms: Phasor | null, incoming: PhasePair): Bus {
  const turns = node.system.volts / node.primary!.volts;
  const z = ohms ?? { re: 0, im: 0 };
  const first = Math.max(0, 'ABC'.indexOf(incoming[0]!));
  const winding =
    node.system.phases === 3
      ? threePhaseWinding('delta-wye', turns, z)
      : singlePhaseWinding([first, (first + 1) % 3], turns, scaled(z, 2));
  return { parent, nominal: toNeutral(node.system), held: null, ...winding };
}
