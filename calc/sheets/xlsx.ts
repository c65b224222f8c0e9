import writeExcelFile, { type SheetData } from 'write-excel-file/universal';
import { type LiveCell, type LiveTable, NUMBER_FORMATS } from './workbook/live.ts';
import { withParts } from './workbook/parts.ts';

/** Widest column, letters; longer text wraps. */
const WIDEST = 60;

/**
 * Tables as an XLSX workbook, one sheet each, named by at most 31 letters without `[]:*?/\`: heads bold and frozen,
 * numbers as numbers, text always as text (a name that looks like a formula stays a name), formulas where a table has
 * them. The bytes of the file. `withValues`: what formulas come to stands beside them.
 */
export async function xlsx(tables: readonly LiveTable[], withValues = true): Promise<Uint8Array> {
  const sheets = tables.map(({ name, rows }) => ({
    sheet: name,
    data: rows.map((row, i) => row.map((value, j) => cellOf(value, i === 0, rows[0]?.[j]))) as SheetData,
    columns: widthsOf(rows).map((width) => ({ width })),
    stickyRowsCount: 1,
    orientation: 'landscape' as const,
  }));
  const blob = await writeExcelFile(sheets).toBlob();
  return withParts(new Uint8Array(await blob.arrayBuffer()), tables, withValues);
}

function cellOf(value: LiveCell, isHead: boolean, head: LiveCell | undefined): object | null {
  if (value === null || (typeof value === 'number' && !Number.isFinite(value))) return null;
  if (typeof value === 'number')
    return { value, type: Number, ...(isMoney(head) ? { format: NUMBER_FORMATS.money } : {}) };
  if (typeof value === 'boolean') return { value: value ? 'yes' : 'no', type: String };
  if (typeof value === 'object') {
    const format = NUMBER_FORMATS[value.shown];
    if (value.formula !== undefined) return { value: value.formula, type: 'Formula', format };
    return value.value === null ? null : { value: value.value, type: Number, format };
  }
  return {
    value: value.replace(/[^\P{Cc}\t\n\r]|\p{Cs}/gu, ''),
    type: String,
    ...(isHead ? { fontWeight: 'bold', wrap: true } : {}),
  };
}

const isMoney = (head: LiveCell | undefined): boolean => typeof head === 'string' && head.endsWith('($)');

/** What stands in a cell, in letters; a number is not shown to its last figure. */
const letters = (cell: LiveCell | undefined): number =>
  typeof cell === 'object' && cell !== null ? (cell.words?.length ?? 12) : String(cell ?? '').length;

/** A column is as wide as its longest cell among the rows that are a table: cautions under it do not count. */
function widthsOf(rows: readonly (readonly LiveCell[])[]): number[] {
  return (rows[0] ?? []).map((head, column) => {
    const longest = rows.reduce((most, row) => (row.length > 1 ? Math.max(most, letters(row[column])) : most), 0);
    return Math.min(WIDEST, Math.max(letters(head) / 2, longest, 6) + 2);
  });
}
