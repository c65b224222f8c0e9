/**
 * Measures of a painted stall that meets the aisle at an angle, degrees between its stripes and the aisle, over 0 to 90.
 * `width` is square to the stripes and `depth` along them, feet. Municipal parking tables print these; they hold for
 * the stall as painted, not for tables that project a vehicle.
 */

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

// Exact where the stall is square to the aisle: the cosine of the rounded right angle is not 0.
export const sine = (angle: number): number => (angle === 90 ? 1 : Math.sin(radians(angle)));
export const cosine = (angle: number): number => (angle === 90 ? 0 : Math.cos(radians(angle)));

/** What one stall takes along the aisle: W / sin a. */
export const widthAlongAisle = (width: number, angle: number): number => width / sine(angle);

/** From the aisle to the farthest corner, as against a wall: L sin a + W cos a. */
export const depthToWall = (width: number, depth: number, angle: number): number =>
  depth * sine(angle) + width * cosine(angle);

/** From the aisle to the middle of the head, where two rows of the same angle interlock: L sin a + (W / 2) cos a. */
export const depthToInterlock = (width: number, depth: number, angle: number): number =>
  depth * sine(angle) + (width / 2) * cosine(angle);

/** How far the last stripe leans past the strip of aisle that its row takes: L cos a. */
export const leanOf = (depth: number, angle: number): number => depth * cosine(angle);
