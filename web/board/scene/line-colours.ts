import type { PhasePair } from '../../../calc/plan-shape.ts';
import type { LineColour, RunMark } from './mark.ts';

/**
 * Colours of the line conductors A, B, C: black, red, blue up to 208Y/120 and brown, orange, yellow above, as the
 * trade has it by custom (no rule of the code fixes more than the neutral and the ground).
 */
export const lineColours = (volts: number): readonly [LineColour, LineColour, LineColour] =>
  volts > 300 ? ['brown', 'orange', 'yellow'] : ['black', 'red', 'blue'];

const NUMBER: Readonly<Record<PhasePair, readonly (0 | 1 | 2)[]>> = {
  AB: [0, 1],
  BC: [1, 2],
  CA: [0, 2],
  ABC: [0, 1, 2],
};

/** The lanes of a circuit: each line keeps its own side of the raceway on the whole way, as A left, B middle, C right. */
export function lanesOf(phases: PhasePair, volts: number): RunMark['lanes'] {
  const colours = lineColours(volts);
  return NUMBER[phases].map((line) => ({ colour: colours[line], lane: (line - 1) as -1 | 0 | 1 }));
}
