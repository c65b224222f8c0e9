import type { READING_UNITS, READING_WORDS } from '../../../routing/site/schema/mark-schema.ts';
import type { Mark } from '../../../routing/site/site.ts';

export type ReadingUnit = (typeof READING_UNITS)[number];
export type ReadingWord = (typeof READING_WORDS)[number];
export type MeterReading = NonNullable<Mark['reading']>;

export const MEASURE_GROUPS = ['insulation', 'torque', 'rotation', 'volts', 'pilot', 'fault trip'] as const;
export type MeasureGroup = (typeof MEASURE_GROUPS)[number];

/** What a group is called on a sheet and on the page. */
export const GROUP_WORDS: Readonly<Record<MeasureGroup, string>> = {
  insulation: 'Insulation resistance',
  torque: 'Torque of terminations',
  rotation: 'Phase rotation',
  volts: 'Voltage',
  pilot: 'Pilot',
  'fault trip': 'Ground-fault trip',
};

/** One thing that is measured of a charger, a feeder or a board before it is handed over. */
export interface Measure {
  /** Unlike any other of the same thing, and the part that its mark is of. */
  readonly id: string;
  readonly group: MeasureGroup;
  readonly name: string;
  /** What its figure is in; null where it is answered by a word. */
  readonly unit: ReadingUnit | null;
  /** What it may be answered by, where by a word. */
  readonly words: readonly ReadingWord[];
  /** True where the person who measures may state the limit that the reading is judged by. */
  readonly takesAsked: boolean;
  /** It is read at a load that must be told. */
  readonly takesAmps: boolean;
  /** Not every thing of its kind can be measured so: it is not open where nobody did. */
  readonly isOptional: boolean;
}

const measure = (
  id: string,
  group: MeasureGroup,
  name: string,
  unit: ReadingUnit | null,
  more: Partial<Measure> = {},
): Measure => ({ id, group, name, unit, words: [], takesAsked: false, takesAmps: false, isOptional: false, ...more });

/** Each line to ground, then each two lines. */
function insulationPairs(lines: string): readonly Measure[] {
  const each = [...lines];
  const pairs = each.flatMap((one, i) => each.slice(i + 1).map((other) => `${one}-${other}`));
  return [...each.map((line) => `${line}-ground`), ...pairs].map((pair) =>
    measure(`insulation ${pair}`, 'insulation', pair.replace('-', ' to '), 'Mohm', { takesAsked: true }),
  );
}

const torque = (place: string, name: string, unit: ReadingUnit): Measure =>
  measure(`torque ${place}`, 'torque', name, unit, { takesAsked: true });

const rotation = (lines: string): readonly Measure[] =>
  lines.length === 3 ? [measure('rotation', 'rotation', 'order of the lines', null, { words: ['ABC', 'ACB'] })] : [];

/** What is measured at a charger on some lines. */
export const chargerMeasures = (lines: string, torqueUnit: ReadingUnit): readonly Measure[] => {
  const three = lines.length === 3 ? ', the least of its pairs' : '';
  return [
    ...insulationPairs(lines),
    torque('breaker', 'at its breaker', torqueUnit),
    torque('charger', 'at the charger', torqueUnit),
    ...rotation(lines),
    measure('volts open', 'volts', `at the box without load${three}`, 'V'),
    measure('volts loaded', 'volts', `at the box under load${three}`, 'V', { takesAmps: true }),
    measure('pilot A', 'pilot', 'state A, no vehicle', 'V'),
    measure('pilot B', 'pilot', 'state B, vehicle connected', 'V'),
    measure('pilot duty', 'pilot', 'duty cycle in state B', '%'),
    measure('pilot C', 'pilot', 'state C, charging', 'V'),
    measure('pilot D', 'pilot', 'state D, charging with ventilation', 'V', { isOptional: true }),
    measure('pilot E', 'pilot', 'state E, pilot to ground', 'V'),
    measure('pilot F', 'pilot', 'state F, charger not available', 'V', { isOptional: true }),
    measure('fault trip', 'fault trip', 'opens on a test current to ground', null, {
      words: ['tripped', 'did not trip'],
    }),
  ];
};

/** What is measured of a feeder on some lines. */
export const feederMeasures = (lines: string, torqueUnit: ReadingUnit): readonly Measure[] => [
  ...insulationPairs(lines),
  torque('from', 'where it begins', torqueUnit),
  torque('to', 'where it ends', torqueUnit),
];

/** What is measured at a board on some lines. */
export const boardMeasures = (lines: string): readonly Measure[] => [
  ...rotation(lines),
  ...(lines.length === 3 ? ['AB', 'BC', 'CA'] : [lines]).map((pair) =>
    measure(`volts ${pair}`, 'volts', `${pair[0]} to ${pair[1]}, chargers off`, 'V'),
  ),
];

const UNIT_WORDS: Readonly<Record<ReadingUnit, string>> = {
  Mohm: 'MΩ',
  V: 'V',
  '%': '%',
  'lbf-in': 'lbf-in',
  Nm: 'N·m',
};

/** How a unit is written. */
export const unitWords = (unit: ReadingUnit): string => UNIT_WORDS[unit];

/** A reading as it was written: "205.1 V at 32 A". */
export function readingWords({ value, unit, word, amps }: MeterReading): string {
  if (word !== undefined) return word;
  if (value === undefined) return '';
  const figure = `${Number(value.toFixed(3))}${unit === undefined ? '' : unit === '%' ? '%' : ` ${unitWords(unit)}`}`;
  return amps === undefined ? figure : `${figure} at ${Number(amps.toFixed(1))} A`;
}
