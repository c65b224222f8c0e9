/** A place in the plan, feet. */
export type Point2 = readonly [x: number, y: number];
/** A place in space, feet; z is up from grade. */
export type Point3 = readonly [x: number, y: number, z: number];
