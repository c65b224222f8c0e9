import { lineAmps } from '../../circuits/line-amps.ts';
import type { SupplyTree } from '../tree/supply-tree.ts';

/** Places of a piece of equipment and of all that hangs on it. */
export function placesBeyond({ nodes }: SupplyTree, place: number): ReadonlySet<number> {
  const beyond = new Set([place]);
  for (let at = place + 1; at < nodes.length; at++) if (beyond.has(nodes[at]!.parent)) beyond.add(at);
  return beyond;
}

/**
 * Places of the service equipment behind a root of the supply: what is drawn as such; on a way where nothing is, the first
 * that is neither the utility's point nor a transformer.
 */
export function servicesOf(tree: SupplyTree, root: number): readonly number[] {
  const { nodes } = tree;
  const drawn = (place: number): boolean => nodes[place]!.equipment.kind === 'service';
  const passed = (place: number): boolean => {
    const { kind } = nodes[place]!.equipment;
    return kind === 'source' || kind === 'transformer' || [...placesBeyond(tree, place)].some(drawn);
  };
  const found: number[] = [];
  const within = new Set([root]);
  for (let place = root; place < nodes.length; place++) {
    if (!within.has(place)) continue;
    if (drawn(place) || !passed(place)) found.push(place);
    else
      nodes.forEach(({ parent }, child) => {
        if (parent === place) within.add(child);
      });
  }
  return found;
}

/**
 * Where the load of a service is told: at its service equipment where there is one piece and all that draws hangs behind
 * it, else at its source.
 */
export function placeOfLoad(
  tree: SupplyTree,
  services: readonly number[],
  root: number,
  drawing: readonly number[],
): number {
  if (services.length !== 1) return root;
  const behind = placesBeyond(tree, services[0]!);
  const here = placesBeyond(tree, root);
  return drawing.every((place) => behind.has(place) || !here.has(place)) ? services[0]! : root;
}

/** Amperes at one place as they are at another across what lies between: the same volt-amperes. */
export function ampsAt({ nodes }: SupplyTree, amps: number, from: number, at: number): number {
  const [there, here] = [nodes[from]!.system, nodes[at]!.system];
  return lineAmps(amps * there.volts * (there.phases === 3 ? Math.sqrt(3) : 1), here.volts, here.phases);
}
