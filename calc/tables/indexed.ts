/**
 * A look-up by key over rows that never change: indexed once for each array of rows. Where two rows have the key the
 * first one counts. Undefined where none has it.
 */
export function indexed<Row>(keyOf: (row: Row) => string): (rows: readonly Row[], key: string) => Row | undefined {
  const indexes = new WeakMap<readonly Row[], ReadonlyMap<string, Row>>();
  return (rows, key) => {
    let index = indexes.get(rows);
    if (index === undefined) {
      index = new Map(rows.map((row): [string, Row] => [keyOf(row), row]).reverse());
      indexes.set(rows, index);
    }
    return index.get(key);
  };
}
