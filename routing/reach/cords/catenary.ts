import { hypot2 } from '../../plane/hypot.ts';
/** A cord hanging between two points, seen from the side. */
export interface Catenary {
  /** Horizontal tension over weight per foot, feet: the curve is a cosh(x / a). */
  readonly a: number;
  /** Plan distance from the first end to the bottom of the curve, which can lie past either end. */
  readonly bottom: number;
}

/**
 * ln(sinh(u) / u) and its slope.
 */
function logSinhc(u: number): [value: number, slope: number] {
  if (u < 0.05) {
    const s = u * u;
    return [s / 6 - (s * s) / 180 + (s * s * s) / 2835, u / 3 - (u * s) / 45 + (2 * u * s * s) / 945];
  }
  return [u + Math.log1p(-Math.exp(-2 * u)) - Math.LN2 - Math.log(u), 1 / Math.tanh(u) - 1 / u];
}

/**
 * The catenary of a cord `length` feet long over a plan distance `span`, whose far end is `drop` feet lower than the near
 * one. Solves 2a sinh(span / 2a) = sqrt(length^2 - drop^2) by Newton's method on the logarithm of both sides, which is
 * convex and increasing, so it converges from any start. Null where there is no such curve: the cord is taut or too
 * short, or hangs straight down and up again because the ends stand over one another.
 */
export function catenary(length: number, span: number, drop: number): Catenary | null {
  const straight = hypot2(span, drop);
  const slack = length - straight;
  if (!(slack > 1e-9) || !(span > 1e-9)) return null;
  const width = Math.sqrt((length - Math.abs(drop)) * (length + Math.abs(drop)));
  // ln(width / span), kept exact where the cord is barely slack.
  const wanted = Math.log1p((slack * (length + straight)) / (span * (width + span)));
  let u = wanted < 1 ? Math.sqrt(6 * wanted) : wanted + Math.LN2 + Math.log(wanted + 1);
  for (let i = 0; i < 60; i++) {
    const [value, slope] = logSinhc(u);
    const next = u - (value - wanted) / slope;
    const done = Math.abs(next - u) <= 1e-15 * u;
    u = next > 0 ? next : u / 2;
    if (done) break;
  }
  const a = span / (2 * u);
  return { a, bottom: span / 2 + a * Math.atanh(drop / length) };
}

/** How far the curve at plan distance x from its near end is above its own bottom, feet. */
export const riseAt = (curve: Catenary, x: number): number => {
  // 2 sinh^2 holds its digits where cosh - 1 cancels.
  const s = Math.sinh((x - curve.bottom) / (2 * curve.a));
  return 2 * curve.a * s * s;
};
