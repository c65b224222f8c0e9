import type { Units } from '../schema/vocabulary.ts';

/** The international foot, exactly. */
export const METRES_PER_FOOT = 0.3048;

/** A length in `units` as feet; rounded once. */
export const toFeet = (value: number, units: Units): number => (units === 'm' ? value / METRES_PER_FOOT : value);

/** A length in feet in `units`. */
export const fromFeet = (feet: number, units: Units): number => (units === 'm' ? feet * METRES_PER_FOOT : feet);
