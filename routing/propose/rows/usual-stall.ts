/** Width and depth of a stall, feet. */
export interface StallSize {
  readonly width: number;
  readonly depth: number;
}

/** Stalls that are driven into; those along a kerb, with room to pull in and out. Common practice, no source. */
const DRIVEN_INTO: StallSize = { width: 9, depth: 18 };
const PARALLEL: StallSize = { width: 8, depth: 22 };

/** A usual stall at an angle to the aisle, degrees, 0 being parallel to it. */
export const usualStall = (angle: number): StallSize => (angle === 0 ? PARALLEL : DRIVEN_INTO);
