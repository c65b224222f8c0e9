import type { Lines } from '../../../routing/site/schema/vocabulary.ts';
import type { Load } from '../../../routing/site/site.ts';
import type { PhasePair } from '../../plan-file/branches.ts';
import { type System, suitsVolts, toNeutral } from './system.ts';

/** Something that may lie on any one of several lines of a piece of equipment, as its designer sees fit. */
export interface Placeable {
  readonly id: string;
  readonly amps: number;
  readonly choices: readonly Lines[];
}

/** Lines that a single-phase load of a voltage may lie on: to neutral, or across two. */
export function singleLoadLines(system: System, pair: PhasePair, volts: number): readonly Lines[] {
  const pairs: readonly Lines[] = system.phases === 1 ? [pair] : ['AB', 'BC', 'CA'];
  if (system.neutral === null) return pairs;
  const low = toNeutral(system);
  const toNeutralFits =
    suitsVolts(volts, low) || (!suitsVolts(volts, system.volts) && volts < (low + system.volts) / 2);
  if (!toNeutralFits) return pairs;
  return system.phases === 1 ? LINES_OF[pair] : ['A', 'B', 'C'];
}

const LINES_OF: Readonly<Record<PhasePair, readonly Lines[]>> = {
  AB: ['A', 'B'],
  BC: ['B', 'C'],
  CA: ['C', 'A'],
  ABC: ['A', 'B', 'C'],
};

/** Amperes of a load at the nominal voltage of the lines it lies on. */
export function loadAmps(load: Load, system: System, lines: Lines): number {
  if (lines === 'ABC') return load.va / (Math.sqrt(3) * system.volts);
  return load.va / (lines.length === 1 ? toNeutral(system) : system.volts);
}

/** Line currents A, B, C as real and imaginary parts, all at unity power factor under nominal voltages. */
type LineCurrents = [number, number, number, number, number, number];

const HALF_ROOT_3 = Math.sqrt(3) / 2;
const TO_NEUTRAL = [
  [1, 0],
  [-0.5, -HALF_ROOT_3],
  [-0.5, HALF_ROOT_3],
] as const;
// The direction of AB is 30 degrees ahead of A, and so on round.
const ACROSS = [
  [HALF_ROOT_3, 0.5],
  [0, -1],
  [-HALF_ROOT_3, 0.5],
] as const;

function addTo(currents: LineCurrents, lines: Lines, amps: number): void {
  if (lines === 'ABC') {
    for (const one of ['A', 'B', 'C'] as const) addTo(currents, one, amps);
    return;
  }
  const from = 'ABC'.indexOf(lines[0]!);
  const [re, im] = (lines.length === 1 ? TO_NEUTRAL : ACROSS)[from]!;
  currents[2 * from]! += amps * re;
  currents[2 * from + 1]! += amps * im;
  if (lines.length === 1) return;
  const to = (from + 1) % 3;
  currents[2 * to]! -= amps * re;
  currents[2 * to + 1]! -= amps * im;
}

interface Standing {
  readonly lines: Lines;
  readonly amps: number;
}

/**
 * Lines for the loads of one three-phase piece of equipment beside what lies there already: largest first, each where the
 * greatest line current stays least, then moved one by one as long as that helps. A good balance, not a proved one: the
 * chargers beside them are proved. Equal choices go to the first in rotation.
 */
export function placeLoads(
  placeables: readonly Placeable[],
  standing: readonly Standing[],
): ReadonlyMap<string, Lines> {
  const currents: LineCurrents = [0, 0, 0, 0, 0, 0];
  for (const { lines, amps } of standing) addTo(currents, lines, amps);
  const chosen = new Map<string, Lines>();
  const order = [...placeables].sort((a, b) => b.amps - a.amps);
  for (let round = 0, moved = true; moved && round < 20; round++) {
    moved = false;
    for (const one of order) {
      const was = chosen.get(one.id);
      if (was !== undefined) addTo(currents, was, -one.amps);
      const best = bestOf(one, currents, was);
      addTo(currents, best, one.amps);
      chosen.set(one.id, best);
      if (best !== was) moved = true;
    }
  }
  return chosen;
}

function bestOf({ amps, choices }: Placeable, currents: LineCurrents, was: Lines | undefined): Lines {
  const costOf = (lines: Lines): readonly [number, number] => {
    const trial: LineCurrents = [...currents];
    addTo(trial, lines, amps);
    const squares = [0, 1, 2].map((k) => trial[2 * k]! ** 2 + trial[2 * k + 1]! ** 2);
    return [Math.max(...squares), squares.reduce((sum, square) => sum + square, 0)];
  };
  const less = ([a, x]: readonly [number, number], [b, y]: readonly [number, number]): boolean =>
    a < b * (1 - 1e-9) || (a <= b * (1 + 1e-9) && x < y * (1 - 1e-9));
  let best = was ?? choices[0]!;
  let cost = costOf(best);
  for (const lines of choices) {
    const other = costOf(lines);
    if (less(other, cost)) [best, cost] = [lines, other];
  }
  return best;
}
