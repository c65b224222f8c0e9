import type { CodeTables } from '../../tables/code-tables.ts';
import { findImpedance, resistanceShare, TABLE_C } from '../../tables/conductor-of.ts';
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

/** Available fault current after each step, resistance and reactance added. */
export function chainByImpedance(
  tables: CodeTables,
  { steps, impedanceTolerance = 1, conductorC = TABLE_C }: FaultChain,
  tell: Tell,
): readonly FaultPlace[] {
  let [r, x, volts, phases]: [number, number, number, 1 | 3] = [0, 0, 0, phasesOfSource(steps)];
  let neutral: { readonly volts: number; readonly r: number; readonly x: number } | null = null;
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
        const ahead = { r, x };
        add((step.impedancePercent * impedanceTolerance * volts ** 2) / (100_000 * step.kva), step.xr);
        neutral = behind(step, ahead, { r: r - ahead.r, x: x - ahead.x });
      } else {
        const { conductor, raceway, length } = step;
        const table = findImpedance(tables, conductor.size, conductor.metal, raceway === 'steel' ? 'steel' : 'PVC');
        const warm = resistanceShare(tables, conductor.metal, conductorC);
        const ohms = step.ohms ?? (table === undefined ? undefined : { r: table.r * warm, x: table.x });
        if (ohms === undefined) throw new RangeError(`${tables.impedances.source} has no ${conductor.size}`);
        const line = length / 1000 / (conductor.sets ?? 1);
        const share = (phases === 3 ? 1 : 2) * line;
        [r, x, volts] = [r + ohms.r * share, x + ohms.x * share, step.volts];
        if (neutral !== null)
          neutral = { ...neutral, r: neutral.r + 2 * ohms.r * line, x: neutral.x + 2 * ohms.x * line };
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
          ? `${tables.impedances.source}, conductors at ${conductorC} °C`
          : 'I = V / |Z|, standard theory',
    }));
    const back = neutral;
    if (back === null) return { amps, r, x, ...(r > 0 ? { xr: x / r } : {}) };
    const lineToNeutral = back.volts / Math.hypot(back.r, back.x);
    tell(() => ({
      find: `fault current, line to neutral, after step ${i + 1}, ${step.kind}`,
      formula: 'volts to neutral / magnitude of the ohms of a line and back on the neutral',
      values: {
        'volts to neutral': measured(back.volts, 'V'),
        R: measured(back.r, 'ohm'),
        X: measured(back.x, 'ohm'),
      },
      result: lineToNeutral,
      unit: 'A',
      source: 'symmetrical components; of half a winding 1.5 R and 1.2 X of a quarter of the whole, from memory',
    }));
    return { amps, r, x, ...(r > 0 ? { xr: x / r } : {}), lineToNeutral };
  });
}

interface Ohms {
  readonly r: number;
  readonly x: number;
}

/** From line to neutral behind a transformer: what is ahead on the secondary's volts, and the winding; null without a neutral. */
function behind(
  step: FaultStep & { readonly kind: 'transformer' },
  ahead: Ohms,
  winding: Ohms,
): (Ohms & { readonly volts: number }) | null {
  const volts = neutralVolts(step);
  if (volts === null) return null;
  const [r, x, share] = step.phases === 1 ? [1.5 / 4, 1.2 / 4, 1 / 4] : [1, 1, 2 / 3];
  return { volts, r: winding.r * r + ahead.r * share, x: winding.x * x + ahead.x * share };
}
