import type { Feeder } from '../../../routing/site/site.ts';
import type { BranchOhms } from '../../branches/equipment-branches.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { impedance } from '../../tables/conductor-of.ts';
import { transformerDeviceLimit, transformerProtection } from '../../tables/equipment-of.ts';
import { largestDeviceFor, standardRatingAtMost } from '../../tables/protection-of.ts';
import type { RacewayKind } from '../../tables/table.ts';
import { usualXr } from '../load-flow/supply-model.ts';
import { PILOT_FLOOR_AMPS } from '../panels/pilot-floor.ts';
import { windingOhms } from '../tree/windings.ts';
import { feederAmpacity } from './feeder-ampacity.ts';
import { coreWatts, hoursFor, yearOf } from './feeder-losses.ts';
import {
  largestWhole,
  type TrialLoad,
  type TrialLosses,
  type TrialSupply,
  trialAmps,
  trialDrop,
  trialLosses,
  usualImpedance,
} from './feeder-trial.ts';

/** An existing three-phase feeder. */
export interface ExistingFeeder {
  readonly conductor: Feeder['conductor'];
  readonly raceway: RacewayKind;
  /** One way, feet. */
  readonly length: number;
  readonly breakerAmps: number;
  /** Line to line, as it is used now. */
  readonly volts: number;
}

/** What is to hang on it. */
export interface FeederWish {
  readonly chargers: number;
  /** Rated amperes of one charger, across two lines. */
  readonly amps: number;
  /** Volts of the panel behind a transformer, such as chargers take. */
  readonly panelVolts: number;
  readonly powerFactor: number;
  /** Continuous load beside the chargers, balanced, VA. */
  readonly otherVa: number;
  /** Ohms of one line of the longest branch, end to end. */
  readonly branch: BranchOhms;
  /** Where the feeder lies, at its hottest, °C. */
  readonly ambientC: number;
  readonly terminalC: 60 | 75 | 90;
  /** Hours a year that the chargers come to at full rate. */
  readonly chargingHours: number;
}

/** One way of using the feeder. Counts are of chargers on at once. */
export interface FeederOption {
  /** Line to line on the feeder. */
  readonly volts: number;
  /** Of the transformer at its far end; null where there is none. */
  readonly kva: number | null;
  /** Line to line at the chargers. */
  readonly chargerVolts: number;
  /** Of one charger at its rated amperes. */
  readonly chargerKw: number;
  /** Largest breaker that may stand ahead of the transformer, up to the feeder's own; null without one. */
  readonly transformerBreakerAmps: number | null;
  /** Sides of the transformer that then need protection; null without one. */
  readonly protection: 'primary only' | 'primary and secondary' | null;
  /** Most chargers at full rate. */
  readonly atFullRate: number;
  /** All that are wished for run at full rate. */
  readonly allAtFullRate: boolean;
  /** With load management: most chargers that can each have the least a pilot calls for, 6 A. */
  readonly atPilotFloor: number;
  /** With load management: amperes and kW of each wished charger when all are on; null where that is under 6 A. */
  readonly shared: { readonly amps: number; readonly kw: number } | null;
  /** From nominal to the worst box with the wished chargers as they then run, that box's own at its rating, percent. */
  readonly worstDropPercent: number;
  /** Greatest line current of the transformer then, percent of its rated; null without one. */
  readonly transformerPercent: number | null;
  /** The same by its kVA: what hangs behind it then, of its rating; null without one. */
  readonly transformerKvaPercent: number | null;
  /** With every wished charger at full rate, A on the feeder: the mean of its lines, and the greatest. */
  readonly fullRateAmps: { readonly mean: number; readonly worst: number };
  /** Continuous amperes that the feeder can carry, by its device, terminals and conductors where they lie. */
  readonly steadyAmps: number;
  /** The ceiling of load management at the panel, A, with which all wished chargers run; null where they need none. */
  readonly managedAmps: number | null;
  /** Watts lost then: in the feeder, in the windings, and in the core, which is lost all the year. */
  readonly losses: TrialLosses;
  /** Energy lost in a year in which the chargers give what they give at full rate in `chargingHours`, kWh. */
  readonly lossKwhAYear: { readonly load: number; readonly core: number };
  /** Continuous kVA left then: on the feeder at its own voltage, for what is fed ahead of the transformer, and behind it. */
  readonly leftKva: { readonly onFeeder: number; readonly behind: number };
}

/** No panel is asked about more chargers than this. */
const MOST_CHARGERS = 1000;

/**
 * What a feeder can carry: as it is; at each higher standard voltage straight to chargers that take it; and at each
 * voltage above the panel's, its own among them, with a transformer of each standard size at its far end. Impedances of transformers are the middle of a plausible band,
 * from memory. Load counts 125% against the breaker and the terminals, and its own amperes against the conductors where they lie and the transformer.
 * RangeError where the tables do not hold the conductor.
 */
export function feederOptions(feeder: ExistingFeeder, wish: FeederWish, tables: CodeTables): readonly FeederOption[] {
  const higher = tables.nominalVolts.feeders.filter((volts) => volts > feeder.volts * 1.05);
  const options = [option(feeder, wish, tables, feeder.volts, null)];
  for (const volts of [feeder.volts, ...higher]) {
    if (tables.nominalVolts.chargers.includes(volts) && volts !== feeder.volts)
      options.push(option(feeder, wish, tables, volts, null));
    if (volts <= wish.panelVolts * 1.05) continue;
    for (const { kva } of tables.threePhaseTransformers.rows) options.push(option(feeder, wish, tables, volts, kva));
  }
  return options;
}

function option(
  feeder: ExistingFeeder,
  wish: FeederWish,
  tables: CodeTables,
  volts: number,
  kva: number | null,
): FeederOption {
  const supply = supplyFor(feeder, wish, tables, volts, kva);
  const chargerVolts = kva === null ? volts : wish.panelVolts;
  const guarded = kva === null ? null : protectionFor(tables, feeder.breakerAmps, kva, volts, chargerVolts);
  const steadyAmps = steadyAmpsOf(feeder, wish, tables);
  const ratedAmps = kva === null ? Infinity : (kva * 1000) / (Math.sqrt(3) * chargerVolts);
  const { powerFactor, otherVa, branch } = wish;
  const loadOf = (chargers: number, amps: number): TrialLoad => ({ chargers, amps, powerFactor, otherVa, branch });
  const fits = (chargers: number, amps: number): boolean => {
    const line = trialAmps(supply, loadOf(chargers, amps));
    return line.feeder <= steadyAmps * (1 + 1e-9) && line.panel <= ratedAmps * (1 + 1e-9);
  };
  const atFullRate = largestWhole(MOST_CHARGERS, (count) => fits(count, wish.amps));
  const amps = sharedAmps(wish, (each) => fits(wish.chargers, each));
  const then = trialAmps(supply, loadOf(wish.chargers, amps));
  const kvaAt = (line: number, lineVolts: number): number => (Math.max(0, line) * Math.sqrt(3) * lineVolts) / 1000;
  const full = trialAmps(supply, loadOf(wish.chargers, wish.amps));
  const runningVa = wish.chargers * amps * chargerVolts + otherVa;
  const fullVa = wish.chargers * wish.amps * chargerVolts + otherVa;
  const losses = trialLosses(supply, loadOf(wish.chargers, amps), coreWatts(tables, kva));
  const isManaged = wish.chargers > 0 && atFullRate < wish.chargers;
  const onFeeder = kvaAt(steadyAmps - then.feeder, volts);
  return {
    volts,
    kva,
    chargerVolts,
    chargerKw: (wish.amps * chargerVolts) / 1000,
    transformerBreakerAmps: guarded?.breakerAmps ?? null,
    protection: guarded?.protection ?? null,
    atFullRate,
    allAtFullRate: atFullRate >= wish.chargers,
    atPilotFloor: largestWhole(MOST_CHARGERS, (count) => fits(count, PILOT_FLOOR_AMPS)),
    shared: amps < PILOT_FLOOR_AMPS ? null : { amps, kw: (amps * chargerVolts) / 1000 },
    worstDropPercent: trialDrop(supply, loadOf(wish.chargers, amps), wish.amps),
    transformerPercent: kva === null ? null : (100 * then.panel) / ratedAmps,
    transformerKvaPercent: kva === null ? null : runningVa / (10 * kva),
    fullRateAmps: { mean: fullVa / (Math.sqrt(3) * volts), worst: full.feeder },
    steadyAmps,
    // Behind a transformer the lines ahead decide too, and a whole ampere more could be past them.
    managedAmps: isManaged ? (kva === null ? Math.floor(steadyAmps + 1e-9) : Math.floor(then.panel)) : null,
    losses,
    lossKwhAYear: yearOf(losses, hoursFor(wish, amps, chargerVolts)),
    leftKva: {
      onFeeder,
      behind: kva === null ? onFeeder : Math.min(onFeeder, kvaAt(ratedAmps - then.panel, chargerVolts)),
    },
  };
}

function supplyFor(
  feeder: ExistingFeeder,
  wish: FeederWish,
  tables: CodeTables,
  volts: number,
  kva: number | null,
): TrialSupply {
  const { size, metal, sets } = feeder.conductor;
  const { r, x } = impedance(tables, size, metal, feeder.raceway);
  const per = feeder.length / 1000 / sets;
  const secondaryVolts = wish.panelVolts;
  return {
    volts,
    feederOhms: { re: r * per, im: x * per },
    transformer:
      kva === null
        ? null
        : {
            secondaryVolts,
            ohms: windingOhms(usualImpedance(tables, kva), usualXr(tables, kva), { kva, secondaryVolts }),
          },
  };
}

/**
 * Continuous amperes that a feeder can carry: 80% of its breaker, or of the largest that may protect its conductors, and of
 * what these carry at the terminals before correction; all of what they carry after it (215.2(A)(1), 215.3, 240.4(B)).
 */
function steadyAmpsOf({ conductor, breakerAmps }: ExistingFeeder, wish: FeederWish, tables: CodeTables): number {
  const carried = feederAmpacity(tables, conductor, wish.ambientC, wish.terminalC);
  if (carried === null) throw new RangeError(`the tables hold no ampacity of ${conductor.size} ${conductor.metal}`);
  const device = Math.min(breakerAmps, largestDeviceFor(tables, carried.ampacity));
  return Math.min(Math.min(device, carried.atTerminals) / tables.continuous.factor, carried.ampacity);
}

/** The breaker that may stand ahead of a transformer, the existing one where it may (Table 450.3(B)). */
function protectionFor(
  tables: CodeTables,
  existing: number,
  kva: number,
  volts: number,
  panelVolts: number,
): { readonly breakerAmps: number; readonly protection: 'primary only' | 'primary and secondary' } {
  const amps = {
    primary: (kva * 1000) / (Math.sqrt(3) * volts),
    secondary: (kva * 1000) / (Math.sqrt(3) * panelVolts),
  };
  const { primary: alone } = transformerProtection(tables, 'primary only', amps);
  if (existing <= transformerDeviceLimit(tables, alone, amps.primary))
    return { breakerAmps: existing, protection: 'primary only' };
  const { primary: both } = transformerProtection(tables, 'primary and secondary', amps);
  const largest = standardRatingAtMost(tables, (both / 100) * amps.primary, 'breaker') ?? existing;
  return { breakerAmps: Math.min(existing, largest), protection: 'primary and secondary' };
}

/** Amperes of each of the wished chargers when all are on: their rating, or as much of it as fits, to a hundredth. */
function sharedAmps(wish: FeederWish, fits: (amps: number) => boolean): number {
  if (fits(wish.amps)) return wish.amps;
  return largestWhole(Math.floor(wish.amps * 100), (hundredths) => fits(hundredths / 100)) / 100;
}
