import type { Metal } from '../../../routing/site/vocabulary.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { FAULT_CONSTANTS } from '../../tables/fault-constants.ts';
import { findImpedance } from '../../tables/lookup.ts';
import { SILENT, type Tell } from '../../words/explain.ts';
import { measured } from '../../words/measured.ts';

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
}

/** What the conductor of a step has no figure for, in words; undefined where it has. */
export function lackingAt(tables: CodeTables, step: FaultStep, method: FaultChain['method']): string | undefined {
  if (step.kind !== 'conductor' || step.ohms !== undefined) return undefined;
  const { size, metal } = step.conductor;
  const found =
    method === 'impedance'
      ? findImpedance(tables, size, metal, step.raceway === 'steel' ? 'steel' : 'PVC')
      : FAULT_CONSTANTS.rows.find((row) => row.size === size);
  if (found !== undefined) return undefined;
  return `${method === 'impedance' ? tables.impedances.source : FAULT_CONSTANTS.source} has no ${size} ${metal}; give its ohms`;
}

/**
 * Available fault current after each step. RangeError for a conductor that the tables lack and for a step before a source.
 * Source of both methods: published worksheets; IEEE 141 and 242 for the addition of R and X (from memory).
 */
export function faultChain(tables: CodeTables, chain: FaultChain, tell: Tell = SILENT): readonly FaultPlace[] {
  return chain.method === 'impedance' ? byImpedance(tables, chain, tell) : pointToPoint(chain, tell);
}

/** Lines that a fault current meets: sqrt 3 of a balanced three, there and back on one phase. */
const root = (phases: 1 | 3): number => (phases === 3 ? Math.sqrt(3) : 1);

/** A source is of the phases of what it feeds. */
const phasesOfSource = (steps: readonly FaultStep[]): 1 | 3 =>
  steps.find((step) => step.kind !== 'source')?.phases ?? 3;

function sourceAmps(step: FaultStep & { readonly kind: 'source' }, phases: 1 | 3): number | null {
  if (step.faultAmps !== undefined) return step.faultAmps;
  return step.mva === undefined ? null : (step.mva * 1e6) / (root(phases) * step.volts);
}

function pointToPoint({ steps, impedanceTolerance = 1 }: FaultChain, tell: Tell): readonly FaultPlace[] {
  let [amps, volts]: [number | null, number] = [null, 0];
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
      tellTransformer(step, { z, rated, factor, multiplier, amps }, tell);
      return { amps, ...(factor === undefined ? {} : { factor }), multiplier };
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
    return { amps, ...(factor === undefined ? {} : { factor }), multiplier };
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

function byImpedance(
  tables: CodeTables,
  { steps, impedanceTolerance = 1 }: FaultChain,
  tell: Tell,
): readonly FaultPlace[] {
  let [r, x, volts, phases]: [number, number, number, 1 | 3] = [0, 0, 0, phasesOfSource(steps)];
  const add = (z: number, xr: number | undefined): void => {
    const across = xr === undefined ? 0 : z / Math.hypot(1, xr);
    r += across;
    x += xr === undefined ? z : across * xr;
  };
  return steps.map((step, i): FaultPlace => {
    if (step.kind === 'source') {
      const amps = sourceAmps(step, phases);
      [r, x, volts] = [0, 0, step.volts];
      if (amps !== null) add(step.volts / (root(phases) * amps), step.xr);
    } else {
      if (volts === 0) throw new RangeError('a source comes first');
      // Of one phase, the loop: two lines of what was of three.
      if (phases === 3 && step.phases === 1) [r, x] = [2 * r, 2 * x];
      ({ phases } = step);
      if (step.kind === 'transformer') {
        const turns = (step.secondaryVolts / volts) ** 2;
        [r, x] = [r * turns, x * turns];
        volts = step.secondaryVolts;
        add((step.impedancePercent * impedanceTolerance * volts ** 2) / (100_000 * step.kva), step.xr);
      } else {
        const { conductor, raceway, length } = step;
        const ohms =
          step.ohms ?? findImpedance(tables, conductor.size, conductor.metal, raceway === 'steel' ? 'steel' : 'PVC');
        if (ohms === undefined) throw new RangeError(`${tables.impedances.source} has no ${conductor.size}`);
        const share = ((phases === 3 ? 1 : 2) * length) / 1000 / (conductor.sets ?? 1);
        [r, x, volts] = [r + ohms.r * share, x + ohms.x * share, step.volts];
      }
    }
    const z = Math.hypot(r, x);
    const amps = z === 0 ? null : volts / (root(phases) * z);
    const there = { r, x, volts, phases };
    tell(() => ({
      find: `fault current after step ${i + 1}, ${step.kind}`,
      formula: `volts / (${there.phases === 3 ? 'sqrt 3 x ' : ''}sqrt(R² + X²)); through a transformer ohms go with the square of the volts`,
      values: {
        volts: measured(there.volts, 'V'),
        R: measured(there.r, 'ohm'),
        X: measured(there.x, 'ohm'),
      },
      result: amps ?? 'unlimited',
      ...(amps === null ? {} : { unit: 'A' }),
      source:
        step.kind === 'conductor' && step.ohms === undefined
          ? tables.impedances.source
          : 'I = V / |Z|, standard theory',
    }));
    return { amps, r, x, ...(r > 0 ? { xr: x / r } : {}) };
  });
}
