import { kept } from '../../../routing/kept/kept.ts';
import { LINES } from '../../../routing/site/schema/vocabulary.ts';
import type { Charger, Load } from '../../../routing/site/site.ts';
import type { SupplyLines } from '../tree/supply-lines.ts';
import type { SupplyTree } from '../tree/supply-tree.ts';
import { addDraw, type Draws } from './draws.ts';
import type { SupplyModel } from './supply-model.ts';

/** Where each charger stands in the supply, in the order of the file. */
export interface Seats {
  /** Node that feeds it. */
  readonly node: Int32Array;
  /** Bus that it hangs on. */
  readonly bus: Int32Array;
  /** Place of its lines in `LINES`. */
  readonly lines: Uint8Array;
  /** Its line amperes, and the nominal volts line to line of what feeds it: together, for all are gone through often. */
  readonly amps: Float64Array;
  readonly nominal: Float64Array;
}

/** Seats of the chargers. Remembered for a tree; RangeError for a charger fed by equipment that is not in it. */
export const seatsOf = kept(
  (tree: SupplyTree, model: SupplyModel, lines: SupplyLines, chargers: readonly Charger[]): Seats => {
    const node = Int32Array.from(chargers, ({ id, from }) => {
      const place = tree.placeOf.get(from);
      if (place === undefined) throw new RangeError(`charger ${id} is fed by ${from}, which is not there`);
      return place;
    });
    return {
      node,
      bus: node.map((place) => model.loadBus[place]!),
      lines: Uint8Array.from(chargers, ({ id }) => LINES.indexOf(lines.chargers.get(id)!)),
      amps: Float64Array.from(chargers, ({ amps }) => amps),
      nominal: Float64Array.from(node, (place) => tree.nodes[place]!.system.volts),
    };
  },
);

/** Draws of the chargers at a lagging power factor, of the loads as `vaOf` counts each, under the managed ceilings. */
export function drawsOf(
  tree: SupplyTree,
  model: SupplyModel,
  lines: SupplyLines,
  chargerAmps: Float64Array,
  loads: readonly Load[],
  how: {
    readonly powerFactor: number;
    /** What the chargers, and the ceilings with them, count times. */
    readonly factor: number;
    readonly vaOf: (load: Load) => number;
  },
): Draws {
  const along = how.factor * how.powerFactor;
  const behind = -how.factor * Math.sqrt(1 - how.powerFactor ** 2);
  const current = new Float64Array(chargerAmps.length);
  for (let at = 0; at < chargerAmps.length; at += 2) {
    current[at] = along * chargerAmps[at]!;
    current[at + 1] = behind * chargerAmps[at]!;
  }
  const power = new Float64Array(chargerAmps.length);
  for (const load of loads) {
    const place = tree.placeOf.get(load.from);
    if (place !== undefined) addDraw(power, model.loadBus[place]!, lines.loads.get(load.id)!, how.vaOf(load), 0);
  }
  const ceiling = new Float64Array(model.buses.length).fill(Infinity);
  tree.nodes.forEach(({ equipment }, place) => {
    if (equipment.managedAmps !== undefined) ceiling[model.loadBus[place]!] = how.factor * equipment.managedAmps;
  });
  return { power, current, ceiling };
}
