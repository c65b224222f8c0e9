import { VOLTAGE_RANGE, voltageRange } from '../../tables/voltage-range.ts';
import type { Measure, MeterReading, ReadingWord } from './measures.ts';
import { unitWords } from './measures.ts';

/** What a measure is held to, and who says so. */
export interface Limit {
  readonly least?: number;
  readonly most?: number;
  readonly word?: ReadingWord;
  /** What the plan, or who designed the charger, expects. */
  readonly expected?: number;
  /** As it stands on a sheet: "50 MΩ or more". */
  readonly says: string;
  readonly source: string;
  /** What must be told before it can be judged; none where nothing lacks. */
  readonly lacks?: string;
}

/** Least resistance of the insulation of conductors rated 600 V at 1,000 V dc, megohms. */
const LEAST_MEGOHMS = 50;
const INSULATION_SOURCE = 'acceptance testing of conductors rated 600 V, at 1,000 V dc for a minute; from memory';
const STATED = 'stated by who measured';

/** Part of the torque that a calibrated hand tool may be off. */
const TORQUE_SHARE = 0.04;
const TORQUE_SOURCE =
  'marking of the equipment, as stated by who measured; 4% for a calibrated hand tool, common practice, from memory';

/** Volts of the pilot in each state, and how far it may be off at the charger. */
const PILOT_VOLTS: Readonly<Record<string, number>> = { A: 12, B: 9, C: 6, D: 3, E: 0, F: -12 };
const PILOT_TOLERANCE = 1;
const PILOT_SOURCE = 'pilot levels of IEC 61851-1 and SAE J1772, within 1 V at the charger; from memory';
const DUTY_SOURCE = 'duty cycle of IEC 61851-1 and SAE J1772, no more than the rating of the circuit; from memory';
/** Percent of duty that a meter may be off. From memory. */
const DUTY_TOLERANCE = 1;
/** Duty of the least current there is, 6 A. */
const LEAST_DUTY = 10;

/** Share of nominal that two readings of one meter, the source between them, may be off. Common practice, no source. */
const METER_SHARE = 0.01;

const figure = (value: number): string => String(Number(value.toFixed(1)));

/** Least insulation resistance: what whoever measured states, else what is usual. */
export const insulationLimit = ({ asked }: MeterReading): Limit => ({
  least: asked ?? LEAST_MEGOHMS,
  says: `${figure(asked ?? LEAST_MEGOHMS)} ${unitWords('Mohm')} or more`,
  source: asked === undefined ? INSULATION_SOURCE : STATED,
});

/** What the equipment is marked with, which only who stands before it can read. */
export const torqueLimit = ({ asked }: MeterReading, unit: Measure['unit']): Limit =>
  asked === undefined
    ? {
        says: 'as the equipment is marked',
        source: TORQUE_SOURCE,
        lacks: 'the torque that the equipment is marked with',
      }
    : {
        least: asked * (1 - TORQUE_SHARE),
        most: asked * (1 + TORQUE_SHARE),
        expected: asked,
        says: `${figure(asked)} ${unitWords(unit!)}, 4% either way`,
        source: TORQUE_SOURCE,
      };

export const ROTATION_LIMIT: Limit = {
  word: 'ABC',
  says: 'ABC',
  source: 'lines of the plan, in the order of its panels',
};

export const TRIP_LIMIT: Limit = {
  word: 'tripped',
  says: 'it trips',
  source: 'personnel protection of the charger, by its own test or a tester of 20 mA; from memory, instructions govern',
};

/** Volts of the pilot in a state. */
export function pilotLimit(state: string): Limit {
  const volts = PILOT_VOLTS[state]!;
  return {
    least: volts - PILOT_TOLERANCE,
    most: volts + PILOT_TOLERANCE,
    expected: volts,
    says: `${volts > 0 ? '+' : ''}${volts} V, 1 V either way`,
    source: PILOT_SOURCE,
  };
}

/** Percent of duty that tells a vehicle of so many amperes: A / 0.6 to 51 A, above A / 2.5 + 64. From memory. */
export const dutyOf = (amps: number): number => (amps <= 51 ? amps / 0.6 : amps / 2.5 + 64);

/** No more than the charger's rating is told, and no less than there is; load management may tell less than its rating. */
export function dutyLimit(amps: number): Limit {
  const duty = dutyOf(amps);
  return {
    least: LEAST_DUTY - DUTY_TOLERANCE,
    most: duty + DUTY_TOLERANCE,
    expected: duty,
    says: `${figure(duty)}% for ${figure(amps)} A, no more`,
    source: DUTY_SOURCE,
  };
}

/** Volts without load: what the plan expects, held to the range of ordinary service. */
export function openVoltsLimit(nominal: number, expected: number | null): Limit {
  const { least, most } = voltageRange(nominal);
  return {
    least,
    most,
    ...(expected !== null && { expected }),
    says: `${expected === null ? '' : `${figure(expected)} V by the plan, `}${figure(least)} to ${figure(most)} V`,
    source: VOLTAGE_RANGE.source,
  };
}

/** What the plan expects at a box, at no load and at a load. */
export interface ExpectedVolts {
  readonly nominal: number;
  readonly open: number | null;
  readonly at: (amps: number) => number | null;
}

/**
 * Volts under load. They are held to the drop that the plan has for that load, from what was read without load where that
 * was: more than a hundredth of nominal below is a poor termination or another wire. The range of ordinary service holds
 * besides.
 */
export function loadedVoltsLimit(
  volts: ExpectedVolts,
  rated: number,
  reading: MeterReading,
  openRead: number | null,
): Limit {
  const amps = reading.amps ?? rated;
  const range = voltageRange(volts.nominal);
  const planned = volts.at(amps);
  const expected =
    planned === null ? null : openRead === null || volts.open === null ? planned : openRead - (volts.open - planned);
  const source = `voltage drop of the plan for that load, ${METER_SHARE * 100}% for the meter; ${VOLTAGE_RANGE.source}`;
  const held = expected === null || openRead === null ? range.least : expected - METER_SHARE * volts.nominal;
  const least = Math.max(range.least, held);
  return {
    least,
    most: range.most,
    ...(expected !== null && { expected }),
    says: `${expected === null ? '' : `${figure(expected)} V by the plan at ${figure(amps)} A${openRead === null ? '' : ` from the ${figure(openRead)} V read`}, `}${figure(least)} V or more`,
    source,
    ...(reading.value !== undefined && reading.amps === undefined && { lacks: 'the load it was read at' }),
  };
}
