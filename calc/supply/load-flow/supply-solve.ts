import { kept } from '../../../routing/kept/kept.ts';
import type { Load } from '../../../routing/site/site.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import type { SupplyLines } from '../tree/supply-lines.ts';
import type { SupplyTree } from '../tree/supply-tree.ts';
import type { ChargerSums } from './charger-sums.ts';
import type { Draws } from './draws.ts';
import { drawsOf } from './seats.ts';
import { type SupplyModel, withoutImpedance } from './supply-model.ts';
import { type Solved, solve } from './sweep.ts';

/** The supply worked through, with everything on at once. */
export interface SupplyState {
  readonly full: Solved;
  /** The same with generation off; null where there is none. */
  readonly withoutGeneration: Solved | null;
  /** Currents that devices and conductors are chosen for, at nominal voltages: continuous load and the largest motor count 125%, loads by their demand. */
  readonly demand: Solved;
  /** The load itself at nominal voltages, continuous load counted once. */
  readonly load: Solved;
  /** As `demand`, with no charger counted for less than the unit load. */
  readonly unitDemand: Solved;
  /** What generation alone sends back, with its factor, at nominal voltages; null where there is none. */
  readonly backFeed: Solved | null;
  /** Generation with nothing drawn, for the highest volts; null where there is none. */
  readonly idle: Solved | null;
  readonly sums: ChargerSums;
}

const produced = (load: Load): number => (load.generation === true ? load.va : 0);
const drawn = (load: Load): number => (load.generation === true ? 0 : load.va);

/** The largest motor of each piece of equipment, which counts more; the others of it count once (430.24). */
export function largestMotors(loads: readonly Load[]): ReadonlySet<Load> {
  const by = new Map<string, Load>();
  for (const load of loads) if (load.motor === true && load.va > (by.get(load.from)?.va ?? -1)) by.set(load.from, load);
  return new Set(by.values());
}

/**
 * The state of a supply. It depends on the chargers only through their sums, which a drop that moves and keeps its run does
 * not change.
 */
export const supplyState = kept(
  (
    sums: ChargerSums,
    tree: SupplyTree,
    model: SupplyModel,
    lines: SupplyLines,
    loads: readonly Load[],
    powerFactor: number,
    { continuous, motors, busSources }: Pick<CodeTables, 'continuous' | 'motors' | 'busSources'>,
  ): SupplyState => {
    const draws = (factor: number, vaOf: (load: Load) => number, amps = sums.amps): Draws =>
      drawsOf(tree, model, lines, amps, loads, { powerFactor, factor, vaOf });
    const open = withoutImpedance(model.buses);
    const generates = loads.some((load) => produced(load) > 0);
    const largest = largestMotors(loads);
    const counted = (load: Load): number => drawn(load) * (load.demand ?? 1);
    const planned = (load: Load): number =>
      counted(load) *
      (load.motor === true ? (largest.has(load) ? motors.largestFactor : 1) : load.continuous ? continuous.factor : 1);
    const full = draws(1, (load) => drawn(load) - produced(load));
    const back = draws(0, (load) => busSources.factor * produced(load));
    return {
      full: solve(model.buses, full),
      withoutGeneration: generates ? solve(model.buses, draws(1, drawn)) : null,
      // A set ceiling counts as continuous load: 220.70 (from memory).
      demand: solve(open, draws(continuous.factor, planned)),
      load: solve(open, draws(1, counted)),
      unitDemand: solve(open, draws(continuous.factor, planned, sums.unitAmps)),
      backFeed: generates ? solve(open, back) : null,
      idle: generates
        ? solve(
            model.buses,
            draws(0, (load) => -produced(load)),
          )
        : null,
      sums,
    };
  },
);
