export interface TextColumn<Row> {
  readonly head: string;
  readonly text: (row: Row) => string;
  readonly align?: 'left' | 'right';
}

/** Rows as lines of aligned columns under their heads, for a terminal. */
export function textTable<Row>(rows: readonly Row[], columns: readonly TextColumn<Row>[]): string {
  const cells = rows.map((row) => columns.map((column) => column.text(row)));
  const widths = columns.map((column, i) =>
    cells.reduce((most, row) => Math.max(most, row[i]?.length ?? 0), column.head.length),
  );
  const line = (texts: readonly string[]): string =>
    texts
      .map((text, i) => (columns[i]?.align === 'right' ? text.padStart(widths[i] ?? 0) : text.padEnd(widths[i] ?? 0)))
      .join('  ')
      .trimEnd();
  return [line(columns.map((column) => column.head)), ...cells.map(line)].join('\n');
}
