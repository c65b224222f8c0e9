import { keptEach, keptLists } from '../../../routing/kept/kept-list.ts';
import type { Run } from '../../../routing/network/run.ts';
import { LINES, type Lines } from '../../../routing/site/schema/vocabulary.ts';
import type { Charger } from '../../../routing/site/site.ts';
import type { SupplyTree } from '../tree/supply-tree.ts';
import { addDraw, PER_BUS } from './draws.ts';
import type { Seats } from './seats.ts';
import type { SupplyModel } from './supply-model.ts';

/** Line amperes of the chargers that have a run, summed by bus and lines, and rated volt-amperes by node. */
export interface ChargerSums {
  /** As `Draws.current`, in phase with the voltage. */
  readonly amps: Float64Array;
  /** The same with no charger counted for less than the unit load. */
  readonly unitAmps: Float64Array;
  /** Rated volt-amperes at the nominal voltage of each node. */
  readonly va: Float64Array;
}

/** What sums are made of, but for which chargers have a run. */
interface Seated {
  readonly tree: SupplyTree;
  readonly model: SupplyModel;
  readonly seats: Seats;
  readonly chargers: readonly Charger[];
  readonly unitLoadVa: number;
}

/**
 * Sums of the chargers that have a run, in the order of the chargers; one without draws nothing. The same sums while the
 * same chargers have one, however long it is. RangeError for a run that is not that of the charger beside it.
 */
export const chargerSums = (
  tree: SupplyTree,
  model: SupplyModel,
  seats: Seats,
  chargers: readonly Charger[],
  runs: readonly Run[],
  unitLoadVa: number,
): ChargerSums => sumsOf([haveRun([chargers, runs], [])], [tree, model, seats, chargers, unitLoadVa]);

const haveRun = keptEach(([{ id }, run]: readonly [Charger, Run]): boolean => {
  if (run.charger !== id) throw new RangeError(`run of ${run.charger} where that of ${id} was due`);
  return run.length !== null;
});

type Shared = readonly [SupplyTree, SupplyModel, Seats, readonly Charger[], number];

const seated = ([tree, model, seats, chargers, unitLoadVa]: Shared): Seated => ({
  tree,
  model,
  seats,
  chargers,
  unitLoadVa,
});

const sumsOf = keptLists({
  anew: ([haveRun]: readonly [readonly boolean[]], shared: Shared): ChargerSums => {
    const of = seated(shared);
    const sums = {
      amps: new Float64Array(PER_BUS * of.model.buses.length),
      unitAmps: new Float64Array(PER_BUS * of.model.buses.length),
      va: new Float64Array(of.tree.nodes.length),
    };
    haveRun.forEach((has, i) => {
      if (has) addCharger(sums, of, i);
    });
    return sums;
  },
  after: // Those of the equipment alone of which a charger's run came or went.
    ({ answer }, turned, [haveRun], shared) => {
      const of = seated(shared);
      const { seats, model } = of;
      const nodes = new Set(turned.map((i) => seats.node[i]!));
      const sums = { amps: answer.amps.slice(), unitAmps: answer.unitAmps.slice(), va: answer.va.slice() };
      for (const node of nodes) {
        const at = PER_BUS * model.loadBus[node]!;
        sums.amps.fill(0, at, at + PER_BUS);
        sums.unitAmps.fill(0, at, at + PER_BUS);
        sums.va[node] = 0;
      }
      // In the order of all, so that they come to the same to the last digit.
      haveRun.forEach((has, i) => {
        if (has && nodes.has(seats.node[i]!)) addCharger(sums, of, i);
      });
      return sums;
    },
});

function addCharger(sums: ChargerSums, { tree, seats, chargers, unitLoadVa }: Seated, i: number): void {
  const { amps } = chargers[i]!;
  const word: Lines = LINES[seats.lines[i]!]!;
  const node = seats.node[i]!;
  const volts = tree.nodes[node]!.system.volts * (word === 'ABC' ? Math.sqrt(3) : 1);
  addDraw(sums.amps, seats.bus[i]!, word, amps, 0);
  addDraw(sums.unitAmps, seats.bus[i]!, word, Math.max(amps, unitLoadVa / volts), 0);
  sums.va[node]! += amps * volts;
}
