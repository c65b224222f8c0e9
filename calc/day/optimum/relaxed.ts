import type { World } from '../simulated/world.ts';

/** What the best schedule leaves out of what the rules keep to, so that it is a bound and may be no schedule to be had. */
export const RELAXED = ['minimum', 'cords', 'taper'] as const;

export type Relaxed = (typeof RELAXED)[number];

export function relaxedOf({ input, charger, minAmps }: World): readonly Relaxed[] {
  const is: Readonly<Record<Relaxed, boolean>> = {
    minimum: charger.some((c, car) => c >= 0 && minAmps[car]! > 0),
    cords: input.hold === 'done' && input.chargers.some(({ stalls }) => stalls > 1),
    taper: input.taper !== null && input.cars.some(({ battery }) => battery !== undefined),
  };
  return RELAXED.filter((word) => is[word]);
}
