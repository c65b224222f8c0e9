import { magnitude, type Phasor, plus, scaled } from '../load-flow/phasor.ts';
import type { SupplyModel } from '../load-flow/supply-model.ts';
import type { SupplyNode, SupplyTree } from '../tree/supply-tree.ts';
import { toNeutral } from '../tree/system.ts';

/** Ohms of one line from the supply to each node, on the side that its loads hang on; undefined where they are not known. */
export function faultOhmsOf({ nodes }: SupplyTree, model: SupplyModel): readonly (Phasor | undefined)[] {
  const ohms: (Phasor | undefined)[] = [];
  nodes.forEach((node, place) => {
    const { parent, primary, system } = node;
    if (parent < 0 && primary === null) {
      ohms.push(sourceOhms(node));
      return;
    }
    const above = parent < 0 ? undefined : ohms[parent];
    const feeder = model.feederOhms[place] ?? null;
    const arriving = above === undefined || feeder === null ? undefined : plus(above, feeder);
    if (primary === null) {
      ohms.push(arriving);
      return;
    }
    const winding = model.windingOhms[place] ?? undefined;
    // Where nothing is known of the supply ahead, it is taken as unlimited.
    const referred = arriving === undefined ? { re: 0, im: 0 } : scaled(arriving, (system.volts / primary.volts) ** 2);
    ohms.push(winding === undefined ? undefined : plus(winding, referred));
  });
  return ohms;
}

/** Ohms of one line of the utility, from the figure that it gives: all reactance where it gives no X/R. */
function sourceOhms({ equipment: { faultAmps, faultXr }, system }: SupplyNode): Phasor | undefined {
  if (faultAmps === undefined) return undefined;
  const z = system.phases === 3 ? toNeutral(system) / faultAmps : system.volts / (2 * faultAmps);
  const re = faultXr === undefined ? 0 : z / Math.hypot(1, faultXr);
  return { re, im: faultXr === undefined ? z : faultXr * re };
}

/**
 * Bolted fault current at each node, A: from the utility's figure at the source, or, where it is not given, from the nearest
 * transformer above on an unlimited supply; R and X of every feeder (Table 9) and transformer added, a transformer's primary
 * side by the square of its ratio. Three-phase where there are three lines, else line to line. Undefined where neither is
 * above, and past a feeder or transformer of which nothing is known. Motors left out.
 * Source: I = V / (sqrt 3 |Z|), standard theory.
 */
export function faultAmpsOf(tree: SupplyTree, model: SupplyModel): readonly (number | undefined)[] {
  return faultOhmsOf(tree, model).map((z, place) => {
    if (z === undefined) return undefined;
    const { system } = tree.nodes[place]!;
    return system.phases === 3 ? toNeutral(system) / magnitude(z) : system.volts / (2 * magnitude(z));
  });
}
