import type { PhasePair } from '../../plan-file/branches.ts';

/** Insulation colours of lines A, B, C by custom: to 250 V between lines, and above. Common practice, no source. */
const COLORS = [
  { toVolts: 250, A: 'black', B: 'red', C: 'blue' },
  { toVolts: Infinity, A: 'brown', B: 'orange', C: 'yellow' },
].map(({ toVolts, A, B, C }) => {
  const colors: Readonly<Record<PhasePair, readonly string[]>> = { AB: [A, B], BC: [B, C], CA: [C, A], ABC: [A, B, C] };
  return { toVolts, colors };
});

export const GROUNDING_COLOR = 'green';

/** Of the pilot conductor, apart from those of lines, neutral and ground. Common practice, no source. */
export const PILOT_COLOR = 'violet';

/** Colours of the lines of a circuit at so many volts between lines. */
export const lineColors = (phases: PhasePair, volts: number): readonly string[] =>
  COLORS.find(({ toVolts }) => volts <= toVolts)!.colors[phases];

/** Color of the neutral at so many volts between lines. Common practice, no source. */
export const neutralColor = (volts: number): string => (volts <= COLORS[0]!.toVolts ? 'white' : 'gray');
