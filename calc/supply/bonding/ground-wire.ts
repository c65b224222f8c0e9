import type { Rules } from '../../../routing/site/site.ts';
import { bondingJumper } from '../../circuits/bonding-jumper.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { cited } from '../../tables/sections.ts';
import { isConductorSize } from '../../tables/sizes.ts';
import { SILENT, type Tell } from '../../words/explain.ts';
import { measured } from '../../words/measured.ts';
import { startsWithout } from '../devices/device-place.ts';
import { feederGrounding } from '../feeders/feeder-conductor.ts';
import { feederIsOver } from '../tree/over-limit.ts';
import type { SupplyNode } from '../tree/supply-tree.ts';

/** What runs in each raceway of a feeder beside its lines and neutral. */
export interface GroundWire {
  /** Equipment grounding conductor, or supply-side bonding jumper where no device stands ahead of the conductors. */
  readonly use: 'grounding' | 'bonding';
  readonly size: string;
}

/**
 * The wire of the feeder into a node, of the metal of its lines, full size in each of parallel sets:
 * - behind a device, by that device (250.122), grown with conductors larger than it asks for; of a tap by the device ahead
 *   of what it is tapped from, no larger than the tap (250.122(G));
 * - ahead of the first device of a derived system or of a service without a neutral, a supply-side bonding jumper by the
 *   conductors of one raceway (250.102(C));
 * - null above the volts of the tables, and for the conductors of a service with a neutral, which is bonded at the service and is the way back.
 */
export function groundWire(
  tables: CodeTables,
  nodes: readonly SupplyNode[],
  place: number,
  terminalC: Rules['terminalC'],
  ambientC: number,
  tell: Tell = SILENT,
): GroundWire | null {
  const node = nodes[place]!;
  const { feeder } = node;
  if (feeder === null || feederIsOver(tables, node)) return null;
  const above = nodes[node.parent]!;
  const bare = startsWithout(feeder, above.equipment);
  const isService = node.equipment.kind === 'service' && above.equipment.kind === 'source';
  const { size, metal } = feeder.conductor;
  if (bare && isConductorSize(size) && (isService || above.primary !== null)) {
    if (isService && above.system.neutral !== null) return null;
    const { size: jumper } = bondingJumper(tables, { conductor: { size, metal }, metal }, tell);
    // The jumper of one conductor is never larger than the conductors of the tables.
    return { use: 'bonding', size: jumper ?? size };
  }
  if (!bare || above.equipment.kind === 'source')
    return { use: 'grounding', ...feederGrounding(tables, feeder, terminalC, ambientC, tell) };
  const ahead = aheadOf(above);
  const tapped = ahead === undefined ? feeder : { ...feeder, breakerAmps: Math.max(ahead, feeder.breakerAmps) };
  if (tapped !== feeder)
    tell(() => ({
      find: 'device ahead of the tap',
      formula: 'of what it is tapped from: its grounding conductor goes by that',
      values: { 'at its end': measured(feeder.breakerAmps, 'A') },
      result: tapped.breakerAmps,
      unit: 'A',
      source: `${cited(tables, 'groundingOfTaps')}, from memory`,
    }));
  return { use: 'grounding', ...feederGrounding(tables, tapped, terminalC, ambientC, tell) };
}

/** Rating of what protects a board, A: the lesser of its main and of its feeder's device. */
function aheadOf({ equipment: { mainAmps }, feeder, primary }: SupplyNode): number | undefined {
  const own = primary === null ? feeder?.breakerAmps : undefined;
  return mainAmps === undefined ? own : Math.min(mainAmps, own ?? mainAmps);
}
