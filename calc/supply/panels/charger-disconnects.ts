import { kept } from '../../../routing/kept/kept.ts';
import type { Charger } from '../../../routing/site/site.ts';
import { branchBreaker } from '../../circuits/branch.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import type { SupplyTree } from '../tree/supply-tree.ts';
import { disconnect } from './disconnect.ts';
import { voltsToGround } from './working-needs.ts';

/** A charger that has to have a disconnect. */
export interface DisconnectNeed {
  readonly charger: Charger;
  readonly says: string;
  /** True where equipment that is drawn as a disconnect, or whose breakers are said to be lockable, feeds it. */
  readonly drawn: boolean;
  /** Feet from it to a disconnect of its own, 0 where it is part of it; null where nothing says that it has one. */
  readonly own: number | null;
  /** Standard rating that the disconnect takes, A: that of the branch's breaker; null past the largest. */
  readonly amps: number | null;
}

/** Chargers that have to have a disconnect, in their order. Remembered: where drops stand has no say in it. */
export const disconnectNeeds = kept(
  (chargers: readonly Charger[], tree: SupplyTree, tables: CodeTables): readonly DisconnectNeed[] =>
    chargers.flatMap((charger): DisconnectNeed[] => {
      const place = tree.placeOf.get(charger.from);
      const node = place === undefined ? undefined : tree.nodes[place];
      const { amps, volts, phases } = charger;
      const ground = node === undefined ? undefined : voltsToGround(node.system);
      const { needed, says } = disconnect(tables, { amps, volts, phases, voltsToGround: ground });
      if (!needed) return [];
      const rating = branchBreaker(tables, amps, true);
      return [
        {
          charger,
          says,
          drawn: node?.equipment.kind === 'disconnect' || node?.equipment.lockable === true,
          own: charger.disconnect ?? null,
          amps: Number.isFinite(rating) ? rating : null,
        },
      ];
    }),
);
