import { priceKey } from '../../../prices/price-list.ts';
import { rangesOf } from '../../../words/ranges.ts';
import type { Job } from '../kit/draft.ts';
import type { Table } from '../kit/tables/table.ts';
import { NONE, takeoffQuantity } from './figures.ts';

/** What a revised set changes: every element, then every quantity, was and is; no rows in a first set. */
export function revisionSchedule({ site, revision }: Pick<Job, 'site' | 'revision'>): Table {
  const { elements = [], quantities = [], order } = revision?.changes ?? {};
  const numbers = new Map(order?.lines.map(({ item, spec, number }) => [priceKey(item, spec), number]));
  const words = (quantity: number, unit: string): string => takeoffQuantity(quantity, unit, site.units).join(' ');
  return {
    short: 'revision',
    title: `Changes of revision ${revision?.number ?? ''}`,
    columns: [
      { head: 'Line' },
      { head: 'What', most: 40 },
      { head: 'Change' },
      { head: 'Was', align: 'right' },
      { head: 'Is', align: 'right' },
    ],
    rows: [
      ...elements.map(({ list, id, change, lines }) => [
        lines.length > 0 ? `in ${rangesOf(lines)}` : NONE,
        `${id} (${list})`,
        change,
        NONE,
        NONE,
      ]),
      ...quantities.map(({ item, spec, unit, before, after }) => [
        String(numbers.get(priceKey(item, spec)) ?? NONE),
        `${item}, ${spec}`,
        after > before ? 'more' : 'less',
        words(before, unit),
        words(after, unit),
      ]),
    ],
    foot: [`Against ${revision?.since ?? ''}. Quantities are those of the takeoff, lines those of the change order.`],
  };
}
