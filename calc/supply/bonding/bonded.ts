import { kept } from '../../../routing/kept/kept.ts';
import { bondingJumper } from '../../circuits/bonding-jumper.ts';
import { electrodeConductor } from '../../circuits/electrode-conductor.ts';
import type { SupplyConductor } from '../../circuits/supply-conductor.ts';
import type { Bonded } from '../../plan-file/supply.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { compareSizes, isConductorSize } from '../../tables/sizes.ts';
import { SILENT, type Tell } from '../../words/explain.ts';
import type { SupplyNode, SupplyTree } from '../tree/supply-tree.ts';

/** Bonding jumpers in equipment and conductors to electrodes are of copper. Common practice: aluminum may not lie in earth. */
const METAL = 'copper';

/**
 * What a node's neutral is bonded and grounded as: service equipment (of that kind, or a board straight from a source with
 * an electrode), a system of its own behind a transformer, or a structure that has an electrode. Null for none of them.
 */
function groundedAs({ equipment, parent, primary, system }: SupplyNode, { nodes }: SupplyTree): Bonded['of'] | null {
  if (primary !== null) return system.neutral === null ? null : 'derived system';
  if (parent < 0) return null;
  const fromSource = nodes[parent]!.equipment.kind === 'source';
  if (fromSource && (equipment.kind === 'service' || equipment.electrode !== undefined)) return 'service';
  return equipment.electrode === undefined ? null : 'structure';
}

/**
 * Largest ungrounded conductors of a place, one phase added up: of what comes into a service or structure, of all that
 * leaves a transformer, there counted as the largest of them. Null where none is known.
 */
function supplyConductor(node: SupplyNode, { nodes }: SupplyTree): SupplyConductor | null {
  const feeders = node.primary === null ? [node.feeder] : nodes.map(({ feeder }) => feeder);
  const own = feeders.filter(
    (feeder) => feeder !== null && (node.primary === null || feeder.from === node.equipment.id),
  );
  const known = own.map((feeder) => feeder!.conductor).filter(({ size }) => isConductorSize(size));
  if (known.length === 0 || known.length < own.length) return null;
  const largest = known.reduce((most, one) => (compareSizes(one.size, most.size) > 0 ? one : most));
  return { size: largest.size, metal: largest.metal, sets: known.reduce((sum, { sets }) => sum + sets, 0) };
}

/** The jumper and the conductor to the electrode of one place; null where a node is none to be grounded. */
export function bondedAt(tables: CodeTables, tree: SupplyTree, place: number, tell: Tell = SILENT): Bonded | null {
  const node = tree.nodes[place]!;
  const of = groundedAs(node, tree);
  if (of === null) return null;
  const { id, electrode } = node.equipment;
  const conductor = supplyConductor(node, tree);
  const known = { id, of, ...(electrode === undefined ? {} : { electrode }) };
  if (conductor === null) return known;
  const sized = { ...known, conductor: { ...conductor, sets: conductor.sets ?? 1 } };
  const to = electrodeConductor(tables, { conductor, metal: METAL, electrode }, tell);
  const electrodes = { ...sized, electrodeConductor: { size: to.size, metal: METAL } as const };
  if (of === 'structure' || node.system.neutral === null) return electrodes;
  const jumper = bondingJumper(tables, { conductor, metal: METAL }, tell);
  return { ...electrodes, jumper: { ...jumper, metal: METAL } };
}

/** Every place of a supply where a neutral is bonded or an electrode lands, in the order of the nodes. */
export const bondedOf = kept((tree: SupplyTree, tables: CodeTables): readonly Bonded[] =>
  tree.nodes.flatMap((_, place) => bondedAt(tables, tree, place) ?? []),
);

/** `main bonding jumper`, `system bonding jumper`. */
export const jumperName = (of: Bonded['of']): string => `${of === 'service' ? 'main' : 'system'} bonding jumper`;
