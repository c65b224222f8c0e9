import { GEAR, GROUND_WORK } from './systems.ts';

/** Phases in which the work is done, in their order; each has its crew on the site at another time. */
export const PHASES = ['ground', 'gear', 'rough-in', 'wire', 'devices', 'testing'] as const;
export type Phase = (typeof PHASES)[number];

const PHASE_OF: ReadonlyMap<string, Phase> = new Map<string, Phase>([
  ...[...GROUND_WORK, 'ground rod', 'ground ring'].map((item) => [item, 'ground'] as const),
  ...[...GEAR, 'electrode connection'].map((item) => [item, 'gear'] as const),
  ...['termination', 'lug', 'feeder over 1,000 V'].map((item) => [item, 'wire'] as const),
  ...['charging module', 'retractor', 'cord', 'strain relief', 'wire connector', 'pedestal', 'label'].map(
    (item) => [item, 'devices'] as const,
  ),
  ['test', 'testing'],
]);

/** The phase of an item: conductors are wire, and what is none of the others roughed in. Common practice. */
export const phaseOf = (item: string): Phase => PHASE_OF.get(item) ?? (/conductor$/.test(item) ? 'wire' : 'rough-in');
