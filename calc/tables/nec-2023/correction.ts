import type { CodeTables } from '../code-tables.ts';
import type { AmbientRow, BundlingRow } from '../conductor-rows.ts';
import type { CodeTable } from '../table.ts';

/** Ambient correction from a 30 °C base. */
export const AMBIENT: CodeTable<AmbientRow> = {
  source: 'NEC 2023 Table 310.15(B)(1)(1)',
  verified:
    'Agrees with a copy of the 2023 tables. Every factor is sqrt((Tc - Ta)/(Tc - 30)) at the upper edge of its band, to two places.',
  doubts: [],
  rows: [
    { upToC: 10, factors: [1.29, 1.2, 1.15] },
    { upToC: 15, factors: [1.22, 1.15, 1.12] },
    { upToC: 20, factors: [1.15, 1.11, 1.08] },
    { upToC: 25, factors: [1.08, 1.05, 1.04] },
    { upToC: 30, factors: [1, 1, 1] },
    { upToC: 35, factors: [0.91, 0.94, 0.96] },
    { upToC: 40, factors: [0.82, 0.88, 0.91] },
    { upToC: 45, factors: [0.71, 0.82, 0.87] },
    { upToC: 50, factors: [0.58, 0.75, 0.82] },
    { upToC: 55, factors: [0.41, 0.67, 0.76] },
    { upToC: 60, factors: [null, 0.58, 0.71] },
    { upToC: 65, factors: [null, 0.47, 0.65] },
    { upToC: 70, factors: [null, 0.33, 0.58] },
    { upToC: 75, factors: [null, null, 0.5] },
    { upToC: 80, factors: [null, null, 0.41] },
    { upToC: 85, factors: [null, null, 0.29] },
  ],
};

/** Adjustment for more than three conductors that carry current in one raceway. Grounding conductors are not counted. */
export const BUNDLING: CodeTable<BundlingRow> = {
  source: 'NEC 2023 Table 310.15(C)(1)',
  verified: 'Agrees with a copy of the 2023 tables and with one of the 2014 tables.',
  doubts: [],
  rows: [
    { from: 4, to: 6, percent: 80 },
    { from: 7, to: 9, percent: 70 },
    { from: 10, to: 20, percent: 50 },
    { from: 21, to: 30, percent: 45 },
    { from: 31, to: 40, percent: 40 },
    { from: 41, to: null, percent: 35 },
  ],
};

/** Raceways in direct sun on or above a roof. */
export const ROOFTOP: CodeTables['rooftop'] = {
  source: 'NEC 2023 310.15(B)(2)',
  verified: 'From memory; the 33 °C adder and the 7/8 in. agree with several pages that quote them.',
  doubts: [
    'The rule is written for roofs. Using it for a raceway on a canopy or rack that is not a roof is a judgement, not a requirement.',
  ],
  adderC: 33,
  clearance: 0.875,
  exempt: ['XHHW-2'],
};
