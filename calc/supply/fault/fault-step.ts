import type { Metal } from '../../../routing/site/schema/vocabulary.ts';
import { threePhaseSystem } from '../tree/system.ts';

/** One after another from the supply on. Volts are line to line. */
export type FaultStep =
  | {
      readonly kind: 'source';
      /** Available current, or the power that it is of; neither: unlimited. */
      readonly faultAmps?: number | undefined;
      readonly mva?: number | undefined;
      readonly volts: number;
      /** Reactance over resistance; all reactance where it is not given, which errs to more current. */
      readonly xr?: number | undefined;
    }
  | {
      readonly kind: 'transformer';
      readonly kva: number;
      readonly secondaryVolts: number;
      readonly phases: 1 | 3;
      readonly impedancePercent: number;
      readonly xr?: number | undefined;
    }
  | {
      readonly kind: 'conductor';
      /** One way, feet. */
      readonly length: number;
      readonly volts: number;
      readonly phases: 1 | 3;
      readonly conductor: { readonly size: string; readonly metal: Metal; readonly sets?: number | undefined };
      readonly raceway: 'steel' | 'nonmagnetic';
      /** Per 1,000 ft, in place of the table. */
      readonly ohms?: { readonly r: number; readonly x: number } | undefined;
    };

export interface FaultChain {
  readonly steps: readonly FaultStep[];
  /** `point-to-point`: published constants, magnitudes added. `impedance`: resistance and reactance added. */
  readonly method: 'point-to-point' | 'impedance';
  /** Share of a transformer's nameplate impedance that is taken: 0.9 for the highest current. */
  readonly impedanceTolerance?: number | undefined;
  /** Of conductors, °C, by `impedance`: 75, that of the table, where it is not said. The constants are of about 25 °C. */
  readonly conductorC?: number | undefined;
}

/** Bolted fault after a step: three-phase, or line to line where the circuit is of one phase. */
export interface FaultPlace {
  /** Null where the supply is unlimited and nothing is in its way yet. */
  readonly amps: number | null;
  /** By impedance: ohms of one line, of the loop where the circuit is of one phase, on the volts there. */
  readonly r?: number;
  readonly x?: number;
  /** X over R; absent where there is no resistance. */
  readonly xr?: number;
  /** Point to point: f, and the multiplier of the current; of a transformer on an unlimited supply 100 / Z%. */
  readonly factor?: number;
  readonly multiplier?: number;
  /** Line to neutral, behind a transformer whose secondary has one: a wye, or a winding with its middle out. */
  readonly lineToNeutral?: number;
}

/** Lines that a fault current meets: sqrt 3 of a balanced three, there and back on one phase. */
export const root = (phases: 1 | 3): number => (phases === 3 ? Math.sqrt(3) : 1);

/** A source is of the phases of what it feeds. */
export const phasesOfSource = (steps: readonly FaultStep[]): 1 | 3 =>
  steps.find((step) => step.kind !== 'source')?.phases ?? 3;

export function sourceAmps(step: FaultStep & { readonly kind: 'source' }, phases: 1 | 3): number | null {
  if (step.faultAmps !== undefined) return step.faultAmps;
  return step.mva === undefined ? null : (step.mva * 1e6) / (root(phases) * step.volts);
}

/** Volts to neutral behind a transformer; null where its secondary has none. */
export const neutralVolts = ({
  phases,
  secondaryVolts,
}: FaultStep & { readonly kind: 'transformer' }): number | null =>
  phases === 1
    ? secondaryVolts / 2
    : threePhaseSystem(secondaryVolts).neutral === null
      ? null
      : secondaryVolts / Math.sqrt(3);
