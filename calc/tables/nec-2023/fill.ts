import type { CodeTables } from '../code-tables.ts';
import type { BendRow } from '../raceway-rows.ts';
import type { CodeTable } from '../table.ts';

/** Percent of a raceway that conductors may fill. Grounding conductors count; a cord counts as one conductor. */
export const FILL: CodeTables['fill'] = {
  source: 'NEC 2023 Chapter 9 Table 1, Notes 3, 4, 9',
  verified: 'Agrees with a copy of the 2011 tables and many published examples.',
  doubts: [
    'Note 7 (a count of equal conductors that ends in 0.8 or more rounds up) is not applied: it would pass a raceway over its percent.',
  ],
  nipplePercent: 60,
  nippleInches: 24,
  rows: [
    { conductors: 1, percent: 53 },
    { conductors: 2, percent: 31 },
    { conductors: 3, percent: 40 },
  ],
};

/** Three conductors are likely to jam between these ratios of inside diameter to conductor diameter. */
export const JAM: CodeTables['jam'] = {
  source: 'NEC 2023 Chapter 9 Table 1, informational note',
  verified: 'From memory of the 2023 text, not checked again against it.',
  doubts: [],
  low: 2.8,
  high: 3.2,
};

/** Least radius of bends, by one-shot and full-shoe benders and by others. */
export const BENDS: CodeTable<BendRow> = {
  source: 'NEC 2023 Chapter 9 Table 2',
  verified: 'Agrees with a copy of the 2011 tables.',
  doubts: [],
  rows: [
    { tradeSize: '1/2', shoe: 4, other: 4 },
    { tradeSize: '3/4', shoe: 4.5, other: 5 },
    { tradeSize: '1', shoe: 5.75, other: 6 },
    { tradeSize: '1-1/4', shoe: 7.25, other: 8 },
    { tradeSize: '1-1/2', shoe: 8.25, other: 10 },
    { tradeSize: '2', shoe: 9.5, other: 12 },
    { tradeSize: '2-1/2', shoe: 10.5, other: 15 },
    { tradeSize: '3', shoe: 13, other: 18 },
    { tradeSize: '3-1/2', shoe: 15, other: 21 },
    { tradeSize: '4', shoe: 16, other: 24 },
    { tradeSize: '5', shoe: 24, other: 30 },
    { tradeSize: '6', shoe: 30, other: 36 },
  ],
};

/** Bends between pull points. */
export const BEND_LIMIT: CodeTables['bendLimit'] = {
  source: 'NEC 2023 342.26, 344.26, 350.26, 352.26, 358.26',
  verified: 'From memory; many published questions agree.',
  doubts: [],
  degrees: 360,
};
