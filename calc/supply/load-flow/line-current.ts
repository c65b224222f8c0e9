/** Amperes on three legs: across AB, BC, CA, or on A, B, C. */
export type LegAmps = readonly [number, number, number];

/** What the sums of three legs cost: the same in any order, and no less the further apart they are. */
export type LegCost = (legs: LegAmps) => number;

/**
 * Line currents A, B, C of currents across AB, BC, CA at one power factor. Line A carries those of AB and CA, which stand
 * 60 degrees apart: A² = AB² + CA² + AB CA.
 */
export function linesOfPairs([ab, bc, ca]: LegAmps): LegAmps {
  const line = (a: number, b: number): number => Math.sqrt(a * a + b * b + a * b);
  return [line(ab, ca), line(bc, ab), line(ca, bc)];
}
