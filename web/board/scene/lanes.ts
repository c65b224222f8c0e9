import type { PhasePair } from '../../../calc/plan-file/branches.ts';
import { lineColors } from '../../../calc/takeoff/quantities/line-colors.ts';
import type { LineColor, RunMark } from './mark.ts';

const LANE = { A: -1, B: 0, C: 1 } as const;

/**
 * The lanes of a circuit: each line in its color by trade custom, and on its own side of the raceway on the whole way,
 * as A left, B middle, C right. A two-pole circuit shows two of the three.
 */
export function lanesOf(phases: PhasePair, volts: number): RunMark['lanes'] {
  const colors = lineColors(phases, volts) as readonly LineColor[];
  return [...phases].map((line, i) => ({ color: colors[i]!, lane: LANE[line as keyof typeof LANE] }));
}
