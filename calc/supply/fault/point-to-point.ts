import { FAULT_CONSTANTS } from '../../tables/fault-constants.ts';
import type { Tell } from '../../words/explain.ts';
import { measured } from '../../words/measured.ts';
import {
  type FaultChain,
  type FaultPlace,
  type FaultStep,
  neutralVolts,
  phasesOfSource,
  root,
  sourceAmps,
} from './fault-step.ts';

/**
 * A fault to the middle of a winding at its terminals, over one across all of it: 1.33 to 1.67, of which handbooks take 1.5.
 */
const TO_MIDDLE = 1.5;

/** Available fault current after each step by constants of the conductors, magnitudes added. */
export function pointToPoint({ steps, impedanceTolerance = 1 }: FaultChain, tell: Tell): readonly FaultPlace[] {
  let [amps, volts]: [number | null, number] = [null, 0];
  let neutral: { readonly volts: number; readonly amps: number } | null = null;
  const toNeutral = (): { lineToNeutral?: number } => (neutral === null ? {} : { lineToNeutral: neutral.amps });
  return steps.map((step): FaultPlace => {
    if (step.kind === 'source') {
      [amps, volts] = [sourceAmps(step, phasesOfSource(steps)), step.volts];
      return { amps };
    }
    if (volts === 0) throw new RangeError('a source comes first');
    let factor: number | undefined;
    let multiplier: number;
    if (step.kind === 'transformer') {
      const { kva, secondaryVolts, phases, impedancePercent } = step;
      const z = impedancePercent * impedanceTolerance;
      const rated = (1000 * kva) / (root(phases) * secondaryVolts);
      if (amps === null) {
        multiplier = 100 / z;
        amps = rated * multiplier;
      } else {
        factor = (amps * volts * root(phases) * z) / (100_000 * kva);
        multiplier = 1 / (1 + factor);
        amps = (amps * multiplier * volts) / secondaryVolts;
      }
      volts = secondaryVolts;
      const low = neutralVolts(step);
      neutral = low === null ? null : { volts: low, amps: phases === 1 ? TO_MIDDLE * amps : amps };
      tellTransformer(step, { z, rated, factor, multiplier, amps }, tell);
      tellNeutral(
        neutral,
        `at ${kva} kVA`,
        phases === 1 ? `${TO_MIDDLE} x the current across the winding` : 'as much as between three lines',
        tell,
      );
      return { amps, ...(factor === undefined ? {} : { factor }), multiplier, ...toNeutral() };
    }
    const { length, phases, conductor } = step;
    const sets = conductor.sets ?? 1;
    const c = constantOf(step);
    const across = phases === 3 ? Math.sqrt(3) : 2;
    const before = amps;
    if (amps === null) {
      if (length === 0) return { amps };
      amps = (c * sets * step.volts) / (across * length);
      multiplier = 0;
    } else {
      factor = (across * length * amps) / (c * sets * step.volts);
      multiplier = 1 / (1 + factor);
      amps *= multiplier;
    }
    volts = step.volts;
    if (neutral !== null)
      neutral = { ...neutral, amps: neutral.amps / (1 + (2 * length * neutral.amps) / (c * sets * neutral.volts)) };
    const [end, f] = [amps, factor];
    tell(() => ({
      find: `fault current after ${length} ft of ${conductor.size} ${conductor.metal}`,
      formula: `f = ${phases === 3 ? 'sqrt 3' : '2'} x length x amperes / (C x sets x volts); amperes / (1 + f)`,
      values: {
        'amperes before': before === null ? 'unlimited' : measured(before, 'A'),
        C: c,
        sets,
        volts: measured(step.volts, 'V'),
        ...(f === undefined ? {} : { f }),
      },
      result: end,
      unit: 'A',
      source: step.ohms === undefined ? FAULT_CONSTANTS.source : 'ohms as given; point-to-point method',
    }));
    tellNeutral(neutral, `after ${length} ft`, '2 x length x amperes / (C x sets x volts to neutral)', tell);
    return { amps, ...(factor === undefined ? {} : { factor }), multiplier, ...toNeutral() };
  });
}

function constantOf({ conductor: { size, metal }, raceway, ohms }: FaultStep & { readonly kind: 'conductor' }): number {
  if (ohms !== undefined) return 1000 / Math.hypot(ohms.r, ohms.x);
  const row = FAULT_CONSTANTS.rows.find((one) => one.size === size);
  if (row === undefined) throw new RangeError(`${FAULT_CONSTANTS.source} has no ${size}`);
  return row[metal][raceway];
}

interface ThroughTransformer {
  readonly z: number;
  readonly rated: number;
  readonly factor: number | undefined;
  readonly multiplier: number;
  readonly amps: number;
}

const tellTransformer = (
  { kva, phases, impedancePercent, secondaryVolts }: FaultStep & { readonly kind: 'transformer' },
  { z, rated, factor, multiplier, amps }: ThroughTransformer,
  tell: Tell,
): void =>
  tell(() => ({
    find: `fault current at the secondary of ${kva} kVA`,
    formula:
      factor === undefined
        ? `rated amperes (1,000 x kVA / (${phases === 3 ? 'sqrt 3 x ' : ''}volts)) x 100 / Z%, the supply unlimited`
        : `f = amperes x volts x ${phases === 3 ? 'sqrt 3 x ' : ''}Z% / (100,000 x kVA); amperes / (1 + f) x primary volts / secondary volts`,
    values: {
      'nameplate impedance': `${impedancePercent}%`,
      'Z%': z,
      'rated amperes': measured(rated, 'A'),
      'secondary volts': measured(secondaryVolts, 'V'),
      ...(factor === undefined ? {} : { f: factor }),
      multiplier,
    },
    result: amps,
    unit: 'A',
    source: 'point-to-point method, as printed in public handbooks',
  }));

function tellNeutral(
  neutral: { readonly volts: number; readonly amps: number } | null,
  where: string,
  formula: string,
  tell: Tell,
): void {
  if (neutral === null) return;
  const { volts, amps } = neutral;
  tell(() => ({
    find: `fault current, line to neutral, ${where}`,
    formula,
    values: { 'volts to neutral': measured(volts, 'V') },
    result: amps,
    unit: 'A',
    source: 'point-to-point method, as printed in public handbooks',
  }));
}
