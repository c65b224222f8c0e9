import type { End } from '../../../routing/propose/equipment/place-finder.ts';
import type { Point3, Site } from '../../../routing/site/site.ts';
import type { CordToCome } from '../drops/drops-part.ts';
import { USUAL_DROP } from '../usual.ts';

/** A drop, or a stall where none hangs, that branches are to go to. */
export type BranchEnd = End & { readonly id: string };

/**
 * What new branches go to: the drops of the cords that are to come, each with as many circuits as it has such cords. Without
 * a list of cords, the drops without a charger, with the stalls that none serves dealt to the nearest that has room; where
 * no drop hangs, the middles of those stalls.
 */
export function branchEnds(site: Site, cords: readonly CordToCome[] | null): readonly BranchEnd[] {
  const { drops, chargers, stalls } = site;
  const wanted = new Map<string, number>();
  const add = (id: string): void => {
    wanted.set(id, (wanted.get(id) ?? 0) + 1);
  };
  if (cords !== null) for (const { drop } of cords) add(drop);
  else {
    const served = new Set(chargers.flatMap((one) => one.stalls));
    const open = stalls.filter(({ id }) => !served.has(id));
    if (drops.length === 0)
      return open.map(({ id, at: [x, y] }) => ({ id, at: [x, y, USUAL_DROP.elevation], circuits: 1 }));
    const hung = new Set(chargers.map(({ drop }) => drop));
    const idle = drops.filter(({ id }) => !hung.has(id));
    for (const { at } of open) {
      const near = idle
        .filter(({ id, holds = 1 }) => (wanted.get(id) ?? 0) < holds)
        .reduce<(typeof idle)[number] | null>(
          (best, one) => (best === null || far(one.box, at) < far(best.box, at) ? one : best),
          null,
        );
      if (near !== null) add(near.id);
    }
    // A drop that no stall is near is for one cord all the same.
    for (const { id } of idle) if (!wanted.has(id)) add(id);
  }
  return drops.flatMap(({ id, box }) => {
    const circuits = wanted.get(id);
    return circuits === undefined ? [] : [{ id, at: box, circuits }];
  });
}

const far = ([x, y]: Point3, [a, b]: readonly [number, number]): number => Math.hypot(x - a, y - b);
