import type { Rules } from '../../../routing/site/site.ts';
import type { UnprotectedInput } from '../../circuits/unprotected.ts';
import type { Device } from '../../plan-file/supply.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { isConductorSize } from '../../tables/sizes.ts';
import { feederAmpacity } from '../feeders/feeder-ampacity.ts';
import { feederIsOver } from '../tree/over-limit.ts';
import type { SupplyNode, SupplyTree } from '../tree/supply-tree.ts';
import { devicePlace, startsWithout } from './device-place.ts';
import { feederDeviceAmps, leastAmps, protectorsOf } from './protecting.ts';
import { devicesIn } from './standing-in.ts';
import { isGrouped } from './supply-devices.ts';

/** What is known of the feeders of a tree: of the one into each node, in the order of the nodes. */
export interface FeederLies {
  /** Feet; null where it is not known. */
  readonly lengths: readonly (number | null)[];
  readonly outdoors: readonly boolean[];
  /** Feet of its way in plan; null where its way is not drawn. */
  readonly levels: readonly (number | null)[];
  /** °C, where it is hottest. */
  readonly ambients: readonly number[];
}

/** A feeder that starts without an overcurrent device. */
export interface UnprotectedFeeder extends UnprotectedInput {
  /** True where the primary device of its transformer may protect it, and does. */
  readonly byPrimary: boolean;
}

/** Whether a node's feeder starts without an overcurrent device. The conductors of a service are no part of this. */
export function startsBare({ feeder, parent }: SupplyNode, { nodes }: SupplyTree): boolean {
  if (feeder === null) return false;
  const above = nodes[parent]!;
  return above.equipment.kind !== 'source' && startsWithout(feeder, above.equipment);
}

/**
 * The feeder into a node as the rules for conductors without a device at their start see it; null for one that has a
 * device there, that a utility feeds, or whose size the tables lack. A three-wire three-phase secondary is taken as
 * delta-delta, as every transformer here has a delta primary: its primary device may protect it, by the ratio of volts.
 * @param devices with the breakers of branches, where one ends in devices that are grouped
 */
export function unprotectedFeeder(
  tables: CodeTables,
  rules: Rules,
  tree: SupplyTree,
  devices: readonly Device[],
  lies: FeederLies,
  place: number,
): UnprotectedFeeder | null {
  const node = tree.nodes[place]!;
  const { feeder } = node;
  if (
    feeder === null ||
    !startsBare(node, tree) ||
    feederIsOver(tables, node) ||
    !isConductorSize(feeder.conductor.size)
  )
    return null;
  const carried = feederAmpacity(tables, feeder.conductor, lies.ambients[place]!, rules.terminalC);
  if (carried === null) return null;
  const { ampacity } = carried;
  const above = tree.nodes[node.parent]!;
  const { primary, system } = above;
  const ends = devicePlace(feeder, above.equipment);
  const isTapped = primary !== null && isTransformerTap(above, tree);
  const deviceAmps = isGrouped(node)
    ? groupedAmps(devices, feeder.to)
    : ends === 'none'
      ? null
      : feederDeviceAmps(devices, feeder.id);
  // The primary of a tapped transformer has no device of its own: the one ahead of the tap is that of its primary.
  const aheadAmps = aheadOf(devices, isTapped ? above.feeder!.from : above.equipment.id);
  const ratio = primary === null ? 1 : primary.volts / system.volts;
  const isDelta = primary !== null && system.phases === 3 && system.neutral === null;
  const { size, metal } = feeder.conductor;
  const { kva } = above.equipment;
  return {
    of: primary !== null ? (isTapped ? 'tapped secondary' : 'secondary') : ends === 'none' ? 'transformer tap' : 'tap',
    ampacity,
    length: lies.lengths[place]!,
    deviceAmps,
    aheadAmps,
    ratio,
    outdoors: lies.outdoors[place]!,
    level: lies.levels[place]!,
    conductor: { size, metal },
    ...(feeder.tapCondition === undefined ? {} : { condition: feeder.tapCondition }),
    ratedAmps: primary === null || kva === undefined ? null : ratedAmps(kva, system),
    ...(isTapped ? { primaryLength: barePrimary(tables, rules, above, tree, lies, aheadAmps) } : {}),
    byPrimary: isDelta && aheadAmps !== null && aheadAmps * ratio <= ampacity * (1 + 1e-9),
  };
}

/** Whether a transformer is fed by a tap without a device at either end. */
const isTransformerTap = ({ feeder, parent }: SupplyNode, { nodes }: SupplyTree): boolean =>
  feeder !== null && parent >= 0 && devicePlace(feeder, nodes[parent]!.equipment) === 'none';

/** Rating of what protects a piece of equipment, A; null where it is not known. */
const aheadOf = (devices: readonly Device[], equipment: string): number | null =>
  leastAmps((protectorsOf(devices).get(equipment) ?? []).filter(({ use }) => use !== 'secondary'));

/** Ratings of the devices in a board together, A; null where there is none, or one has no rating. */
function groupedAmps(devices: readonly Device[], board: string): number | null {
  const own = devicesIn(devices).get(board) ?? [];
  if (own.length === 0 || own.some(({ amps }) => amps === null)) return null;
  return own.reduce((sum, { amps }) => sum + amps!, 0);
}

/** Full-load amperes of a side of a transformer, from its kVA. */
const ratedAmps = (kva: number, { volts, phases }: SupplyNode['system']): number =>
  (kva * 1000) / (phases === 3 ? Math.sqrt(3) * volts : volts);

/** Feet of the tap into a transformer that count with its secondary: none where the device ahead protects it. */
function barePrimary(
  tables: CodeTables,
  rules: Rules,
  { feeder, equipment }: SupplyNode,
  tree: SupplyTree,
  lies: FeederLies,
  aheadAmps: number | null,
): number | null {
  const place = tree.placeOf.get(equipment.id)!;
  const { conductor } = feeder!;
  const carried = isConductorSize(conductor.size)
    ? feederAmpacity(tables, conductor, lies.ambients[place]!, rules.terminalC)
    : null;
  const isProtected = carried !== null && aheadAmps !== null && aheadAmps <= carried.ampacity * (1 + 1e-9);
  return isProtected ? 0 : lies.lengths[place]!;
}
