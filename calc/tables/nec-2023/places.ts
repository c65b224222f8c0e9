import type { CodeTables } from '../code-tables.ts';
import type { DropAdviceRow } from '../conductor-rows.ts';
import type { CoverRow } from '../raceway-rows.ts';
import type { CodeTable } from '../table.ts';

/** Least cover of what is buried. */
export const COVER: CodeTable<CoverRow> = {
  source: 'NEC 2023 Table 300.5(A)',
  verified: 'Agrees with two copies of the table.',
  doubts: [
    'Direct-burial cable under a building must be in a raceway.',
    'Slab row: 6 in. direct, 4 in. in a raceway, for dwelling branches and low voltage.',
    'The 2023 heading of the metal column also speaks of EMT rated for burial.',
  ],
  rows: [
    {
      place: 'elsewhere',
      location: 'All locations not named below',
      cable: 24,
      metalRaceway: 6,
      plasticRaceway: 18,
      dwellingBranch: 12,
      lowVoltage: 6,
    },
    {
      place: 'under-concrete',
      location: 'In a trench under 2 in. of concrete or the like',
      cable: 18,
      metalRaceway: 6,
      plasticRaceway: 12,
      dwellingBranch: 6,
      lowVoltage: 6,
    },
    {
      place: 'under-building',
      location: 'Under a building',
      cable: 0,
      metalRaceway: 0,
      plasticRaceway: 0,
      dwellingBranch: 0,
      lowVoltage: 0,
    },
    {
      place: 'under-slab',
      location: 'Under a concrete slab of 4 in. or more without vehicles, 6 in. past the raceway',
      cable: 18,
      metalRaceway: 4,
      plasticRaceway: 4,
      dwellingBranch: 6,
      lowVoltage: 6,
    },
    {
      place: 'traffic',
      location: 'Under streets, roads, alleys, driveways and parking lots',
      cable: 24,
      metalRaceway: 24,
      plasticRaceway: 24,
      dwellingBranch: 24,
      lowVoltage: 24,
    },
    {
      place: 'dwelling',
      location: 'Driveways and outdoor parking of one- and two-family dwellings',
      cable: 18,
      metalRaceway: 18,
      plasticRaceway: 18,
      dwellingBranch: 12,
      lowVoltage: 18,
    },
    {
      place: 'airport',
      location: 'In or under airport runways',
      cable: 18,
      metalRaceway: 18,
      plasticRaceway: 18,
      dwellingBranch: 18,
      lowVoltage: 18,
    },
  ],
};

/** Depth of working space by volts to ground. */
export const WORKING_SPACE: CodeTables['workingSpace'] = {
  source: 'NEC 2023 Table 110.26(A)(1)',
  verified: 'Agrees with a copy of the 2023 tables; width and height (110.26(A)(2), (3)) from memory.',
  doubts: [],
  widthIn: 30,
  heightFt: 6.5,
  entrances: { fromAmps: 1200, overFt: 6, widthFt: 2 },
  rows: [
    { toVolts: 150, clear: 3, grounded: 3, live: 3 },
    { toVolts: 600, clear: 3, grounded: 3.5, live: 4 },
    { toVolts: 1000, clear: 3, grounded: 4, live: 5 },
  ],
};

/** Voltage drop that the code advises and does not require. */
export const DROP_ADVICE: CodeTable<DropAdviceRow> = {
  source: 'NEC 2023 210.19 and 215.2 informational notes',
  verified: 'Agrees with published quiz answers.',
  doubts: [],
  rows: [
    { scope: 'branch', percent: 3, section: 'NEC 2023 210.19 informational note' },
    { scope: 'feeder', percent: 3, section: 'NEC 2023 215.2 informational note' },
    { scope: 'total', percent: 5, section: 'NEC 2023 210.19 and 215.2 informational notes' },
  ],
};

/** Charging equipment. */
export const VEHICLE_SUPPLY: CodeTables['vehicleSupply'] = {
  source: 'NEC 2023 625.17(C), 625.43, 625.50, 220.57',
  verified:
    '220.57 read in the 2023 text; figures of article 625 agree in the 2017 and 2020 texts, their 2023 text was not read.',
  doubts: [
    '2023 moved energy management to Article 750; check the adopted edition.',
    'In sight is 50 ft and visible by the definitions of Article 100, from memory.',
    '2026 rewrites 625.43: every permanently connected unit has a disconnect, and there is an emergency shutoff.',
  ],
  cordFt: 25,
  disconnectAboveAmps: 60,
  disconnectAboveVoltsToGround: 150,
  inSightFt: 50,
  couplingOutdoorsIn: 24,
  couplingIndoorsIn: 18,
  unitLoadVa: 7200,
};
