import type { NeedsOf, WorkingNeeds } from '../../../routing/checks/equipment/working-needs.ts';
import { kept } from '../../../routing/kept/kept.ts';
import type { Site } from '../../../routing/site/site.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { leastWorkingSpace, workingSpaceDepth } from '../../tables/equipment-of.ts';
import { citedShort } from '../../tables/sections.ts';
import { treeOf } from '../tree/supply-lines.ts';
import type { SupplyNode, SupplyTree } from '../tree/supply-tree.ts';
import { type System, toNeutral } from '../tree/system.ts';

/** Volts to ground of a system: to its neutral; of one without, between its lines, for none of them is grounded. */
export const voltsToGround = (system: System): number => (system.neutral === null ? system.volts : toNeutral(system));

/** What the working space of each piece of equipment is to be, by its volts and its size. Remembered for a tree. */
export const workingNeeds = (site: Site, tables: CodeTables): NeedsOf => needsIn(treeOf(site), tables);

const needsIn = kept(
  (tree: SupplyTree, tables: CodeTables): NeedsOf => ({
    least: leastWorkingSpace(tables),
    by: new Map(tree.nodes.map((node) => [node.equipment.id, needsAt(node, tables)])),
  }),
);

function needsAt({ equipment, system, primary }: SupplyNode, tables: CodeTables): WorkingNeeds {
  const volts = Math.max(voltsToGround(system), primary === null ? 0 : voltsToGround(primary));
  const [clear, grounded, live] = (['clear', 'grounded', 'live'] as const).map((opposite) =>
    workingSpaceDepth(tables, volts, opposite),
  );
  const { busAmps, mainAmps, size } = equipment;
  const { fromAmps, overFt, widthFt } = tables.workingSpace.entrances;
  return {
    depths: clear == null || grounded == null || live == null ? null : [clear, grounded, live],
    twoEntrances: (busAmps ?? mainAmps ?? 0) >= fromAmps && size[0] > overFt,
    entranceWidth: widthFt,
    source: `${tables.workingSpace.source}, ${Math.round(volts)} V to ground`,
    cites: {
      space: citedShort(tables, 'workingSpace'),
      depth: citedShort(tables, 'workingDepth'),
      size: tables.sections.workingSize,
      entrances: `${citedShort(tables, 'entrances')}: ${fromAmps} A or more and over ${overFt} ft wide`,
    },
  };
}
