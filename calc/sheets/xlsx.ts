import { unzipSync, zipSync } from 'fflate';
import writeExcelFile, { type SheetData } from 'write-excel-file/universal';
import type { Cell } from './csv.ts';
import { ZIP_TIME } from './zip-time.ts';

export interface NamedTable {
  /** Name of the sheet's tab: at most 31 letters, none of `[]:*?/\`. */
  readonly name: string;
  /** The head, then the rows. */
  readonly rows: readonly (readonly Cell[])[];
}

/** Widest column, letters; longer text wraps. */
const WIDEST = 60;

/**
 * Tables as an XLSX workbook, one sheet each: heads bold and frozen, numbers as numbers, text always as text (a name
 * that looks like a formula stays a name). The bytes of the file.
 */
export async function xlsx(tables: readonly NamedTable[]): Promise<Uint8Array> {
  const sheets = tables.map(({ name, rows }) => ({
    sheet: name,
    data: rows.map((row, i) => row.map((value) => cellOf(value, i === 0))) as SheetData,
    columns: widthsOf(rows).map((width) => ({ width })),
    stickyRowsCount: 1,
  }));
  const blob = await writeExcelFile(sheets).toBlob();
  return sameBytes(new Uint8Array(await blob.arrayBuffer()));
}

/** The workbook packed anew with one time at every entry: the same tables are the same bytes, whenever they are written. */
const sameBytes = (packed: Uint8Array): Uint8Array => zipSync(unzipSync(packed), { mtime: ZIP_TIME });

function cellOf(value: Cell, isHead: boolean): object | null {
  if (value === null || (typeof value === 'number' && !Number.isFinite(value))) return null;
  if (typeof value === 'number') return { value, type: Number };
  if (typeof value === 'boolean') return { value: value ? 'yes' : 'no', type: String };
  return {
    value: value.replace(/[^\P{Cc}\t\n\r]|\p{Cs}/gu, ''),
    type: String,
    ...(isHead ? { fontWeight: 'bold', wrap: true } : {}),
  };
}

/** A column is as wide as its longest cell among the rows that are a table: cautions under it do not count. */
function widthsOf(rows: readonly (readonly Cell[])[]): number[] {
  return (rows[0] ?? []).map((head, column) => {
    const longest = rows.reduce(
      (most, row) => (row.length > 1 ? Math.max(most, String(row[column] ?? '').length) : most),
      0,
    );
    return Math.min(WIDEST, Math.max(String(head ?? '').length / 2, longest, 6) + 2);
  });
}
