import { continuousPercent } from '../../circuits/design-amps.ts';
import type { LineTriple, LoadCalculation, LoadCase, LoadMethod, VoltageStep } from '../../plan-file/loads.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { cited, citedShort } from '../../tables/sections.ts';
import { TRANSFORMER_SIZES_SOURCE } from './transformer-sizes.ts';

/** One line of a load calculation as an authority reads it; null where a column has nothing. */
export interface LoadRow {
  readonly what: string;
  readonly number: number | null;
  readonly nameplateVa: number | null;
  readonly countedVa: number | null;
  /** Lines A, B, C, amperes. */
  readonly amps: LineTriple | null;
  /** Section or other source that it goes by. */
  readonly by: string;
}

const NOTHING = { number: null, nameplateVa: null, countedVa: null, amps: null };

const percent = (factor: number): string => `${Math.round(100 * factor)}%`;

/** What each way of counting is called. */
export const methodWords = (method: LoadMethod, tables: CodeTables): string =>
  ({
    connected: 'connected load, nothing held back',
    nameplate: `chargers at their rating, continuous load at ${continuousPercent(tables)}`,
    unit: `chargers at ${tables.vehicleSupply.unitLoadVa} VA or more, continuous load at ${continuousPercent(tables)}`,
    measured: `the larger of these, and ${percent(tables.existingDemand.factor)} of the measured demand`,
  })[method];

const byOf = (method: LoadMethod, tables: CodeTables): string =>
  ({
    connected: 'ratings as entered',
    nameplate: cited(tables, 'loadManagement', 'chargerDevice', 'feederDevice'),
    unit: cited(tables, 'chargerLoad', 'chargerDevice', 'feederDevice'),
    measured: cited(tables, 'existingDemand'),
  })[method];

/** A way of counting by its amperes: as designed for, but the connected load as it is. */
export const caseAmps = ({ method, amps, designAmps }: LoadCase): LineTriple =>
  method === 'connected' ? amps : designAmps;

/** Whether a load fits, in words; null where no rating is known. */
export function fitWords({ spareAmps, ratingAmps }: LoadCalculation): string | null {
  if (spareAmps === null || ratingAmps === null) return null;
  const off = Math.abs(spareAmps).toFixed(0);
  return spareAmps >= -1e-9 * ratingAmps
    ? `fits ${ratingAmps.toFixed(0)} A, ${off} A left`
    : `does not fit ${ratingAmps.toFixed(0)} A, ${off} A over`;
}

/** The service equipment in words: `SE, 400 A`. */
export const serviceWords = ({ service }: LoadCalculation): string =>
  service
    .map(
      ({ id, ratingAmps, taken }) =>
        `${id}${ratingAmps === null ? ', rating not entered' : `, ${ratingAmps.toFixed(0)} A`}${taken ? ' (taken as the service equipment: none is drawn)' : ''}`,
    )
    .join('; ');

const STEP_SOURCE = 'S (R cos + X sin) / V², no limit held against it';
const percentWords = (percent: number | null): string => (percent === null ? 'no figure' : `${percent.toFixed(2)}%`);

/** `EV01 starting: 0.31% at the source, 1.20% at P1`. */
export const stepWords = ({ of, charger, board, sourcePercent, boardPercent }: VoltageStep): string =>
  `${of === 'one' ? `${charger} starting` : 'everything starting at once'}: ${percentWords(sourcePercent)} at the source, ${percentWords(boardPercent)} at ${board}`;

/** A load calculation line by line: what is fed, how it is counted, what decides, and whether it fits. */
export function loadRows(load: LoadCalculation, tables: CodeTables): readonly LoadRow[] {
  const { chargers, withoutRun, managed, loads, generationVa, existingAmps, cases, decides, ratingAmps } = load;
  const { phases, transformerKva, largestStepVa } = load;
  const each = (amps: number): LineTriple => (phases === 3 ? [amps, amps, amps] : [amps, amps, 0]);
  const fits = fitWords(load);
  return [
    ...chargers.map(
      ({ count, amps, volts, phases: lines, nameplateVa, unitVa }): LoadRow => ({
        ...NOTHING,
        what: `chargers of ${amps} A at ${Math.round(volts)} V, ${lines === 3 ? 'three' : 'single'}-phase`,
        number: count,
        nameplateVa,
        countedVa: unitVa,
        by: cited(tables, 'chargerLoad'),
      }),
    ),
    ...(withoutRun === 0
      ? []
      : [{ ...NOTHING, what: 'chargers that no run reaches, not counted', number: withoutRun, by: 'as drawn' }]),
    ...managed.map(
      ({ equipment, amps, ceilingVa, nameplateVa, unitVa }): LoadRow => ({
        ...NOTHING,
        what: `of these, behind ${equipment}: held to ${amps} A by an energy management system there`,
        nameplateVa,
        countedVa: Math.min(unitVa, ceilingVa),
        by: cited(tables, 'managedLoad', 'energyManagement'),
      }),
    ),
    ...loads.map(
      ({ id, name, va, continuous, demand, motor }): LoadRow => ({
        ...NOTHING,
        what: `${id}${name === '' || name === id ? '' : ` ${name}`}, ${motor === true ? 'motor' : continuous ? 'continuous' : 'not continuous'}${demand === undefined ? '' : `, demand factor ${demand}`}`,
        number: 1,
        nameplateVa: va,
        countedVa: va * (demand ?? 1),
        by:
          motor === true
            ? `as entered; ${cited(tables, 'severalMotors')}`
            : demand === undefined
              ? 'as entered'
              : `factor as entered; ${cited(tables, 'demandFactors')}`,
      }),
    ),
    ...(generationVa === 0
      ? []
      : [
          {
            ...NOTHING,
            what: 'generation, which takes nothing off',
            nameplateVa: generationVa,
            countedVa: 0,
            by: 'as entered',
          },
        ]),
    ...(existingAmps === null
      ? []
      : [{ ...NOTHING, what: 'measured demand of what stands already', amps: each(existingAmps), by: 'as entered' }]),
    ...cases.map(
      (one): LoadRow => ({
        ...NOTHING,
        what: `${methodWords(one.method, tables)}${one.method === decides ? ': decides' : ''}`,
        countedVa: 1000 * one.kva,
        amps: caseAmps(one),
        by: byOf(one.method, tables),
      }),
    ),
    ...(ratingAmps === null || fits === null
      ? [
          {
            ...NOTHING,
            what: 'rating of the service: not entered, so that nothing says whether it fits',
            by: 'as entered',
          },
        ]
      : [
          {
            ...NOTHING,
            what: `rating of the service, ${serviceWords(load)}`,
            amps: each(ratingAmps),
            by: 'as entered',
          },
          { ...NOTHING, what: `the service ${fits}`, by: citedShort(tables, 'feederDevice', 'existingDemand') },
        ]),
    {
      ...NOTHING,
      what: 'largest charger or load that comes on by itself',
      nameplateVa: largestStepVa,
      by: 'ratings as entered',
    },
    ...load.steps.map((step): LoadRow => ({ ...NOTHING, what: `volts fall, ${stepWords(step)}`, by: STEP_SOURCE })),
    {
      ...NOTHING,
      what: `transformer to ask the utility for: ${transformerKva === null ? 'past the usual sizes' : `${transformerKva} kVA`}, continuous load and measured demand counted once`,
      by: TRANSFORMER_SIZES_SOURCE,
    },
  ];
}
