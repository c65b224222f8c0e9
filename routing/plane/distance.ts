/** Length of the vector (x, y). `Math.hypot` guards against overflow, which no site comes near, at ten times the cost. */
export const length2 = (x: number, y: number): number => Math.sqrt(x * x + y * y);

/** Length of the vector (x, y, z). */
export const length3 = (x: number, y: number, z: number): number => Math.sqrt(x * x + y * y + z * z);
