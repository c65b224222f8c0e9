/** One stretch of line: `r` and `x` are the ohms of one conductor from end to end, sets already in parallel. */
export interface LineStretch {
  readonly phases: 1 | 3;
  /** Line to line at the feeding end. */
  readonly volts: number;
  readonly amps: number;
  readonly r: number;
  readonly x: number;
  /** Lagging. */
  readonly powerFactor: number;
}

export interface VoltDrop {
  readonly dropVolts: number;
  /** Of the volts at the feeding end. */
  readonly dropPercent: number;
  readonly voltsAtLoad: number;
}

/** Conductors that the current meets, as seen between lines: there and back, or sqrt 3 of a balanced three. */
export const lineFactor = (phases: 1 | 3): number => (phases === 3 ? Math.sqrt(3) : 2);

/** Reactive share of a current: the sine of the angle whose cosine is the power factor. */
export const sineOf = (powerFactor: number): number => Math.sqrt(Math.max(0, 1 - powerFactor * powerFactor));

const dropped = (volts: number, dropVolts: number): VoltDrop => ({
  dropVolts,
  dropPercent: (100 * dropVolts) / volts,
  voltsAtLoad: volts - dropVolts,
});

/** Drop by k I (R cos + X sin): the handbook's estimate. With no reactance and unity power factor it is k I R. */
export function estimatedDrop({ phases, volts, amps, r, x, powerFactor }: LineStretch): VoltDrop {
  return dropped(volts, lineFactor(phases) * amps * (r * powerFactor + x * sineOf(powerFactor)));
}

/**
 * Drop of magnitudes with the current as a phasor that lags the voltage at the feeding end: |V| - |V - k I Z|. Exact for
 * one circuit between two lines, and for a balanced three.
 */
export function phasorDrop({ phases, volts, amps, r, x, powerFactor }: LineStretch): VoltDrop {
  const k = lineFactor(phases) * amps;
  const sine = sineOf(powerFactor);
  const real = volts - k * (r * powerFactor + x * sine);
  const imaginary = k * (x * powerFactor - r * sine);
  return dropped(volts, volts - Math.hypot(real, imaginary));
}

/**
 * True past the collapse: where by phasors more length no longer takes volts but would give them back, the current lagging
 * the feeding end all the while. No load runs there.
 */
export function collapsed({ phases, volts, amps, r, x, powerFactor }: LineStretch): boolean {
  const k = lineFactor(phases) * amps;
  return k * (r * r + x * x) > volts * (r * powerFactor + x * sineOf(powerFactor)) * (1 + 1e-12);
}

/**
 * Drop of a branch: the phasors' to half the volts. Past that, where no charger runs anyway and the phasors soon begin to
 * promise more volts for more impedance, the estimate's, which goes on growing.
 */
export function branchDrop(line: LineStretch): VoltDrop {
  const estimate = estimatedDrop(line);
  return estimate.dropVolts > line.volts / 2 ? estimate : phasorDrop(line);
}
