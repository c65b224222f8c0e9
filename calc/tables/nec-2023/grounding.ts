import type { CodeTables } from '../code-tables.ts';
import type { GroundingRow } from '../conductor-rows.ts';
import type { CodeTable } from '../table.ts';

/** Smallest equipment grounding conductor by the rating of the overcurrent device. */
export const GROUNDING: CodeTable<GroundingRow> = {
  source: 'NEC 2023 Table 250.122',
  verified: 'Agrees with a copy of the 2023 tables and one more; the copper column with two trade articles.',
  doubts: ['Aluminum at 5000 and 6000 A is 1250 kcmil in current editions, 1200 kcmil in older ones.'],
  rows: [
    { breakerAmps: 15, copper: '14', aluminum: '12' },
    { breakerAmps: 20, copper: '12', aluminum: '10' },
    { breakerAmps: 60, copper: '10', aluminum: '8' },
    { breakerAmps: 100, copper: '8', aluminum: '6' },
    { breakerAmps: 200, copper: '6', aluminum: '4' },
    { breakerAmps: 300, copper: '4', aluminum: '2' },
    { breakerAmps: 400, copper: '3', aluminum: '1' },
    { breakerAmps: 500, copper: '2', aluminum: '1/0' },
    { breakerAmps: 600, copper: '1', aluminum: '2/0' },
    { breakerAmps: 800, copper: '1/0', aluminum: '3/0' },
    { breakerAmps: 1000, copper: '2/0', aluminum: '4/0' },
    { breakerAmps: 1200, copper: '3/0', aluminum: '250' },
    { breakerAmps: 1600, copper: '4/0', aluminum: '350' },
    { breakerAmps: 2000, copper: '250', aluminum: '400' },
    { breakerAmps: 2500, copper: '350', aluminum: '600' },
    { breakerAmps: 3000, copper: '400', aluminum: '600' },
    { breakerAmps: 4000, copper: '500', aluminum: '750' },
    { breakerAmps: 5000, copper: '700', aluminum: '1250' },
    { breakerAmps: 6000, copper: '800', aluminum: '1250' },
  ],
};

const VERIFIED =
  'All rows agree between the 2023 text, the text of 2020 as a state adopted it and that of 2017, each from a public copy.';

/** Conductor to the grounding electrode, by the largest ungrounded conductor of the supply. */
export const ELECTRODE_CONDUCTORS: CodeTables['electrodeConductors'] = {
  source: 'NEC 2023 Table 250.66',
  verified: VERIFIED,
  doubts: ['Limits in circular mils are those of Chapter 9 Table 8 for the sizes that the table names.'],
  rows: [
    { upToMils: { copper: 66_360, aluminum: 105_600 }, copper: '8', aluminum: '6' },
    { upToMils: { copper: 105_600, aluminum: 167_800 }, copper: '6', aluminum: '4' },
    { upToMils: { copper: 167_800, aluminum: 250_000 }, copper: '4', aluminum: '2' },
    { upToMils: { copper: 350_000, aluminum: 500_000 }, copper: '2', aluminum: '1/0' },
    { upToMils: { copper: 600_000, aluminum: 900_000 }, copper: '1/0', aluminum: '3/0' },
    { upToMils: { copper: 1_100_000, aluminum: 1_750_000 }, copper: '2/0', aluminum: '4/0' },
    { upToMils: { copper: null, aluminum: null }, copper: '3/0', aluminum: '250' },
  ],
  most: {
    rods: { copper: '6', aluminum: '4' },
    'concrete-encased': { copper: '4', aluminum: null },
    // No larger than the ring; the least ring is of 2 AWG copper, from memory.
    ring: { copper: '2', aluminum: null },
  },
  // 250.53(A)(2), 250.52(A)(4), from memory.
  rods: 2,
  ringFt: 20,
};

/** Main, system and supply-side bonding jumpers, by the largest ungrounded conductor of the supply. */
export const BONDING_JUMPERS: CodeTables['bondingJumpers'] = {
  source: 'NEC 2023 Table 250.102(C)(1)',
  verified: `${VERIFIED} The first six rows are those of Table 250.66.`,
  doubts: [
    'The note of 12.5% speaks of conductors in parallel past the table in 2023, of any conductor past it in 2017; both are taken.',
  ],
  rows: ELECTRODE_CONDUCTORS.rows.slice(0, -1),
  shareBeyond: 0.125,
};
