import { lineAmps } from '../../circuits/line-amps.ts';
import { sineOf } from '../../circuits/line-drop.ts';
import { SILENT, type Tell } from '../../words/explain.ts';
import { measured } from '../../words/measured.ts';

export interface TransformerInput {
  readonly kva: number;
  /** Line to line. */
  readonly primaryVolts: number;
  readonly secondaryVolts: number;
  readonly phases: 1 | 3;
  readonly impedancePercent?: number | undefined;
  /** Reactance over resistance. */
  readonly xr?: number | undefined;
  /** The rated load where it is not said. */
  readonly loadKva?: number | undefined;
  /** Unity where it is not said. */
  readonly powerFactor?: number | undefined;
  /** True for a load whose current leads. */
  readonly leading?: boolean | undefined;
}

export interface TransformerResult {
  readonly primaryAmps: number;
  readonly secondaryAmps: number;
  /** Rise of the secondary from this load to none, percent of rated volts; where impedance and X/R are known. */
  readonly regulationPercent?: number;
  /** Bolted three-phase (or line to line) fault at the secondary, A, on an endless primary; where impedance is known. */
  readonly faultAmps?: number;
}

/** Resistance and reactance of an impedance, in its own unit. */
export function resistanceAndReactance(z: number, xr: number): { readonly r: number; readonly x: number } {
  const r = z / Math.hypot(1, xr);
  return { r, x: xr * r };
}

/**
 * Rise of a transformer's secondary volts from a load to none, per unit of rated, the load at rated volts: `r` and `x`
 * per unit, `share` the load over the rating. Exact, by phasors.
 */
export function regulation(
  per: { readonly r: number; readonly x: number },
  share: number,
  powerFactor: number,
  leading = false,
): number {
  const sine = leading ? -sineOf(powerFactor) : sineOf(powerFactor);
  return Math.hypot(powerFactor + share * per.r, sine + share * per.x) - 1;
}

/**
 * Rated amperes of both sides, and, where the nameplate figures are given, regulation and fault current.
 * @example
 * // Hand-worked: 150,000 / (sqrt 3 x 480) and / (sqrt 3 x 208); 5% lets twenty times the latter flow
 * transformer({ kva: 150, primaryVolts: 480, secondaryVolts: 208, phases: 3, impedancePercent: 5 }) // { primaryAmps: 180.42, secondaryAmps: 416.36, faultAmps: 8327 }
 */
export function transformer(input: TransformerInput, tell: Tell = SILENT): TransformerResult {
  const { kva, primaryVolts, secondaryVolts, phases, impedancePercent, xr, loadKva = kva, powerFactor = 1 } = input;
  const primaryAmps = lineAmps(1000 * kva, primaryVolts, phases);
  const secondaryAmps = lineAmps(1000 * kva, secondaryVolts, phases);
  for (const [side, volts, amps] of [
    ['primary', primaryVolts, primaryAmps],
    ['secondary', secondaryVolts, secondaryAmps],
  ] as const)
    tell(() => ({
      find: `rated ${side} amperes`,
      formula: phases === 3 ? '1000 x kVA / (sqrt 3 x volts)' : '1000 x kVA / volts',
      values: { kVA: kva, volts: measured(volts, 'V') },
      result: amps,
      unit: 'A',
      source: 'definition',
    }));
  if (impedancePercent === undefined) return { primaryAmps, secondaryAmps };

  const faultAmps = (100 * secondaryAmps) / impedancePercent;
  tell(() => ({
    find: 'fault amperes at the secondary',
    formula: 'rated secondary amperes x 100 / impedance in %, the primary taken as endless',
    values: { 'secondary amperes': measured(secondaryAmps, 'A'), impedance: `${impedancePercent}%` },
    result: faultAmps,
    unit: 'A',
    source: 'standard machine theory',
  }));
  if (xr === undefined) return { primaryAmps, secondaryAmps, faultAmps };

  const per = resistanceAndReactance(impedancePercent / 100, xr);
  const regulationPercent = 100 * regulation(per, loadKva / kva, powerFactor, input.leading);
  tell(() => ({
    find: 'regulation',
    formula: 'sqrt((pf + p R)² + (sin + p X)²) - 1, p the load over the rating, sin negative for a leading current',
    values: {
      R: per.r,
      X: per.x,
      p: `${measured(loadKva, 'kVA')} / ${measured(kva, 'kVA')}`,
      pf: `${powerFactor}${input.leading ? ' leading' : ' lagging'}`,
    },
    result: regulationPercent,
    unit: '%',
    source: 'standard machine theory, exact',
  }));
  return { primaryAmps, secondaryAmps, regulationPercent, faultAmps };
}
