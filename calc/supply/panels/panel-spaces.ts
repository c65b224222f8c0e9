import { addTo } from '../../../routing/lists/grouping.ts';
import type { Lines } from '../../../routing/site/schema/vocabulary.ts';

const NOWHERE: readonly number[] = [];

/**
 * Spaces for the breakers of a panel, in their order: odd numbers down the left side, even down the right, the lines of
 * `rows` in turn from the top. At each free row stands the first breaker left with most poles whose first line is there;
 * a row that none can use stays blank. An empty list for a breaker that finds no room.
 * @param rows the lines of the panel, `"ABC"` or two of them
 * @param spaces of the panel; undefined for as many as it takes
 */
export function spacesFor(
  breakers: readonly Lines[],
  rows: string,
  spaces: number | undefined,
): readonly (readonly number[])[] {
  const queues = queuesOf(breakers, rows);
  const taken = new Array<readonly number[]>(breakers.length).fill(NOWHERE);
  const last = spaces ?? Infinity;
  const next: [number, number] = [0, 0];
  for (let left = breakers.length; left > 0; ) {
    const side = next[0] <= next[1] ? 0 : 1;
    const row = next[side];
    const spaceAt = (poles: number): number => 2 * (row + poles) + side + 1;
    // The side with the higher row is as full as the other, or fuller.
    if (spaceAt(0) > last) {
      if (next[0] === Infinity && next[1] === Infinity) break;
      next[side] = Infinity;
      continue;
    }
    const breaker = takeAt(queues, rows, row, (poles) => spaceAt(poles - 1) <= last);
    if (breaker === undefined) {
      next[side] = row + 1;
      continue;
    }
    const poles = breakers[breaker]!.length;
    const own = new Array<number>(poles);
    for (let pole = 0; pole < poles; pole++) own[pole] = spaceAt(pole);
    taken[breaker] = own;
    next[side] = row + poles;
    left -= 1;
  }
  return taken;
}

/** Breakers, last first, by poles and by the line that the first pole must be on; any will do where they take all lines. */
function queuesOf(breakers: readonly Lines[], rows: string): ReadonlyMap<number, number[]> {
  const queues = new Map<number, number[]>();
  for (let i = breakers.length - 1; i >= 0; i--) {
    const lines = breakers[i]!;
    const key = keyOf(lines.length, lines[0]!, rows);
    addTo(queues, key, i);
  }
  return queues;
}

/** More poles than a breaker has. */
const MOST_POLES = 8;

/** A number for poles and a line: there are thousands of rows, and a text for each costs more than the search. */
const keyOf = (poles: number, line: string, rows: string): number =>
  poles === rows.length ? poles : poles + MOST_POLES * line.charCodeAt(0);

function takeAt(
  queues: ReadonlyMap<number, number[]>,
  rows: string,
  row: number,
  hasRoom: (poles: number) => boolean,
): number | undefined {
  for (let poles = rows.length; poles >= 1; poles--) {
    const queue = queues.get(keyOf(poles, rows[row % rows.length]!, rows));
    if (queue !== undefined && queue.length > 0 && hasRoom(poles)) return queue.pop();
  }
  return undefined;
}
