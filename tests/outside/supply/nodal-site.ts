import type { BranchOhms } from '../../../calc/branches/equipment-branches.ts';
import type { PhasePair } from '../../../calc/plan-file/branches.ts';
import type { Supply } from '../../../calc/plan-file/supply.ts';
import { boxVoltages } from '../../../calc/supply/load-flow/box-voltages.ts';
import { chargerSums } from '../../../calc/supply/load-flow/charger-sums.ts';
import { seatsOf } from '../../../calc/supply/load-flow/seats.ts';
import { supplyModel } from '../../../calc/supply/load-flow/supply-model.ts';
import { reportOf } from '../../../calc/supply/load-flow/supply-report.ts';
import { type SupplyState, supplyState } from '../../../calc/supply/load-flow/supply-solve.ts';
import type { Solved } from '../../../calc/supply/load-flow/sweep.ts';
import { demandsOf } from '../../../calc/supply/panels/demand.ts';
import type { SupplyLines } from '../../../calc/supply/tree/supply-lines.ts';
import { supplyTree } from '../../../calc/supply/tree/supply-tree.ts';
import { methodRaceway } from '../../../calc/tables/conductor-of.ts';
import { NEC_2023 } from '../../../calc/tables/nec-2023/nec-2023.ts';
import type { Run } from '../../../routing/network/run.ts';
import type { Lines } from '../../../routing/site/schema/vocabulary.ts';
import type { Charger, Equipment, Feeder, Load } from '../../../routing/site/site.ts';

/** A supply with the lines of everything given, not chosen. */
export interface NodalSite {
  readonly equipment: readonly (Omit<Equipment, 'at' | 'size' | 'entry'> & { readonly lines?: PhasePair })[];
  readonly feeders: readonly Feeder[];
  readonly loads: readonly (Load & { readonly lines: Lines })[];
  readonly chargers: readonly (Omit<Charger, 'drop' | 'stalls'> & {
    readonly lines: PhasePair;
    readonly branch: BranchOhms;
    readonly hasRun: boolean;
  })[];
}

export interface WorkedOut extends Omit<Supply, 'withoutGeneration'> {
  readonly boxes: ReadonlyMap<string, number>;
  /** Worst drop from nominal to each box, percent, and the nominal volts. */
  readonly worst: ReadonlyMap<string, { readonly percent: number; readonly nominal: number }>;
}

/** The same stages that the supply of a site goes through, with the lines that the site gives. */
export function workedOut(
  site: NodalSite,
  powerFactor: number,
): { readonly full: WorkedOut; readonly withoutGeneration: WorkedOut | null; readonly unsettled: readonly number[] } {
  const equipment = site.equipment.map(
    ({ lines: _, ...one }): Equipment => ({ ...one, at: [0, 0], size: [1, 1, 1], entry: [0, 0, 0] }),
  );
  const chargers = site.chargers.map(
    ({ lines: _l, branch: _b, hasRun: _h, ...one }): Charger => ({ ...one, drop: one.id, stalls: [] }),
  );
  const loads = site.loads.map(({ lines: _, ...one }): Load => one);
  const tree = supplyTree(
    equipment,
    site.feeders,
    equipment.map(() => undefined),
  );
  const lines: SupplyLines = {
    chargers: new Map(site.chargers.map((one) => [one.id, one.lines])),
    dealt: new Map(),
    loads: new Map(site.loads.map((one) => [one.id, one.lines])),
    equipment: new Map(site.equipment.flatMap((one) => (one.lines === undefined ? [] : [[one.id, one.lines]]))),
    balance: new Map(),
  };
  const lengths = tree.nodes.map(({ feeder }) => feeder?.length ?? null);
  const kinds = tree.nodes.map(({ feeder }) => methodRaceway(feeder?.raceway ?? 'PVC40'));
  const model = supplyModel(tree, lines, lengths, kinds, NEC_2023);
  const seats = seatsOf(tree, model, lines, chargers);
  const runs = site.chargers.map(({ id, hasRun }) => ({ charger: id, length: hasRun ? 1 : null }) as Run);
  const sums = chargerSums(tree, model, seats, chargers, runs, 0);
  const state = supplyState(sums, tree, model, lines, loads, powerFactor, NEC_2023);
  const report = {
    tree,
    model,
    lines,
    lengths,
    demands: demandsOf(tree, model, state, loads),
    faults: tree.nodes.map(() => null),
    bonded: [],
    wires: [],
    idle: state.idle,
    spareSpaces: tree.nodes.map(() => undefined),
    loads: site.loads,
  };
  const ohms = site.chargers.map(({ branch, hasRun }) => (hasRun ? branch : null));
  const buses = model.buses;
  const written = (solved: Solved, only: SupplyState): WorkedOut => {
    const boxes = boxVoltages({ of: { seats, chargers, powerFactor, buses }, state: only }, ohms);
    const each = <T>(of: (box: NonNullable<(typeof boxes)[number]>, i: number) => T): Map<string, T> =>
      new Map(boxes.flatMap((box, i) => (box === null ? [] : [[chargers[i]!.id, of(box, i)] as const])));
    return {
      ...reportOf(report, solved),
      boxes: each(({ volts }) => volts),
      worst: each(({ worstDropPercent }, i) => ({ percent: worstDropPercent, nominal: seats.nominal[i]! })),
    };
  };
  const dark = state.withoutGeneration;
  return {
    full: written(state.full, state),
    withoutGeneration: dark === null ? null : written(dark, { ...state, full: dark }),
    unsettled: state.full.unsettled,
  };
}
