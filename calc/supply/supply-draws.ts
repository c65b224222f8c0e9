import type { Run } from '../../routing/network/run.ts';
import type { Charger, Load } from '../../routing/site/site.ts';
import { remembered } from '../memo.ts';
import { addDraw, type Draws, PER_BUS } from './draws.ts';
import type { SupplyLines } from './supply-lines.ts';
import type { SupplyModel } from './supply-model.ts';
import type { SupplyTree } from './supply-tree.ts';

/** Where each charger of a site stands in the supply, in the order of the file. */
interface Seats {
  readonly bus: Int32Array;
  readonly place: Int32Array;
}

const seatsOf = remembered((tree: SupplyTree, model: SupplyModel, chargers: readonly Charger[]): Seats => {
  const place = Int32Array.from(chargers, ({ from }) => tree.placeOf.get(from) ?? -1);
  return { place, bus: place.map((at) => (at < 0 ? -1 : model.loadBus[at]!)) };
});

/** Line amperes of the chargers that have a run, summed by bus and lines at unity power factor, and by node in VA. */
export interface ChargerSums {
  /** As `Draws.current`, in phase with the voltage. */
  readonly amps: Float64Array;
  /** The same with no charger counted for less than the unit load. */
  readonly unitAmps: Float64Array;
  /** Rated volt-amperes at the nominal voltage of each node. */
  readonly va: Float64Array;
}

/** Sums of the chargers whose run is there. A charger without a run draws nothing. */
export function chargerSums(
  tree: SupplyTree,
  model: SupplyModel,
  lines: SupplyLines,
  chargers: readonly Charger[],
  hasRun: (charger: Charger, index: number) => boolean,
  unitLoadVa: number,
): ChargerSums {
  const seats = seatsOf(tree, model, chargers);
  const sums = {
    amps: new Float64Array(PER_BUS * model.buses.length),
    unitAmps: new Float64Array(PER_BUS * model.buses.length),
    va: new Float64Array(tree.nodes.length),
  };
  chargers.forEach((charger, i) => {
    const bus = seats.bus[i]!;
    if (bus < 0 || !hasRun(charger, i)) return;
    const word = lines.chargers.get(charger.id)!;
    const volts = tree.nodes[seats.place[i]!]!.system.volts * (word === 'ABC' ? Math.sqrt(3) : 1);
    addDraw(sums.amps, bus, word, charger.amps, 0);
    addDraw(sums.unitAmps, bus, word, Math.max(charger.amps, unitLoadVa / volts), 0);
    sums.va[seats.place[i]!]! += charger.amps * volts;
  });
  return sums;
}

/** Tells of a charger whether it has a run, quickest where runs stand in the order of the chargers. */
export function runFinder(runs: readonly Run[]): (charger: Charger, index: number) => Run | undefined {
  let byCharger: ReadonlyMap<string, Run> | undefined;
  return (charger, index) => {
    const here = runs[index];
    if (here?.charger === charger.id) return here;
    byCharger ??= new Map(runs.map((run) => [run.charger, run]));
    return byCharger.get(charger.id);
  };
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
