import { ACCESSIBLE_WORDS } from '../../../../routing/checks/access/standards.ts';
import { printLength } from '../../../../routing/site/numbers/feet-inches.ts';
import { ACCESSIBLE_NOTE, sizesOf, tableOf } from '../../site-work/accessible-sheet.ts';
import type { Job } from '../kit/draft.ts';
import type { Table } from '../kit/tables/table.ts';
import { NONE } from './figures.ts';

/** Accessible charging stalls, asked and given; without rows where no stall is accessible and no standard is chosen. */
export function accessibleSchedule({ site }: Pick<Job, 'site'>): Table {
  const { counts, stalls } = tableOf(site);
  const length = (feet: number): string => (feet === 0 ? NONE : printLength(feet, site.units));
  const isAsked = stalls.length > 0 || site.rules.accessibleBy !== 'none';
  return {
    short: 'accessible stalls',
    title: 'Accessible charging stalls, asked and given',
    columns: [
      { head: 'What', most: 30 },
      { head: 'Use' },
      { head: 'Asked', align: 'right' },
      { head: 'Given', align: 'right' },
      { head: 'By', most: 46 },
    ],
    rows: isAsked
      ? [
          ...counts.map(({ standard, use, of, asked, given, basis }) => [
            `stalls, of ${of}${standard === site.rules.accessibleBy ? ', chosen' : ''}`,
            ACCESSIBLE_WORDS[use],
            String(asked),
            String(given),
            basis,
          ]),
          ...stalls.flatMap((one) =>
            sizesOf(one).map(([given, asked], i) => [
              `${['width', 'length', 'access aisle'][i]!} of ${one.stall.id}`,
              ACCESSIBLE_WORDS[one.use],
              length(asked),
              length(given),
              one.basis,
            ]),
          ),
        ]
      : [],
    foot: [ACCESSIBLE_NOTE],
  };
}
