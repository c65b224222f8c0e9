import type { PhasePair } from '../plan-shape.ts';

/** Insulation colours of lines A, B, C by custom: to 250 V between lines, and above. Common practice, no source. */
const COLORS = [
  { toVolts: 250, A: 'black', B: 'red', C: 'blue' },
  { toVolts: Infinity, A: 'brown', B: 'orange', C: 'yellow' },
] as const;

/** Color of a line conductor. */
export type LineColor = (typeof COLORS)[number]['A' | 'B' | 'C'];

export const GROUNDING_COLOR = 'green';

/** Colours of the lines of a circuit at so many volts between lines. */
export function lineColors(phases: PhasePair, volts: number): readonly LineColor[] {
  const colors = COLORS.find(({ toVolts }) => volts <= toVolts)!;
  return [...phases].map((line) => colors[line as 'A' | 'B' | 'C']);
}
