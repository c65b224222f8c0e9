import type { SupplyTransformer } from '../../plan-file/supply.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { explained, type Step } from '../../words/explain.ts';
import { measured } from '../../words/measured.ts';
import { ohmText } from '../fault/fault-steps.ts';
import { magnitudeAt } from '../load-flow/phasor.ts';
import { usualXr } from '../load-flow/supply-model.ts';
import { lineText, SWEEP, SWEEP_SOURCE } from '../panels/equipment-steps.ts';
import type { SupplyWork } from '../supply.ts';
import { transformer } from './transformer.ts';

/** How what the plan says of a transformer was found: rated amperes, ohms, loading, loss. Empty without a rating. */
export function transformerSteps(work: SupplyWork, row: SupplyTransformer, tables: CodeTables): readonly Step[] {
  const { tree, model, state } = work;
  const place = tree.placeOf.get(row.id)!;
  const { equipment, system, primary } = tree.nodes[place]!;
  const { kva, impedancePercent, xr } = equipment;
  if (primary === null || kva === undefined) return [];
  const bus = model.loadBus[place]!;
  const amps = (line: number): number => magnitudeAt(state.full.out, 3 * bus + line);
  const lines = { A: amps(0), B: amps(1), C: amps(2) };
  const { result: rated, steps } = explained((tell) =>
    transformer({ kva, primaryVolts: primary.volts, secondaryVolts: system.volts, phases: system.phases }, tell),
  );
  const ohms = model.windingOhms[place] ?? null;
  return [
    ...steps,
    ...(ohms === null
      ? []
      : [
          {
            find: 'ohms of one line, on the secondary',
            formula: `impedance in % x volts² / VA, shared out by X/R${system.phases === 1 ? '; half of it in each line' : ''}`,
            values: {
              impedance: `${impedancePercent}%`,
              'X/R': xr ?? `${usualXr(tables, kva)}, usual for its size`,
              volts: measured(system.volts, 'V'),
            },
            result: ohmText(ohms),
            source: xr === undefined ? tables.threePhaseImpedances.source : 'nameplate; standard machine theory',
          },
        ]),
    {
      find: 'load',
      formula: `volt-amperes out of its secondary with everything on: ${SWEEP}`,
      values: { amperes: lineText(lines, 'A') },
      result: row.loadKva,
      unit: 'kVA',
      source: SWEEP_SOURCE,
    },
    {
      find: 'loaded',
      formula: '100 x load / rating',
      values: { load: measured(row.loadKva, 'kVA'), rating: measured(kva, 'kVA') },
      result: row.percentLoaded,
      unit: '%',
      source: 'definition',
    },
    {
      find: 'worst line',
      formula: '100 x greatest line current / rated secondary amperes',
      values: {
        greatest: measured(Math.max(lines.A, lines.B, lines.C), 'A'),
        rated: measured(rated.secondaryAmps, 'A'),
      },
      result: row.worstLinePercent,
      unit: '%',
      source: 'definition',
    },
    {
      find: 'loss in its windings',
      formula: 'ohms of one line x sum of the squares of its amperes; the loss of its core is not known',
      values: { R: measured(ohms?.re ?? 0, 'ohm'), amperes: lineText(lines, 'A') },
      result: row.lossWatts,
      unit: 'W',
      source: 'definition',
    },
  ];
}
