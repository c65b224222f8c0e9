import { type Area, right } from '../kit/area.ts';
import type { Draft, Job } from '../kit/draft.ts';
import { flowTables, TABLE_GAP, type Table } from '../kit/tables/table.ts';
import { drawTable } from '../kit/tables/table-drawing.ts';
import { oneLineIn } from './one-line-sheets.ts';

/**
 * The one-line of a small supply with tables right of it, on one sheet; null where either would need more room: it is
 * drawn no smaller than on a sheet of its own.
 */
export function oneLineBeside(job: Job, tables: readonly Table[], title: string): Draft | null {
  const { field } = job.shape;
  const [page = [], ...more] = flowTables(tables, field, job.lettering);
  if (page.length === 0 || more.length > 0 || page.some(({ area }) => area.x > field.x)) return null;
  const width = Math.max(...page.map(({ area }) => area.width));
  const left: Area = { ...field, width: field.width - width - 2 * TABLE_GAP };
  if (left.width <= 0) return null;
  const [alone, beside] = [oneLineIn(job, field), oneLineIn(job, left)];
  const [sheet, ...others] = beside.sheets;
  if (!sheet || others.length > 0 || beside.size.letters < alone.size.letters) return null;
  const [parts = []] = flowTables(tables, { ...field, x: right(field) - width, width }, job.lettering);
  return {
    ...sheet,
    title,
    draw: (pen, numbers) => {
      sheet.draw(pen, numbers);
      for (const part of parts) drawTable(pen, part);
    },
  };
}
