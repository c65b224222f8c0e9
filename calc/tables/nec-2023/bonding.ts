import type { CodeTables } from '../code-tables.ts';

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
