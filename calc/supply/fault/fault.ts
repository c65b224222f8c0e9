import { kept, keptByKey } from '../../../routing/kept/kept.ts';
import type { Rules } from '../../../routing/site/site.ts';
import type { FaultAmps } from '../../plan-file/supply.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { findImpedance } from '../../tables/conductor-of.ts';
import type { RacewayKind } from '../../tables/table.ts';
import { groundWire } from '../bonding/ground-wire.ts';
import { magnitude, type Phasor, scaled } from '../load-flow/phasor.ts';
import type { SupplyModel } from '../load-flow/supply-model.ts';
import { feederIsOver } from '../tree/over-limit.ts';
import type { SupplyNode, SupplyTree } from '../tree/supply-tree.ts';
import { type System, toNeutral } from '../tree/system.ts';
import { faultCases } from './fault-case.ts';
import { type FaultLoops, faultLoops } from './fault-loops.ts';

/** Of one node: its currents, and the loops that they are of. Currents are null where there is no end to them. */
export interface NodeFault {
  readonly amps: FaultAmps | null;
  readonly most: FaultLoops;
  readonly least: FaultLoops;
  /** What the lines and the neutral there are. */
  readonly system: System;
}

/**
 * Fault currents at each node of a supply: from the utility's figure at the source, or an unlimited supply where it gives
 * none; R and X of every feeder (Table 9) and transformer added, a transformer's primary side by the square of its ratio.
 * The most with cold conductors and transformers of less than their nameplate impedance, the least with hot ones and of
 * more (`faultCases`). Null past a feeder or transformer of which nothing is known. Motors left out. Kept.
 * Source: I = V / |Z|, symmetrical components for faults to neutral and to ground, standard theory.
 */
export const faultsOf = kept(
  (
    tree: SupplyTree,
    model: SupplyModel,
    lengths: readonly (number | null)[],
    kinds: readonly RacewayKind[],
    ambients: readonly number[],
    rules: Rules['fault'],
    terminalC: Rules['terminalC'],
    tables: CodeTables,
  ): readonly (NodeFault | null)[] => {
    const grounds = tree.nodes.map((node, place) =>
      groundOhms(
        node,
        groundWire(tables, tree.nodes, place, terminalC, ambients[place]!)?.size ?? null,
        lengths[place] ?? null,
        kinds[place] ?? 'PVC',
        tables,
      ),
    );
    const cases = faultCases(rules);
    const most = faultLoops(tree, model, grounds, cases.most, tables);
    const least = faultLoops(tree, model, grounds, cases.least, tables);
    return tree.nodes.map(({ system }, place) => {
      const [a, b] = [most[place] ?? null, least[place] ?? null];
      return a === null || b === null ? null : nodeFault(LIKE, a, b, system);
    });
  },
);

const LIKE = {};

/** The same object for nodes alike: their branches are then mostly alike as well, and looked at once. */
const nodeFault = keptByKey(
  (most: FaultLoops, least: FaultLoops, system: System) => JSON.stringify([most, least, system]),
  (_, most: FaultLoops, least: FaultLoops, system: System): NodeFault => ({
    amps: ampsOf(most, least, system),
    most,
    least,
    system,
  }),
);

/**
 * Ohms of the way back beside a feeder, one with each set: of its grounding conductor, else of the neutral, which is as its
 * lines; null where nothing says what they are.
 */
function groundOhms(
  node: SupplyNode,
  wire: string | null,
  length: number | null,
  kind: RacewayKind,
  tables: CodeTables,
): Phasor | null {
  const { feeder } = node;
  if (feeder === null || length === null || feederIsOver(tables, node)) return null;
  const { size, metal, sets } = feeder.conductor;
  const found = findImpedance(tables, wire ?? size, metal, kind);
  return found === undefined ? null : scaled({ re: found.r, im: found.x }, length / 1000 / sets);
}

/** Currents of the loops of both cases; null where nothing is in the way. */
export function ampsOf(most: FaultLoops, least: FaultLoops, system: System): FaultAmps | null {
  const z = magnitude(most.line);
  if (z === 0) return null;
  const volts = toNeutral(system);
  const { re, im } = most.line;
  return {
    most: system.phases === 3 ? volts / z : system.volts / (2 * z),
    ...(re > 0 ? { xr: im / re } : {}),
    ...(most.neutral === null ? {} : { lineToNeutral: volts / magnitude(most.neutral) }),
    least: {
      lineToLine: system.volts / (2 * magnitude(least.line)),
      ...(least.ground === null ? {} : { lineToGround: volts / magnitude(least.ground) }),
    },
    isUnlimited: most.isUnlimited,
  };
}
