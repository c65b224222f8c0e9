import writeExcelFile, { type SheetData } from 'write-excel-file/universal';
import { ANYWHERE, type Packer } from './packing.ts';
import type { LiveCell, LiveTable } from './workbook/live.ts';
import { withParts } from './workbook/parts.ts';
import { sheetCells } from './workbook/sheet-cells.ts';

/** Widest column, letters; longer text wraps. */
const WIDEST = 60;

/**
 * Tables as an XLSX workbook, one sheet each, named by at most 31 letters without `[]:*?/\`: heads bold and frozen,
 * numbers as numbers, text always as text (a name that looks like a formula stays a name), formulas where a table has
 * them. The bytes of the file. `withValues`: what formulas come to stands beside them.
 */
export async function xlsx(
  tables: readonly LiveTable[],
  {
    withValues = true,
    packer = ANYWHERE,
  }: { readonly withValues?: boolean; readonly packer?: Packer | undefined } = {},
): Promise<Uint8Array> {
  const cells = sheetCells(tables, withValues);
  const sheets = tables.map(({ name, rows }, i) => ({
    sheet: name,
    data: [[...cells.firsts[i]!]] as SheetData,
    columns: widthsOf(rows).map((width) => ({ width })),
    stickyRowsCount: 1,
    orientation: 'landscape' as const,
  }));
  const blob = await writeExcelFile(sheets).toBlob();
  return withParts(new Uint8Array(await blob.arrayBuffer()), tables, cells.sheets, packer);
}

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
