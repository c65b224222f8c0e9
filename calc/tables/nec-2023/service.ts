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
