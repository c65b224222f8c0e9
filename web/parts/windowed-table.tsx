import { type ReactNode, useEffect, useRef, useState } from 'react';
import { usePhone } from './phone.ts';
import { Scroller } from './scroller.tsx';

export interface ListColumn<Row> {
  readonly head: string;
  readonly cell: (row: Row) => ReactNode;
  readonly numeric?: boolean;
  /** What the column is sorted by; without it the column is not. */
  readonly sort?: (row: Row) => number | string;
}

interface TableProps<Row> {
  readonly name: string;
  readonly rows: readonly Row[];
  readonly columns: readonly ListColumn<Row>[];
  readonly keyOf: (row: Row) => string;
  readonly isChosen?: (row: Row) => boolean;
  readonly onChoose?: (row: Row, adds: boolean) => void;
  readonly stateOf?: (row: Row) => string | undefined;
}

const ROW_PX = 27;
/** Under a finger, as in the style sheet. */
const FINGER_ROW_PX = 40;
/** Below this many rows all are drawn; above, those in view and some before and after. */
const WINDOW_FROM = 150;
const BEYOND = 12;

/** A table that draws only the rows in view, sorts by its heads, and brings the chosen row into view. */
export function WindowedTable<Row>({ name, rows, columns, keyOf, isChosen, onChoose, stateOf }: TableProps<Row>) {
  const frame = useRef<HTMLElement>(null);
  const [top, setTop] = useState(0);
  const [height, setHeight] = useState(400);
  const [order, setOrder] = useState<{ readonly column: number; readonly down: boolean } | null>(null);
  const sorted = inOrder(rows, columns, order);
  const rowPx = usePhone() ? FINGER_ROW_PX : ROW_PX;
  const chosen = isChosen ? sorted.findIndex(isChosen) : -1;

  useEffect(() => {
    const element = frame.current;
    if (!element) return;
    const sized = new ResizeObserver(() => setHeight(element.clientHeight));
    sized.observe(element);
    return () => sized.disconnect();
  }, []);

  // Only a newly chosen row is brought into view.
  useEffect(() => {
    const element = frame.current;
    if (!element || chosen < 0) return;
    const at = chosen * rowPx;
    const seen = element.clientHeight - rowPx * 2;
    if (at < element.scrollTop || at > element.scrollTop + seen) element.scrollTop = Math.max(0, at - seen / 2);
  }, [chosen, rowPx]);

  const all = sorted.length <= WINDOW_FROM;
  const first = all ? 0 : Math.max(0, Math.floor(top / rowPx) - BEYOND);
  const last = all ? sorted.length : Math.min(sorted.length, Math.ceil((top + height) / rowPx) + BEYOND);
  return (
    <Scroller
      className="table-frame"
      ref={frame}
      aria-label={name}
      onScroll={(event) => setTop(event.currentTarget.scrollTop)}
    >
      <table aria-rowcount={sorted.length + 1}>
        <thead>
          <tr aria-rowindex={1}>
            {columns.map(({ head, numeric, sort }, i) => (
              <th key={head} scope="col" className={numeric ? 'numeric' : undefined} aria-sort={sortWord(order, i)}>
                {sort ? (
                  <button type="button" onClick={() => setOrder(nextOrder(order, i))}>
                    {head}
                    <span aria-hidden="true">{order?.column === i ? (order.down ? ' ↓' : ' ↑') : ''}</span>
                  </button>
                ) : (
                  head
                )}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {first > 0 && <tr className="spacer" style={{ height: first * rowPx }} />}
          {sorted.slice(first, last).map((row, i) => (
            <tr
              key={keyOf(row)}
              aria-rowindex={first + i + 2}
              aria-selected={isChosen ? isChosen(row) : undefined}
              data-state={stateOf?.(row)}
              data-row={keyOf(row)}
              onClick={onChoose && ((event) => onChoose(row, event.shiftKey || event.ctrlKey || event.metaKey))}
            >
              {columns.map(({ head, cell, numeric }, column) =>
                column === 0 ? (
                  <th key={head} scope="row">
                    {onChoose ? (
                      <button type="button" className="link">
                        {cell(row)}
                      </button>
                    ) : (
                      cell(row)
                    )}
                  </th>
                ) : (
                  <td key={head} className={numeric ? 'numeric' : undefined}>
                    {cell(row)}
                  </td>
                ),
              )}
            </tr>
          ))}
          {last < sorted.length && <tr className="spacer" style={{ height: (sorted.length - last) * rowPx }} />}
        </tbody>
      </table>
    </Scroller>
  );
}

type Order = { readonly column: number; readonly down: boolean } | null;

const nextOrder = (order: Order, column: number): Order =>
  order?.column !== column ? { column, down: false } : order.down ? null : { column, down: true };

const sortWord = (order: Order, column: number): 'ascending' | 'descending' | undefined =>
  order?.column !== column ? undefined : order.down ? 'descending' : 'ascending';

function inOrder<Row>(rows: readonly Row[], columns: readonly ListColumn<Row>[], order: Order): readonly Row[] {
  const sort = order ? columns[order.column]?.sort : undefined;
  if (!sort || !order) return rows;
  const sign = order.down ? -1 : 1;
  return [...rows].sort((a, b) => {
    const [x, y] = [sort(a), sort(b)];
    if (x === y) return 0;
    return sign * (typeof x === 'string' ? x.localeCompare(String(y), 'en', { numeric: true }) : x - Number(y));
  });
}
