import type { Table, TableCell } from '../kit/tables/table.ts';

type Cell = string | TableCell;

const textOf = (cell: Cell | undefined): string =>
  cell === undefined ? '' : typeof cell === 'string' ? cell : cell.text;

const NOTE = 'In brackets: as it was drawn, where the lot as built is planned otherwise.';

/**
 * A schedule of the lot as built with what differs marked: beside each figure that is another than as drawn what it was,
 * rows that are new, and after them rows that are drawn alone. Rows are the same where their first cells are.
 */
export function withDifferences(built: Table, drawn: Table | undefined): Table {
  if (!drawn) return built;
  const before = keyed(drawn);
  const after = keyed(built);
  let differs = false;
  const rows = [...after].map(([key, row]) => {
    const was = before.get(key);
    if (!was) {
      differs = true;
      return marked(row, 'not drawn');
    }
    return row.map((cell, i): Cell => {
      const [now, then] = [textOf(cell), textOf(was[i])];
      if (now === then) return cell;
      differs = true;
      const text = `${now} (drawn ${then === '' ? 'blank' : then})`;
      return typeof cell === 'string' ? text : { ...cell, text };
    });
  });
  const gone = [...before].filter(([key]) => !after.has(key)).map(([, row]) => marked(row, 'drawn alone'));
  if (!differs && gone.length === 0) return built;
  return { ...built, rows: [...rows, ...gone], foot: [...(built.foot ?? []), NOTE] };
}

function marked(row: readonly Cell[], says: string): readonly Cell[] {
  const [first, ...rest] = row;
  return [`${textOf(first)} (${says})`, ...rest];
}

/** Rows by their first cell; of several alike by the number among them. */
function keyed({ rows }: Table): ReadonlyMap<string, readonly Cell[]> {
  const counts = new Map<string, number>();
  return new Map(
    rows.map((row) => {
      const name = textOf(row[0]);
      const count = (counts.get(name) ?? 0) + 1;
      counts.set(name, count);
      return [`${name} ${count}`, row];
    }),
  );
}
