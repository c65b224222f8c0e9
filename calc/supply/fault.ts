import { magnitude, type Phasor, plus } from './phasor.ts';
import type { SupplyModel } from './supply-model.ts';
import type { SupplyTree } from './supply-tree.ts';
import { toNeutral } from './system.ts';

/**
 * Bolted fault current at each node, A, as far as the nearest transformer above says: unlimited supply at its primary, its
 * impedance, then one line of each feeder. Three-phase where there are three lines, else line to line. Undefined where
 * there is no transformer with an impedance above, and past a feeder of which nothing is known.
 * Source: I = V / (sqrt 3 |Z|), for a transformer alone I = full-load amperes x 100 / Z%.
 */
export function faultAmpsOf(tree: SupplyTree, model: SupplyModel): readonly (number | undefined)[] {
  const ohms: (Phasor | undefined)[] = [];
  tree.nodes.forEach(({ primary, parent }, place) => {
    const feeder = model.feederOhms[place] ?? null;
    const above = parent < 0 ? undefined : ohms[parent];
    if (primary !== null) ohms.push(model.windingOhms[place] ?? undefined);
    else ohms.push(above === undefined || feeder === null ? undefined : plus(above, feeder));
  });
  return ohms.map((z, place) => {
    if (z === undefined) return undefined;
    const { system } = tree.nodes[place]!;
    return system.phases === 3 ? toNeutral(system) / magnitude(z) : system.volts / (2 * magnitude(z));
  });
}
