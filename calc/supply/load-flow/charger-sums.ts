import { changedPlaces } from '../../../routing/lists/changed-places.ts';
import type { Run } from '../../../routing/network/run.ts';
import type { Charger } from '../../../routing/site/site.ts';
import { LINES, type Lines } from '../../../routing/site/vocabulary.ts';
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

/** What sums are made of, but for the runs. */
interface Seated {
  readonly tree: SupplyTree;
  readonly model: SupplyModel;
  readonly seats: Seats;
  readonly chargers: readonly Charger[];
  readonly unitLoadVa: number;
}

interface Known {
  readonly unitLoadVa: number;
  readonly runs: readonly Run[];
  /** 1 for each charger that has a run. */
  readonly hasRun: Uint8Array;
  readonly sums: ChargerSums;
}

const known = new WeakMap<Seats, Known>();

/**
 * Sums of the chargers that have a run; one without draws nothing. The sums are kept while the same chargers have one,
 * however long it is; where one comes or goes, those of its equipment alone are made anew.
 */
export function chargerSums(
  tree: SupplyTree,
  model: SupplyModel,
  seats: Seats,
  chargers: readonly Charger[],
  runs: readonly Run[],
  unitLoadVa: number,
): ChargerSums {
  const of = { tree, model, seats, chargers, unitLoadVa };
  const last = known.get(seats);
  const usable = last?.unitLoadVa === unitLoadVa ? last : undefined;
  const next = (usable && after(usable, of, runs)) ?? anew(usable, of, runs);
  known.set(seats, { ...next, runs, unitLoadVa });
  return next.sums;
}

type Sums = Pick<Known, 'hasRun' | 'sums'>;

function anew(last: Known | undefined, of: Seated, runs: readonly Run[]): Sums {
  const { chargers, tree, model } = of;
  const hasRun = runFlags(chargers, runs);
  if (last?.hasRun.every((flag, i) => flag === hasRun[i])) return last;
  const sums = {
    amps: new Float64Array(PER_BUS * model.buses.length),
    unitAmps: new Float64Array(PER_BUS * model.buses.length),
    va: new Float64Array(tree.nodes.length),
  };
  for (let i = 0; i < chargers.length; i++) if (hasRun[i] === 1) addCharger(sums, of, i);
  return { hasRun, sums };
}

/** The sums after runs came or went; null where the runs do not stand beside their chargers as before. */
function after(last: Known, of: Seated, runs: readonly Run[]): Sums | null {
  const turned = turnedPlaces(last, of.chargers, runs);
  if (turned === null || turned.length === 0) return turned && last;
  const { seats, chargers, model } = of;
  const hasRun = last.hasRun.slice();
  for (const i of turned) hasRun[i] = 1 - hasRun[i]!;
  const nodes = new Set(turned.map((i) => seats.node[i]!));
  const sums = { amps: last.sums.amps.slice(), unitAmps: last.sums.unitAmps.slice(), va: last.sums.va.slice() };
  for (const node of nodes) {
    const at = PER_BUS * model.loadBus[node]!;
    sums.amps.fill(0, at, at + PER_BUS);
    sums.unitAmps.fill(0, at, at + PER_BUS);
    sums.va[node] = 0;
  }
  // In the order of all, so that they come to the same to the last digit.
  for (let i = 0; i < chargers.length; i++) if (hasRun[i] === 1 && nodes.has(seats.node[i]!)) addCharger(sums, of, i);
  return { hasRun, sums };
}

function addCharger(sums: ChargerSums, { tree, seats, chargers, unitLoadVa }: Seated, i: number): void {
  const { amps } = chargers[i]!;
  const word: Lines = LINES[seats.lines[i]!]!;
  const node = seats.node[i]!;
  const volts = tree.nodes[node]!.system.volts * (word === 'ABC' ? Math.sqrt(3) : 1);
  addDraw(sums.amps, seats.bus[i]!, word, amps, 0);
  addDraw(sums.unitAmps, seats.bus[i]!, word, Math.max(amps, unitLoadVa / volts), 0);
  sums.va[node]! += amps * volts;
}

/** Places of the chargers whose run came or went. */
function turnedPlaces(
  { runs: before, hasRun }: Known,
  chargers: readonly Charger[],
  runs: readonly Run[],
): readonly number[] | null {
  if (before.length !== runs.length || runs.length !== chargers.length) return null;
  const turned: number[] = [];
  for (const i of changedPlaces(runs, before)) {
    const run = runs[i]!;
    if (run.charger !== chargers[i]!.id || before[i]!.charger !== run.charger) return null;
    if ((run.length !== null) !== (hasRun[i] === 1)) turned.push(i);
  }
  return turned;
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
