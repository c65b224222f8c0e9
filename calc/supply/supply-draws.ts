import { changedPlaces } from '../../routing/lists/changed-places.ts';
import type { Run } from '../../routing/network/run.ts';
import type { Charger, Load } from '../../routing/site/site.ts';
import { LINES, type Lines } from '../../routing/site/vocabulary.ts';
import { remembered } from '../memo.ts';
import { addDraw, type Draws, PER_BUS } from './draws.ts';
import type { SupplyLines } from './supply-lines.ts';
import type { SupplyModel } from './supply-model.ts';
import type { SupplyTree } from './supply-tree.ts';

/** Where each charger stands in the supply, in the order of the file. */
export interface Seats {
  /** Node that feeds it. */
  readonly node: Int32Array;
  /** Bus that it hangs on. */
  readonly bus: Int32Array;
  /** Place of its lines in `LINES`. */
  readonly lines: Uint8Array;
}

/** Seats of the chargers. Remembered for a tree; RangeError for a charger fed by equipment that is not in it. */
export const seatsOf = remembered(
  (tree: SupplyTree, model: SupplyModel, lines: SupplyLines, chargers: readonly Charger[]): Seats => {
    const node = Int32Array.from(chargers, ({ id, from }) => {
      const place = tree.placeOf.get(from);
      if (place === undefined) throw new RangeError(`charger ${id} is fed by ${from}, which is not there`);
      return place;
    });
    return {
      node,
      bus: node.map((place) => model.loadBus[place]!),
      lines: Uint8Array.from(chargers, ({ id }) => LINES.indexOf(lines.chargers.get(id)!)),
    };
  },
);

/** Line amperes of the chargers that have a run, summed by bus and lines, and rated volt-amperes by node. */
export interface ChargerSums {
  /** As `Draws.current`, in phase with the voltage. */
  readonly amps: Float64Array;
  /** The same with no charger counted for less than the unit load. */
  readonly unitAmps: Float64Array;
  /** Rated volt-amperes at the nominal voltage of each node. */
  readonly va: Float64Array;
}

const sumOf = (
  tree: SupplyTree,
  model: SupplyModel,
  seats: Seats,
  chargers: readonly Charger[],
  hasRun: Uint8Array,
  unitLoadVa: number,
): ChargerSums => {
  const sums = {
    amps: new Float64Array(PER_BUS * model.buses.length),
    unitAmps: new Float64Array(PER_BUS * model.buses.length),
    va: new Float64Array(tree.nodes.length),
  };
  chargers.forEach(({ amps }, i) => {
    if (hasRun[i] === 0) return;
    const word: Lines = LINES[seats.lines[i]!]!;
    const node = seats.node[i]!;
    const volts = tree.nodes[node]!.system.volts * (word === 'ABC' ? Math.sqrt(3) : 1);
    addDraw(sums.amps, seats.bus[i]!, word, amps, 0);
    addDraw(sums.unitAmps, seats.bus[i]!, word, Math.max(amps, unitLoadVa / volts), 0);
    sums.va[node]! += amps * volts;
  });
  return sums;
};

interface Known {
  readonly runs: readonly Run[];
  readonly hasRun: Uint8Array;
  readonly sums: ChargerSums;
}

const known = new WeakMap<Seats, Known>();

/**
 * Sums of the chargers that have a run; one without draws nothing. The sums are kept while the same chargers have one,
 * however long it is.
 */
export function chargerSums(
  tree: SupplyTree,
  model: SupplyModel,
  seats: Seats,
  chargers: readonly Charger[],
  runs: readonly Run[],
  unitLoadVa: number,
): ChargerSums {
  const last = known.get(seats);
  const hasRun = last !== undefined && sameFlags(last, chargers, runs) ? last.hasRun : runFlags(chargers, runs);
  const sums =
    last !== undefined && equalFlags(last.hasRun, hasRun)
      ? last.sums
      : sumOf(tree, model, seats, chargers, hasRun, unitLoadVa);
  known.set(seats, { runs, hasRun, sums });
  return sums;
}

/** True where every run that is another than before stands beside its charger and is there, or not, as before. */
function sameFlags({ runs: before, hasRun }: Known, chargers: readonly Charger[], runs: readonly Run[]): boolean {
  if (before.length !== runs.length || runs.length !== chargers.length) return false;
  for (const i of changedPlaces(runs, before)) {
    const run = runs[i]!;
    const beside = run.charger === chargers[i]!.id && before[i]!.charger === run.charger;
    if (!beside || (run.length !== null) !== (hasRun[i] === 1)) return false;
  }
  return true;
}

/** 1 for each charger that has a run; quickest where the runs stand in the order of the chargers. */
function runFlags(chargers: readonly Charger[], runs: readonly Run[]): Uint8Array {
  let byCharger: ReadonlyMap<string, Run> | undefined;
  return Uint8Array.from(chargers, ({ id }, i) => {
    let run = runs[i];
    if (run?.charger !== id) {
      byCharger ??= new Map(runs.map((one) => [one.charger, one]));
      run = byCharger.get(id);
    }
    return run !== undefined && run.length !== null ? 1 : 0;
  });
}

function equalFlags(a: Uint8Array, b: Uint8Array): boolean {
  if (a === b) return true;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}

/** Draws of the chargers at a lagging power factor, of the loads as `vaOf` counts each, under the managed ceilings. */
export function drawsOf(
  tree: SupplyTree,
  model: SupplyModel,
  lines: SupplyLines,
  chargerAmps: Float64Array,
  loads: readonly Load[],
  how: {
    readonly powerFactor: number;
    /** What the chargers, and the ceilings with them, count times. */
    readonly factor: number;
    readonly vaOf: (load: Load) => number;
  },
): Draws {
  const along = how.factor * how.powerFactor;
  const behind = -how.factor * Math.sqrt(1 - how.powerFactor ** 2);
  const current = new Float64Array(chargerAmps.length);
  for (let at = 0; at < chargerAmps.length; at += 2) {
    current[at] = along * chargerAmps[at]!;
    current[at + 1] = behind * chargerAmps[at]!;
  }
  const power = new Float64Array(chargerAmps.length);
  for (const load of loads) {
    const place = tree.placeOf.get(load.from);
    if (place !== undefined) addDraw(power, model.loadBus[place]!, lines.loads.get(load.id)!, how.vaOf(load), 0);
  }
  const ceiling = new Float64Array(model.buses.length).fill(Infinity);
  tree.nodes.forEach(({ equipment }, place) => {
    if (equipment.managedAmps !== undefined) ceiling[model.loadBus[place]!] = how.factor * equipment.managedAmps;
  });
  return { power, current, ceiling };
}
