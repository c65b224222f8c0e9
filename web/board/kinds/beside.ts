/** Pixels by which a handle is drawn beside its place, where it would lie on another. */
export const BESIDE = 22;
