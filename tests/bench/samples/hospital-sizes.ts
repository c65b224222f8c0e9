/** Sizes of the hospital lot, feet; counts a row. */

export const WIDTH = 9;
export const DEPTH = 18;
export const PER_HALF = 15;
export const HALF = PER_HALF * WIDTH;
/** Room for a panel in the middle of each row. */
export const GAP = 14;
export const PITCH = 60;
export const RACEWAY_Z = 11;
export const CROSSING_Z = 14.5;
export const MIDDLE = HALF + GAP / 2;
