import type { Job } from '../kit/draft.ts';
import type { Table } from '../kit/table.ts';
import { NONE, quantityWords } from './figures.ts';

/** What a revised set changes: every element, then every quantity, was and is; no rows in a first set. */
export function revisionSchedule({ site, revision }: Pick<Job, 'site' | 'revision'>): Table {
  const { elements = [], quantities = [] } = revision?.changes ?? {};
  const words = (quantity: number, unit: string): string => quantityWords(quantity, unit, site.units).join(' ');
  return {
    short: 'revision',
    title: `Changes of revision ${revision?.number ?? ''}`,
    columns: [
      { head: 'What', most: 40 },
      { head: 'Change' },
      { head: 'Was', align: 'right' },
      { head: 'Is', align: 'right' },
    ],
    rows: [
      ...elements.map(({ list, id, change }) => [`${id} (${list})`, change, NONE, NONE]),
      ...quantities.map(({ item, spec, unit, before, after }) => [
        `${item}, ${spec}`,
        after > before ? 'more' : 'less',
        words(before, unit),
        words(after, unit),
      ]),
    ],
    foot: [`Against ${revision?.since ?? ''}. Quantities are those of the takeoff.`],
  };
}
