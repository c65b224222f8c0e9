import type { CodeTables } from '../code-tables.ts';

/** What stands already, by its measured demand. */
export const EXISTING_DEMAND: CodeTables['existingDemand'] = {
  source: 'NEC 2023 220.87',
  verified: 'Read in the 2023 text, and mostly in the 2017 text.',
  doubts: [
    'Asks for a year of records, or 30 days at the highest average of 15 minutes on the highest phase, and does not hold with generation on the site or where peaks are shaved.',
  ],
  factor: 1.25,
};

/** Ground-fault protection of equipment. */
export const GROUND_FAULT: CodeTables['groundFault'] = {
  source: 'NEC 2023 215.10, 230.95',
  verified: 'Read in the 2023 text.',
  doubts: ['2017 ended at 600 V.', 'Fire pumps and continuous industrial processes are excepted.'],
  fromAmps: 1000,
  overVoltsToGround: 150,
  toVolts: 1000,
  settingAmps: 1200,
  atAmps: 3000,
  seconds: 1,
};

/** Arc energy of large breakers. */
export const ARC_ENERGY: CodeTables['arcEnergy'] = {
  source: 'NEC 2023 240.87, 240.67',
  verified: 'Read in the 2023 text.',
  doubts: ['It goes by the highest setting of a breaker, which may be over the rating that is drawn.'],
  fromAmps: 1200,
};

/** Motors among other loads. */
export const MOTORS: CodeTables['motors'] = {
  source: 'NEC 2023 430.24, 430.52(C)(1)',
  verified:
    'From memory: 125 percent of the largest motor and all of the others; inverse-time breakers to 250 percent.',
  doubts: ['Other kinds of motors and devices have other shares; overload protection is with the motor.'],
  largestFactor: 1.25,
  breakerShare: 2.5,
};

/** The dated label of arc flash. */
export const ARC_FLASH_LABEL: CodeTables['arcFlashLabel'] = {
  source: 'NEC 2023 110.16(B)',
  verified: 'From memory.',
  doubts: ['2017 and 2020 asked it of service equipment of 1,200 A and more alone.'],
  fromAmps: 1000,
};

/** Motors between the devices of a series rating. */
export const SERIES_MOTORS: CodeTables['seriesMotors'] = {
  source: 'NEC 2023 240.86(C)',
  verified: 'Read in the 2023 text.',
  doubts: [],
  percent: 1,
};

/** Busbars that more than one source feeds. */
export const BUS_SOURCES: CodeTables['busSources'] = {
  source: 'NEC 2023 705.12(B)',
  verified:
    'From memory; several public pages give the sum, the 120 percent at opposite ends and the sum of the breakers.',
  doubts: ['The numbers of its items moved from edition to edition.'],
  share: 1.2,
  factor: 1.25,
};

/** Raceways that come out of the ground where something may hit them. */
export const DAMAGE: CodeTables['damage'] = {
  source: 'NEC 2023 300.5(D)(4)',
  verified: 'Read in the 2023 text; the list with EMT is in the 2020 text too.',
  doubts: ['EMT where the damage is not severe (358.10(E)). RTRC-XW is on the list and is no method here.'],
  methods: ['RMC', 'IMC', 'EMT', 'PVC80'],
};
