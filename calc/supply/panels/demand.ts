import type { Load } from '../../../routing/site/site.ts';
import { devicePlace } from '../devices/device-place.ts';
import { magnitudeAt } from '../load-flow/phasor.ts';
import type { SupplyModel } from '../load-flow/supply-model.ts';
import type { SupplyState } from '../load-flow/supply-solve.ts';
import type { SupplyTree } from '../tree/supply-tree.ts';

/** Greatest line current of three in a flat list, A. */
export const greatestLine = (amps: Float64Array, bus: number): number =>
  Math.max(magnitudeAt(amps, 3 * bus), magnitudeAt(amps, 3 * bus + 1), magnitudeAt(amps, 3 * bus + 2));

/** What one piece of equipment and its feeder are asked for. */
export interface Demand {
  /** Rated volt-amperes of the chargers with a run and of the loads, here and beyond; no generation. */
  readonly connectedVa: number;
  /** Greatest line current to choose devices and conductors by, on the side that the loads hang on, A. */
  readonly amps: number;
  /** The same with no charger counted for less than the unit load, A. */
  readonly unitAmps: number;
  /** As `amps`, where the feeder leaves what feeds it, A. */
  readonly feederAmps: number;
  /** The same with no charger counted for less than the unit load, A. */
  readonly unitFeederAmps: number;
  /** The load itself there, continuous load counted once, A. */
  readonly feederLoadAmps: number;
}

/** Demand of each node of a supply. */
export function demandsOf(
  tree: SupplyTree,
  model: SupplyModel,
  state: SupplyState,
  loads: readonly Load[],
): readonly Demand[] {
  const connected = Float64Array.from(state.sums.va);
  for (const { from, va, generation } of loads) {
    const place = tree.placeOf.get(from);
    if (place !== undefined && generation !== true) connected[place]! += va;
  }
  for (let place = tree.nodes.length - 1; place >= 0; place--) {
    const { parent } = tree.nodes[place]!;
    if (parent >= 0) connected[parent]! += connected[place]!;
  }
  return tree.nodes.map((_, place) => ({
    connectedVa: connected[place]!,
    amps: greatestLine(state.demand.out, model.loadBus[place]!),
    unitAmps: greatestLine(state.unitDemand.out, model.loadBus[place]!),
    feederAmps: greatestLine(state.demand.into, model.feedBus[place]!),
    unitFeederAmps: greatestLine(state.unitDemand.into, model.feedBus[place]!),
    feederLoadAmps: greatestLine(state.load.into, model.feedBus[place]!),
  }));
}

/**
 * Rating of the overcurrent device ahead of a piece of equipment, A: the lesser of its main and of its feeder's breaker;
 * its main where the feeder ends in it, for the two are one device.
 */
export function deviceOf(tree: SupplyTree, place: number): number | undefined {
  const { equipment, feeder, primary, parent } = tree.nodes[place]!;
  // The feeder of a transformer is on its other side.
  const ahead = primary === null ? feeder?.breakerAmps : undefined;
  if (equipment.mainAmps === undefined) return ahead;
  const isOne = feeder !== null && devicePlace(feeder, tree.nodes[parent]!.equipment) === 'to';
  return ahead === undefined || isOne ? equipment.mainAmps : Math.min(ahead, equipment.mainAmps);
}

/** What the load of a piece of equipment must stay within, A: its device, or the busbar where that is less. */
export function ratingOf(tree: SupplyTree, place: number): number | undefined {
  const { busAmps } = tree.nodes[place]!.equipment;
  const device = deviceOf(tree, place);
  if (busAmps === undefined) return device;
  return device === undefined ? busAmps : Math.min(device, busAmps);
}
