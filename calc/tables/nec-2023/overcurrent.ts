import type { CodeTables } from '../code-tables.ts';
import type { SmallConductorRow, TerminalRow } from '../conductor-rows.ts';
import type { CodeTable } from '../table.ts';

/** Greatest overcurrent protection of small conductors. */
export const SMALL_CONDUCTORS: CodeTable<SmallConductorRow> = {
  source: 'NEC 2023 240.4(D)',
  verified:
    '14, 12 and 10 AWG copper agree with several pages that quote them; 18 and 16 AWG, aluminum and copper-clad rows from memory.',
  doubts: ['The 14 AWG copper-clad aluminum row came in with the 2023 edition.'],
  rows: [
    { size: '18', metal: 'copper', maxAmps: 7 },
    { size: '16', metal: 'copper', maxAmps: 10 },
    { size: '14', metal: 'copper-clad aluminum', maxAmps: 10 },
    { size: '14', metal: 'copper', maxAmps: 15 },
    { size: '12', metal: 'aluminum', maxAmps: 15 },
    { size: '12', metal: 'copper', maxAmps: 20 },
    { size: '10', metal: 'aluminum', maxAmps: 25 },
    { size: '10', metal: 'copper', maxAmps: 30 },
  ],
};

/** Standard ratings of fuses and inverse-time breakers, A; `fuses` are further fuse ratings. */
export const STANDARD_RATINGS: CodeTables['standardRatings'] = {
  source: 'NEC 2023 Table 240.6(A)',
  verified: 'Agrees with a copy of the 2023 tables; 10 A was added in 2023, the rest agree with the 2017 list.',
  doubts: [],
  fuses: [1, 3, 6, 601],
  rows: [
    10, 15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200, 225, 250, 300, 350, 400, 450, 500,
    600, 700, 800, 1000, 1200, 1600, 2000, 2500, 3000, 4000, 5000, 6000,
  ],
};

export const NEXT_RATING: CodeTables['nextRating'] = {
  source: 'NEC 2023 240.4(B), (C)',
  verified: 'From memory of the 2023 text, not checked again against it.',
  doubts: [],
  upToAmps: 800,
};

/** Temperature column that terminations allow. */
export const TERMINALS: CodeTable<TerminalRow> = {
  source: 'NEC 2023 110.14(C)(1)',
  verified: 'Agrees with several pages that quote it.',
  doubts: [],
  rows: [
    { upToAmps: 100, column: 60, markedColumn: 75 },
    { upToAmps: null, column: 75, markedColumn: 90 },
  ],
};

/** Continuous loads count this many times for the device and for the conductor before correction. */
export const CONTINUOUS: CodeTables['continuous'] = {
  source: 'NEC 2023 210.19(A)(1), 210.20(A), 215.2(A)(1), 215.3, 625.41',
  verified: 'Agrees with published quiz answers; 625.41 with the 2020 text.',
  doubts: [],
  factor: 1.25,
};
