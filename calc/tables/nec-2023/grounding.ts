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
