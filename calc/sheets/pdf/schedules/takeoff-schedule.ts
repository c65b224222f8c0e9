import type { Job } from '../kit/draft.ts';
import type { Table } from '../kit/tables/table.ts';
import { takeoffQuantity } from './figures.ts';

/** A row for each item of the takeoff, with its basis. */
export const takeoffSchedule = ({ site, plan }: Pick<Job, 'site' | 'plan'>): Table => ({
  short: 'takeoff',
  title: 'Takeoff',
  columns: [
    { head: 'Item' },
    { head: 'Specification', most: 30 },
    { head: 'Quantity', align: 'right' },
    { head: 'Unit' },
    { head: 'Basis', most: 40 },
  ],
  rows: plan.takeoff.map(({ item, spec, quantity, unit, basis }) => [
    item,
    spec,
    ...takeoffQuantity(quantity, unit, site.units),
    basis,
  ]),
});
