import type { Rules } from '../../../routing/site/site.ts';
import type { UnprotectedInput } from '../../circuits/unprotected.ts';
import type { Device } from '../../plan-file.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { isConductorSize } from '../../tables/lookup.ts';
import { feederAmpacity } from '../feeders/feeder-ampacity.ts';
import { feederIsOver } from '../tree/over-limit.ts';
import type { SupplyNode, SupplyTree } from '../tree/supply-tree.ts';
import { devicePlace } from './device-place.ts';
import { feederDeviceAmps, leastAmps, protectorsOf } from './protecting.ts';

/** What is known of the feeders of a tree: of the one into each node, in the order of the nodes. */
export interface FeederLies {
  /** Feet; null where it is not known. */
  readonly lengths: readonly (number | null)[];
  readonly outdoors: readonly boolean[];
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
  return above.equipment.kind !== 'source' && devicePlace(feeder, above.equipment) === 'to';
}

/**
 * The feeder into a node as the rules for conductors without a device at their start see it; null for one that has a
 * device there, that a utility feeds, or whose size the tables lack. A three-wire three-phase secondary is taken as
 * delta-delta, as every transformer here has a delta primary: its primary device may protect it, by the ratio of volts.
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
  const deviceAmps = feederDeviceAmps(devices, feeder.id);
  if (carried === null || deviceAmps === null) return null;
  const above = tree.nodes[node.parent]!;
  const { primary, system } = above;
  const aheadAmps = leastAmps(
    (protectorsOf(devices).get(above.equipment.id) ?? []).filter(({ use }) => use !== 'secondary'),
  );
  const ratio = primary === null ? 1 : primary.volts / system.volts;
  const { ampacity } = carried;
  const isDelta = primary !== null && system.phases === 3 && system.neutral === null;
  return {
    of: primary === null ? 'tap' : 'secondary',
    ampacity,
    length: lies.lengths[place]!,
    deviceAmps,
    aheadAmps,
    ratio,
    outdoors: lies.outdoors[place]!,
    byPrimary: isDelta && aheadAmps !== null && aheadAmps * ratio <= ampacity * (1 + 1e-9),
  };
}
