import type { Charger } from '../../../routing/site/site.ts';
import type { VoltageStep } from '../../plan-file/loads.ts';
import { magnitudeAt, type Phasor } from '../load-flow/phasor.ts';
import type { SupplyWork } from '../supply.ts';
import type { System } from '../tree/system.ts';

/** A charger that runs, and the node that feeds it. */
export interface Starting {
  readonly charger: Charger;
  readonly node: number;
  /** Volts line to line of what feeds it. */
  readonly volts: number;
}

/**
 * How far the volts fall at the source and at a board when the largest charger starts, and when everything comes on at
 * once: the greatest over the boards. Ohms of the source by its fault current, with hot conductors and transformers of more
 * than their nameplate; the line amperes that load management leaves. Null at a source that gives no figure.
 * Source: S x (R cos + X sin) / V², twice that across two lines; standard theory.
 */
export function voltageSteps(
  { tree, model, state, faults }: SupplyWork,
  root: number,
  starting: readonly Starting[],
  powerFactor: number,
): readonly VoltageStep[] {
  if (starting.length === 0) return [];
  const source = faults[root]?.least;
  const atRoot = source === undefined || source.isUnlimited ? null : source.line;
  const reactive = Math.sqrt(1 - powerFactor ** 2);
  const along = ({ re, im }: Phasor): number => re * powerFactor + im * reactive;
  /** Percent that a draw takes off its volts, through ohms of one line at those of a system. */
  const percent = (va: number, isThree: boolean, ohms: Phasor | null, { volts }: System): number | null =>
    ohms === null ? null : (100 * (isThree ? 1 : 2) * va * along(ohms)) / volts ** 2;
  const rootSystem = tree.nodes[root]!.system;
  const each = starting.map(({ charger, node, volts }) => {
    const isThree = charger.phases === 3;
    const va = charger.amps * volts * (isThree ? Math.sqrt(3) : 1);
    const board = tree.nodes[node]!;
    return {
      charger: charger.id,
      board: board.equipment.id,
      va,
      sourcePercent: percent(va, isThree, atRoot, rootSystem),
      boardPercent: percent(va, isThree, faults[node]?.least.line ?? null, board.system),
    };
  });
  const most = Math.max(...each.map(({ va }) => va));
  const largest = each
    .filter(({ va }) => va >= most * (1 - 1e-9))
    .reduce((worst, one) => ((one.boardPercent ?? 0) > (worst.boardPercent ?? 0) ? one : worst));
  const all = greatest(state.full.out, model.loadBus[root]!);
  const isThree = rootSystem.phases === 3;
  const va = all * rootSystem.volts * (isThree ? Math.sqrt(3) : 1);
  const sourcePercent = percent(va, isThree, atRoot, rootSystem);
  const boards = [...new Set(starting.map(({ node }) => node))].map((node) => ({
    board: tree.nodes[node]!.equipment.id,
    percent: fallen(state.full.volts, model.loadBus[node]!, tree.nodes[node]!.system),
  }));
  const deepest = boards.reduce((worst, one) => (one.percent > worst.percent ? one : worst));
  return [
    { of: 'one', ...largest },
    {
      of: 'all',
      charger: null,
      board: deepest.board,
      va,
      sourcePercent,
      boardPercent: (sourcePercent ?? 0) + deepest.percent,
    },
  ];
}

const greatest = (amps: Float64Array, bus: number): number =>
  Math.max(...[0, 1, 2].map((line) => magnitudeAt(amps, 3 * bus + line)));

/** Percent of nominal that the lowest pair of lines of a bus is below it. */
function fallen(volts: Float64Array, bus: number, { volts: nominal, phases }: System): number {
  const pair = (a: number, b: number): number =>
    Math.hypot(
      volts[6 * bus + 2 * a]! - volts[6 * bus + 2 * b]!,
      volts[6 * bus + 2 * a + 1]! - volts[6 * bus + 2 * b + 1]!,
    );
  const pairs = [pair(0, 1), pair(1, 2), pair(2, 0)];
  const least = phases === 3 ? Math.min(...pairs) : Math.max(...pairs);
  return 100 * (1 - least / nominal);
}
