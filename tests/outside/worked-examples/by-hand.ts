import { magnitude, type Phasor, scaled } from '../../../calc/supply/load-flow/phasor.ts';
import { ampacityAt } from '../../../calc/tables/ampacity-of.ts';
import { NEC_2023 as nec } from '../../../calc/tables/nec-2023/nec-2023.ts';
import { CONDUCTOR_SIZES } from '../../../calc/tables/sizes.ts';
import type { TemperatureColumn } from '../../../calc/tables/table.ts';

/** Steps that the pages take on their way, and a plan in another form. */

export const times = (a: Phasor, b: Phasor): Phasor => ({
  re: a.re * b.re - a.im * b.im,
  im: a.re * b.im + a.im * b.re,
});

/** The current of `amps` that lags a voltage by the angle of the power factor. */
export function lagging(volts: Phasor, amps: number, powerFactor: number): Phasor {
  const lag = { re: powerFactor, im: -Math.sqrt(1 - powerFactor * powerFactor) };
  return scaled(times(volts, lag), amps / magnitude(volts));
}

/** Smallest size whose ampacity in a column is at least `amps`; null where no single conductor's is. */
export const smallestCarrying = (
  amps: number,
  metal: 'copper' | 'aluminum',
  column: TemperatureColumn,
): string | null => CONDUCTOR_SIZES.find((size) => (ampacityAt(nec, size, metal, column) ?? 0) >= amps) ?? null;

/** Smallest standard transformer of at least `kva`; null past the largest. */
export function standardKvaAtLeast(kva: number, phases: 1 | 3): number | null {
  const { rows } = phases === 3 ? nec.threePhaseTransformers : nec.singlePhaseTransformers;
  return rows.find((row) => kva <= row.kva)?.kva ?? null;
}
