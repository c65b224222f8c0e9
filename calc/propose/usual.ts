import type { Charger, Drop, Equipment } from '../../routing/site/site.ts';

/** What new elements are unless something else is asked for. Lengths in feet. Common practice, no source. */
export const USUAL_DROP: Required<Pick<Drop, 'cord' | 'restHeight'>> & {
  readonly elevation: number;
  readonly retractorBelow: number;
} = { cord: 25, restHeight: 3, elevation: 11, retractorBelow: 1 };

/** A box on a pedestal, within a hand's reach. */
export const USUAL_PEDESTAL: { readonly elevation: number } = { elevation: 3 };

export const USUAL_CHARGER: Required<Pick<Charger, 'amps' | 'phases' | 'pilot'>> = { amps: 32, phases: 1, pilot: true };

export const USUAL_PANELBOARD: Required<
  Pick<Equipment, 'size' | 'volts' | 'phases' | 'busAmps' | 'mainAmps' | 'spaces' | 'workingSpace'>
> & { readonly entryHeight: number } = {
  size: [3, 1, 6],
  entryHeight: 6,
  volts: 208,
  phases: 3,
  busAmps: 600,
  mainAmps: 600,
  spaces: 54,
  workingSpace: 3,
};

export const USUAL_TRANSFORMER: Required<Pick<Equipment, 'size' | 'phases'>> & { readonly entryHeight: number } = {
  size: [4, 3, 5],
  entryHeight: 4,
  phases: 3,
};

/** What new raceways are of, by their place; what comes up out of the ground where a car may hit it is made for that. */
export const USUAL_RACEWAY = { overhead: 'EMT', underground: 'PVC40', riser: 'PVC80' } as const;
