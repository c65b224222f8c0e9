import { counting } from '../../../routing/kept/counting.ts';
import { kept } from '../../../routing/kept/kept.ts';
import type { Equipment, Load } from '../../../routing/site/site.ts';
import { startsBare } from '../../supply/devices/unprotected-feeder.ts';
import { ratingOf } from '../../supply/panels/demand.ts';
import { eitherIsOver } from '../../supply/tree/over-limit.ts';
import type { SupplyNode, SupplyTree } from '../../supply/tree/supply-tree.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { isConductorSize } from '../../tables/sizes.ts';

export const NAMEPLATE = 'ratings as entered';

export const managed = counting<Equipment>(({ managedAmps }) => managedAmps !== undefined);
export const spaced = counting<Equipment>(({ spaces }) => spaces !== undefined);
export const measuredDemand = counting<Equipment>(
  ({ kind, existingAmps }) => kind === 'source' && existingAmps !== undefined,
);
export const withBus = counting<Equipment>(({ busAmps }) => busAmps !== undefined);
export const withMain = counting<Equipment>(({ mainAmps }) => mainAmps !== undefined);
export const generating = counting<Load>(({ generation }) => generation === true);

export const interrupting = counting<Equipment>(({ interruptingAmps }) => interruptingAmps !== undefined);

export const fed = counting<SupplyNode>(({ feeder }) => feeder !== null);
export const unheld = counting<SupplyNode>(({ feeder }) => feeder !== null && !isConductorSize(feeder.conductor.size));
export const parallel = counting<SupplyNode>(({ feeder }) => feeder !== null && feeder.conductor.sets > 1);
/** Transformers, and what a source feeds. */
export const groundable = counting<SupplyNode>(({ primary, feeder }) => primary !== null || feeder !== null);
export const transformers = counting<SupplyNode>(({ primary }) => primary !== null);
export const rated = counting<SupplyNode>(({ primary, equipment }) => primary !== null && equipment.kva !== undefined);
export const protectable = counting<SupplyNode>(
  ({ primary, equipment, feeder }) => primary !== null && equipment.kva !== undefined && feeder !== null,
);

export const limited = kept(
  (tree: SupplyTree): number =>
    tree.nodes.filter(({ primary, feeder }, place) =>
      primary === null ? ratingOf(tree, place) !== undefined : feeder !== null,
    ).length,
);

export const taps = kept(
  (tree: SupplyTree): number =>
    tree.nodes.filter((node) => startsBare(node, tree) && tree.nodes[node.parent]!.primary === null).length,
);

export const overIn = kept(
  (tree: SupplyTree, tables: CodeTables): number => tree.nodes.filter((node) => eitherIsOver(tables, node)).length,
);
