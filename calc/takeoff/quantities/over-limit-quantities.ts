import { kept } from '../../../routing/kept/kept.ts';
import type { Site } from '../../../routing/site/site.ts';
import { takeoffKind } from '../../prices/kind.ts';
import { feederWays } from '../../supply/feeders/feeder-ways.ts';
import { feederIsOver } from '../../supply/tree/over-limit.ts';
import { treeOf } from '../../supply/tree/supply-lines.ts';
import type { SupplyTree } from '../../supply/tree/supply-tree.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { type Tally, tallying } from '../tally.ts';

const NOTHING: Tally = new Map();

/** New feeders over the voltage of the tables: how long they are, for nothing else of them is worked. */
export function overLimitTally(site: Site, tables: CodeTables): Tally {
  const tree = treeOf(site);
  return anyOver(tree, tables) ? overTally(tree, feederWays(site, tree).lengths, tables) : NOTHING;
}

const anyOver = kept((tree: SupplyTree, tables: CodeTables): boolean =>
  tree.nodes.some((node) => feederIsOver(tables, node)),
);

const overTally = kept(({ nodes }: SupplyTree, lengths: readonly (number | null)[], tables: CodeTables): Tally => {
  const { add, tally } = tallying();
  nodes.forEach((node, place) => {
    const { feeder, primary, system } = node;
    if (feeder === null || feeder.existing === true || !feederIsOver(tables, node)) return;
    const kind = takeoffKind({
      item: 'feeder over 1,000 V',
      spec: `${(primary ?? system).volts} V`,
      unit: 'ft',
      basis: 'its length; conductors, raceway and terminations as they are designed for its voltage',
    });
    add(kind, feeder.id, lengths[place] ?? 0);
  });
  return tally;
});
