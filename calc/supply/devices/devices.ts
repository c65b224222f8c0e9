import { kept } from '../../../routing/kept/kept.ts';
import type { Charger, Load, Site } from '../../../routing/site/site.ts';
import type { Device } from '../../plan-file/supply.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { linesOf, treeOf } from '../tree/supply-lines.ts';
import type { SupplyTree } from '../tree/supply-tree.ts';
import { chargerDevices, loadDevices } from './branch-devices.ts';
import { supplyDevices } from './supply-devices.ts';

/**
 * Every overcurrent device of a site: those of equipment and feeders, then the breakers of chargers and of loads. Worked
 * from the site alone, so that a drop that moves changes none of it.
 */
export const devicesOf = (site: Site, tables: CodeTables): readonly Device[] =>
  joined(equipmentDevices(site), branchDevices(site, tables));

/** Those of equipment and feeders alone, which are few. */
export const equipmentDevices = (site: Site): readonly Device[] => {
  const tree = treeOf(site);
  return supplyDevices(tree, linesOf(site), straightOn(tree, site.chargers, site.loads));
};

/** Breakers of the loads alone. */
export const loadDevicesOf = (site: Site, tables: CodeTables): readonly Device[] =>
  loadDevices(site.loads, treeOf(site), linesOf(site), tables);

/** Breakers of branches alone. */
function branchDevices(site: Site, tables: CodeTables): readonly (readonly Device[])[] {
  const [tree, lines] = [treeOf(site), linesOf(site)];
  return [chargerDevices(site.chargers, tree, lines, tables), loadDevicesOf(site, tables)];
}

const joined = kept((equipment: readonly Device[], branches: readonly (readonly Device[])[]): readonly Device[] =>
  [equipment, ...branches].flat(),
);

/** Transformers that feed chargers or loads with no board between, in the order of the tree. */
const straightOn = kept(
  ({ nodes }: SupplyTree, chargers: readonly Charger[], loads: readonly Load[]): readonly string[] => {
    const names = new Set(nodes.flatMap(({ primary, equipment: { id } }) => (primary === null ? [] : [id])));
    if (names.size === 0) return [];
    const fed = new Set([...chargers, ...loads].flatMap(({ from }) => (names.has(from) ? [from] : [])));
    return [...fed];
  },
);
