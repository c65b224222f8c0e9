/** Farther out than this, feet, no two places have keys alike. */
const FAR = 2 ** 20;

/** A number for each place in whole feet. */
export const placeKey = (u: number, v: number): number => (u + FAR) * 2 * FAR + v + FAR;
