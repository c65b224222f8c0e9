/** A complex number: an rms voltage, current or impedance at 60 Hz. */
export interface Phasor {
  readonly re: number;
  readonly im: number;
}

export const plus = (a: Phasor, b: Phasor): Phasor => ({ re: a.re + b.re, im: a.im + b.im });
export const minus = (a: Phasor, b: Phasor): Phasor => ({ re: a.re - b.re, im: a.im - b.im });
export const scaled = (a: Phasor, by: number): Phasor => ({ re: a.re * by, im: a.im * by });

// Not Math.hypot: that guards against overflow, which no volts or amps come near, and takes ten times as long.
const root = (re: number, im: number): number => Math.sqrt(re * re + im * im);

export const magnitude = (a: Phasor): number => root(a.re, a.im);

/** Phasor of a magnitude at an angle in degrees, counter-clockwise. */
export function polar(size: number, degrees: number): Phasor {
  const angle = (degrees * Math.PI) / 180;
  return { re: size * Math.cos(angle), im: size * Math.sin(angle) };
}

/** Phasor `index` of a flat list of real and imaginary parts. */
export const phasorAt = (flat: Float64Array, index: number): Phasor => ({
  re: flat[2 * index]!,
  im: flat[2 * index + 1]!,
});

/** Magnitude of phasor `index` of a flat list. */
export const magnitudeAt = (flat: Float64Array, index: number): number => root(flat[2 * index]!, flat[2 * index + 1]!);
