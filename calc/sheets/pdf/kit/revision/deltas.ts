import type { Job } from '../draft.ts';
import type { Table, TableCell } from '../tables/table.ts';

/**
 * The tables of a job. In a revised set a row, and a line before or after the rows, has a delta where the version before
 * has none that reads the same; rows that are gone are named under the others.
 */
export function revisedTables(job: Job, tablesOf: (job: Job) => readonly Table[]): readonly Table[] {
  if (!job.revision) return tablesOf(job);
  const { number, since, earlier } = job.revision;
  const before = new Map(tablesOf(earlier()).map((table) => [table.title, table]));
  return tablesOf(job).map((table) => withDeltas(table, before.get(table.title), { number, since }));
}

/** A table with a delta at every row that the earlier table has not; at every row where there was no earlier table. */
export function withDeltas(
  table: Table,
  before: Table | undefined,
  { number, since }: { readonly number: string; readonly since: string },
): Table {
  const gone = before === undefined ? [] : goneRows(before, table);
  const foot = [...(table.foot ?? []), ...(gone.length > 0 ? [`Gone since ${since}: ${gone.join(', ')}.`] : [])];
  const deltas = {
    rows: unlike(table.rows.map(wordsOf), before?.rows.map(wordsOf)),
    lead: unlike(table.lead ?? [], before?.lead),
    foot: unlike(foot, before?.foot),
  };
  if (deltas.rows.size + deltas.lead.size + deltas.foot.size === 0) return table;
  return { ...table, ...(foot.length > 0 && { foot }), deltas: { number, ...deltas } };
}

const textOf = (cell: string | TableCell): string => (typeof cell === 'string' ? cell : cell.text);
const wordsOf = (row: Table['rows'][number]): string => row.map(textOf).join('\t');

/** Places of the rows that the earlier table has not: of rows that read alike, as many stay unmarked as it had. */
function unlike(these: readonly string[], others: readonly string[] = []): ReadonlySet<number> {
  const left = new Map<string, number>();
  for (const words of others) left.set(words, (left.get(words) ?? 0) + 1);
  const found = new Set<number>();
  for (const [i, words] of these.entries()) {
    const count = left.get(words) ?? 0;
    if (count > 0) left.set(words, count - 1);
    else found.add(i);
  }
  return found;
}

/** First cells of rows that only the earlier table has, where those name its rows. */
function goneRows(before: Table, now: Table): readonly string[] {
  const names = before.rows.map((row) => textOf(row[0] ?? ''));
  if (new Set(names).size < names.length) return [];
  const stay = new Set(now.rows.map((row) => textOf(row[0] ?? '')));
  return names.filter((name) => name !== '' && !stay.has(name));
}
