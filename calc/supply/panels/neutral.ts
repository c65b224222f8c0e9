import { addTo } from '../../../routing/lists/grouping.ts';
import type { Load } from '../../../routing/site/site.ts';
import { loadAmps } from '../tree/load-lines.ts';
import type { SupplyLines } from '../tree/supply-lines.ts';
import type { SupplyTree } from '../tree/supply-tree.ts';

/** Current of the neutral of a board, A. */
export interface NeutralAmps {
  /** At the frequency of the supply: what the lines do not cancel. */
  readonly fundamental: number;
  /** Third harmonics of what lies from a line to neutral: they are in step, and add up. */
  readonly third: number;
  /** Both together: the root of the sum of the squares. */
  readonly rms: number;
}

/**
 * Amperes of the loads that lie from a line to neutral on each piece of equipment and beyond it up to the next
 * transformer (whose delta keeps third harmonics from the lines ahead), in the order of the tree. Chargers lie across two
 * lines or on three and have no current in the neutral.
 */
export function toNeutralAmps(tree: SupplyTree, lines: SupplyLines, loads: readonly Load[]): readonly number[] {
  const loadsOf = new Map<string, Load[]>();
  for (const load of loads) if (load.generation !== true) addTo(loadsOf, load.from, load);
  const sums = tree.nodes.map(({ equipment, system }) =>
    (loadsOf.get(equipment.id) ?? []).reduce((sum, load) => {
      const own = lines.loads.get(load.id) ?? 'ABC';
      return own.length === 1 ? sum + loadAmps(load, system, own) : sum;
    }, 0),
  );
  for (let place = sums.length - 1; place >= 0; place--) {
    const { parent, primary } = tree.nodes[place]!;
    if (parent >= 0 && primary === null) sums[parent]! += sums[place]!;
  }
  return sums;
}

/**
 * Current of a neutral with third harmonics: those of each load to neutral, a share of its current, add up without
 * cancelling, three lines' in one conductor.
 * @param fundamental at the frequency of the supply, A
 * @param toNeutral sum of the amperes of loads from a line to neutral
 * @param share of third harmonic in their current
 */
export function neutralAmps(fundamental: number, toNeutral: number, share: number): NeutralAmps {
  const third = share * toNeutral;
  return { fundamental, third, rms: Math.hypot(fundamental, third) };
}
