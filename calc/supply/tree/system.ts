import type { Phasor } from '../load-flow/phasor.ts';
import { polar } from '../load-flow/phasor.ts';

/** A nominal system: what its lines and neutral are. */
export interface System {
  /** Line to line. */
  readonly volts: number;
  readonly phases: 1 | 3;
  /**
   * Where its neutral lies: in the middle of a wye (208Y/120, 480Y/277), or halfway between the two lines of a
   * single-phase three-wire winding (120/240); null where it has none (240 V three-wire).
   */
  readonly neutral: 'wye' | 'halfway' | null;
}

/** Three-phase systems that have a neutral, volts line to line. */
const WYE_VOLTS = [208, 480];

const isWye = (volts: number): boolean => WYE_VOLTS.some((wye) => Math.abs(volts - wye) <= 1);

/** The three-phase system of a nominal voltage: four-wire at 208Y/120 and 480Y/277, else three-wire. */
export const threePhaseSystem = (volts: number): System => ({ volts, phases: 3, neutral: isWye(volts) ? 'wye' : null });

/**
 * The single-phase system of equipment that stands alone: two lines of a wye at 208 or 480 V, else a three-wire winding
 * with its neutral halfway.
 */
export const singlePhaseSystem = (volts: number): System => ({
  volts,
  phases: 1,
  neutral: isWye(volts) ? 'wye' : 'halfway',
});

/** Line to neutral volts; of a system without a neutral, to the middle of its triangle. */
export const toNeutral = ({ volts, neutral }: System): number =>
  neutral === 'halfway' ? volts / 2 : volts / Math.sqrt(3);

/** Nominal line-to-neutral phasors A, B, C, A at angle 0. */
export function nominalPhasors(system: System): readonly [Phasor, Phasor, Phasor] {
  const volts = toNeutral(system);
  return system.neutral === 'halfway'
    ? [polar(volts, 0), { re: -volts, im: 0 }, { re: 0, im: 0 }]
    : [polar(volts, 0), polar(volts, -120), polar(volts, 120)];
}

/** Share by which two voltages may differ and still be one nominal: utilization names, such as 230 for 240. */
const SAME_NOMINAL = 0.05;

/** True where a rating belongs to a nominal voltage, within 5% (common practice: 115 is 120, 200 is 208, 230 is 240). */
export const suitsVolts = (rated: number, nominal: number): boolean =>
  Math.abs(rated - nominal) <= SAME_NOMINAL * nominal;

/** How a system is named: `"208Y/120 V"`, `"120/240 V"`, `"240 V"`. */
export function systemName(system: System): string {
  const volts = Math.round(system.volts);
  if (system.neutral === null) return `${volts} V`;
  const low = Math.round(toNeutral(system));
  return system.neutral === 'halfway' ? `${low}/${volts} V` : `${volts}Y/${low} V`;
}
