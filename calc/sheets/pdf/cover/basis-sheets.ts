import { tablesOf } from '../../../tables/editions.ts';
import { type Draft, type Job, NOT_TO_SCALE } from '../kit/draft.ts';
import { revisedTables } from '../kit/revision/deltas.ts';
import { evenPages } from '../kit/tables/even-pages.ts';
import type { Table } from '../kit/tables/table.ts';
import { drawTable } from '../kit/tables/table-drawing.ts';
import { checksTable, notCheckedTable } from './checks-table.ts';
import { columnWidth } from './columns.ts';
import { assumptionsTable, criteriaTable } from './criteria.ts';
import { findingsSummary } from './findings-summary.ts';

/** The basis of design on sheets of its own. */
export function basisSheets(job: Job): readonly Draft[] {
  return evenPages(revisedTables(job, basisTables), job).map((page, i) => ({
    key: `basis ${i + 1}`,
    series: 'G-0',
    title: i === 0 ? 'Basis of design and assumptions' : 'Basis of design and assumptions, continued',
    scale: NOT_TO_SCALE,
    draw: (pen) => {
      for (const part of page) drawTable(pen, part);
    },
  }));
}

/** What is assumed and to be confirmed, what governs, what was looked at and found. */
export function basisTables(job: Job): readonly Table[] {
  const { site, plan } = job;
  const width = columnWidth(job);
  return [
    assumptionsTable(site, width),
    criteriaTable(site, width),
    findingsSummary(plan, tablesOf(site.rules), width),
    checksTable(plan, width),
    notCheckedTable(plan, width),
  ];
}
