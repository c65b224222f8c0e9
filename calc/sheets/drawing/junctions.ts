import type { Point3, Site } from '../../../routing/site/site.ts';
import type { Conduit } from '../../plan-shape.ts';

/** A box on the raceways where conduits of a home run part: the site has no element for it, the plan names it. */
export interface Junction {
  /** `P1-3.J1`. */
  readonly id: string;
  readonly at: Point3;
}

/** The junctions of the conduits, each once, in the order in which conduits meet them. */
export function junctionsOf(site: Site, conduits: readonly Conduit[]): readonly Junction[] {
  const known = new Set([...site.equipment, ...site.drops, ...site.pullpoints].map(({ id }) => id));
  const junctions = new Map<string, Junction>();
  for (const { from, to, path } of conduits)
    for (const [id, at] of [
      [from, path[0]],
      [to, path.at(-1)],
    ] as const)
      if (at !== undefined && !known.has(id) && !junctions.has(id)) junctions.set(id, { id, at });
  return [...junctions.values()];
}
