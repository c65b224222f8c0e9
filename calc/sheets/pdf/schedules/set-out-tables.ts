import { POINT_HEADS, pointRows, TAPE_HEADS, tapeRows } from '../../site-work/set-out-rows.ts';
import type { Job } from '../kit/draft.ts';
import type { Table } from '../kit/tables/table.ts';

/** Every point by the tape, with sums and ties, and the running dimensions of each row. */
export const setOutTables = ({ site, plan }: Pick<Job, 'site' | 'plan'>): readonly Table[] => [
  {
    short: 'setting-out',
    title: 'Setting-out by the tape',
    lead: [
      'x closes, y closes: readings from the lines on both sides and what they add up to. Tie: the straight from where the two nearest lines cross. Where the tape reads otherwise, one of the readings is a slip.',
    ],
    columns: POINT_HEADS.map((head, i) => ({ head, ...(i > 3 && { most: 26 }) })),
    rows: pointRows(site, plan),
  },
  {
    short: 'running dimensions',
    title: 'Running dimensions',
    lead: ['One tape for each row, hooked once and not moved.'],
    columns: TAPE_HEADS.map((head, i) => ({ head, ...(i === 3 && { align: 'right' as const }) })),
    rows: tapeRows(site, plan),
  },
];
