/** Pixels by which a handle is drawn beside its place, where it would lie on another. */
export const HANDLE_BESIDE = 22;
