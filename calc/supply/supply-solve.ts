import type { Load } from '../../routing/site/site.ts';
import type { Draws } from './draws.ts';
import { type ChargerSums, drawsOf } from './supply-draws.ts';
import type { SupplyLines } from './supply-lines.ts';
import { type SupplyModel, withoutImpedance } from './supply-model.ts';
import type { SupplyTree } from './supply-tree.ts';
import { type Solved, solve } from './sweep.ts';

/** The supply worked through, with everything on at once. */
export interface SupplyState {
  readonly full: Solved;
  /** The same with generation off; null where there is none. */
  readonly withoutGeneration: Solved | null;
  /** Currents that devices and conductors are chosen for, at nominal voltages: continuous load counts 125%. */
  readonly demand: Solved;
  /** The same with no charger counted for less than the unit load. */
  readonly unitDemand: Solved;
  /** What generation alone sends back, 125% of it, at nominal voltages; null where there is none. */
  readonly backFeed: Solved | null;
  readonly sums: ChargerSums;
}

export interface SupplyCase {
  readonly tree: SupplyTree;
  readonly model: SupplyModel;
  readonly lines: SupplyLines;
  readonly loads: readonly Load[];
  readonly powerFactor: number;
  /** Times that a continuous load counts. */
  readonly continuousFactor: number;
}

const produced = (load: Load): number => (load.generation === true ? load.va : 0);
const drawn = (load: Load): number => (load.generation === true ? 0 : load.va);

function solveCase(of: SupplyCase, sums: ChargerSums): SupplyState {
  const { tree, model, lines, loads, powerFactor, continuousFactor } = of;
  const draws = (factor: number, vaOf: (load: Load) => number, amps = sums.amps): Draws =>
    drawsOf(tree, model, lines, amps, loads, { powerFactor, factor, vaOf });
  const open = withoutImpedance(model.buses);
  const generates = loads.some((load) => produced(load) > 0);
  const planned = (load: Load): number => drawn(load) * (load.continuous ? continuousFactor : 1);
  return {
    full: solve(
      model.buses,
      draws(1, (load) => drawn(load) - produced(load)),
    ),
    withoutGeneration: generates ? solve(model.buses, draws(1, drawn)) : null,
    // A set ceiling counts as continuous load: 220.70 (from memory).
    demand: solve(open, draws(continuousFactor, planned)),
    unitDemand: solve(open, draws(continuousFactor, planned, sums.unitAmps)),
    backFeed: generates
      ? solve(
          open,
          draws(0, (load) => continuousFactor * produced(load)),
        )
      : null,
    sums,
  };
}

const sameNumbers = (a: Float64Array, b: Float64Array): boolean => {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
};

interface Known {
  readonly of: SupplyCase;
  readonly state: SupplyState;
}

const known = new WeakMap<SupplyModel, Known>();

/**
 * The state of a supply. It depends on the chargers only through their sums, and so is kept while those are equal: a drop
 * that moves and keeps its run changes no current.
 */
export function supplyState(of: SupplyCase, sums: ChargerSums): SupplyState {
  const last = known.get(of.model);
  const same =
    last !== undefined &&
    last.of.loads === of.loads &&
    last.of.lines === of.lines &&
    last.of.powerFactor === of.powerFactor &&
    last.of.continuousFactor === of.continuousFactor &&
    sameNumbers(last.state.sums.amps, sums.amps);
  if (same) return last.state;
  const state = solveCase(of, sums);
  known.set(of.model, { of, state });
  return state;
}
