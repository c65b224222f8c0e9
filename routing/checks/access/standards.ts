import type { AccessibleBy } from '../../site/schema/vocabulary.ts';

/** How a stall is accessible; `standard` is a stall for cars with an access aisle. */
export type AccessibleUse = 'van' | 'standard' | 'ambulatory';

/** Least size of an accessible stall and of the access aisle beside it, feet; 0 where none is asked. */
export interface AccessibleSize {
  readonly width: number;
  readonly depth: number;
  readonly aisle: number;
}

export interface AccessStandard {
  readonly name: string;
  /** What counts are by: stalls that a charger serves, or vehicles that can charge at once. */
  readonly counts: 'stalls' | 'vehicles';
  /** How many are asked of so many. */
  readonly asked: (total: number) => Readonly<Record<AccessibleUse, number>>;
  readonly sizes: Readonly<Record<AccessibleUse, AccessibleSize>>;
  readonly countSource: string;
  readonly sizeSource: string;
  /** The same as a drawing names them. */
  readonly countBasis: string;
  readonly sizeBasis: string;
  /** Whether it has the force of a code where it is adopted; else it is a recommendation or a proposal. */
  readonly isCode: boolean;
}

/** Least sizes of any accessible stall: 96 in, of a van 132 in (or 96 in beside an aisle of 96 in), the aisle 60 in. */
export const ADA_SIZES: Readonly<Record<AccessibleUse, AccessibleSize>> = {
  van: { width: 11, depth: 0, aisle: 5 },
  standard: { width: 8, depth: 0, aisle: 5 },
  ambulatory: { width: 0, depth: 0, aisle: 0 },
};
/** A van stall may be as narrow as a car's where its aisle is as wide, feet (2010 ADA Standards 502.2, exception). */
export const NARROW_VAN = 8;
export const ADA_SOURCE = '2010 ADA Standards 502.2, 502.3';

/** 1 of 1, 2 of 2 to 25, 4 of 26 to 50, then one more for each 50 or part of it. */
function proposedCount(total: number): number {
  if (total <= 1) return total;
  if (total <= 25) return 2;
  return 4 + Math.ceil(Math.max(0, total - 50) / 50);
}

/** 11B-228.3.2.1 by the upper end of each row. */
const CALIFORNIA: readonly (readonly [upTo: number, van: number, standard: number, ambulatory: number])[] = [
  [0, 0, 0, 0],
  [4, 1, 0, 0],
  [25, 1, 1, 0],
  [50, 1, 1, 1],
  [75, 1, 2, 2],
  [100, 1, 3, 3],
];

function californiaCount(total: number): Readonly<Record<AccessibleUse, number>> {
  const row = CALIFORNIA.find(([upTo]) => total <= upTo);
  if (row !== undefined) return { van: row[1], standard: row[2], ambulatory: row[3] };
  const over = total - 100;
  return { van: 1 + Math.ceil(over / 300), standard: 3 + Math.ceil(over / 60), ambulatory: 3 + Math.ceil(over / 50) };
}

const RECOMMENDED: AccessibleSize = { width: 11, depth: 20, aisle: 5 };

/** The two published sets of counts and sizes for accessible charging stalls. */
export const ACCESS_STANDARDS: Readonly<Record<Exclude<AccessibleBy, 'none'>, AccessStandard>> = {
  'access-board': {
    name: 'US Access Board',
    counts: 'stalls',
    asked: (total) => ({ van: 0, standard: proposedCount(total), ambulatory: 0 }),
    sizes: { van: RECOMMENDED, standard: RECOMMENDED, ambulatory: { width: 0, depth: 0, aisle: 0 } },
    countSource: 'US Access Board, proposed Table 249.3.1, 89 FR 71215 (2024, proposed, not adopted)',
    sizeSource:
      'US Access Board, Design Recommendations for Accessible Electric Vehicle Charging Stations (2022, read in a summary)',
    countBasis: 'US Access Board, proposed Table 249.3.1, 89 FR 71215: proposed, not adopted',
    sizeBasis: 'US Access Board, Design Recommendations for Accessible Electric Vehicle Charging Stations',
    isCode: false,
  },
  california: {
    name: 'California',
    counts: 'vehicles',
    asked: californiaCount,
    sizes: {
      van: { width: 12, depth: 18, aisle: 5 },
      standard: { width: 9, depth: 18, aisle: 5 },
      ambulatory: { width: 10, depth: 18, aisle: 0 },
    },
    countSource: 'California Building Code Table 11B-228.3.2.1 (from memory, agreeing with a public summary)',
    sizeSource: 'California Building Code 11B-812 (read in public summaries)',
    countBasis: 'California Building Code Table 11B-228.3.2.1',
    sizeBasis: 'California Building Code 11B-812',
    isCode: true,
  },
};

/** Uses in the order in which they are listed, with their words. */
export const ACCESSIBLE_WORDS: Readonly<Record<AccessibleUse, string>> = {
  van: 'van-accessible',
  standard: 'accessible',
  ambulatory: 'ambulatory',
};
