import type { Drop, Site } from '../../routing/site/site.ts';

/**
 * Of the drops that are not yet set, other than one that is named, that which hangs nearest to it in the plan; without a
 * name the first. Null where all are set.
 */
export function nearestOpen({ drops, asBuilt }: Pick<Site, 'drops' | 'asBuilt'>, id: string | null): Drop | null {
  const from = drops.find((drop) => drop.id === id)?.box;
  let best: { readonly drop: Drop; readonly feet: number } | null = null;
  for (const drop of drops) {
    if (drop.id === id || asBuilt.get(drop.id)?.checkedOn !== undefined) continue;
    if (!from) return drop;
    const feet = Math.hypot(drop.box[0] - from[0], drop.box[1] - from[1]);
    if (best === null || feet < best.feet) best = { drop, feet };
  }
  return best?.drop ?? null;
}
