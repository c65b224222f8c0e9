import { addTo } from '../../lists/grouping.ts';
import type { Point2 } from '../../site/site.ts';
import { lineWay, OFF_LINE } from './row-way.ts';

/** Something that stands in a row. Things of different headings, degrees, stand in different rows. */
export interface Standing {
  readonly id: string;
  readonly at: Point2;
  readonly heading: number | null;
}

/** Ids in the order in which they stand, from left to right or, in a row that is rather upright, from below up. */
export type Row = readonly string[];

/** How rows are gone along. */
export interface RowsOrder {
  /** From the last row to the first. */
  readonly backwards: boolean;
  /** Each row from its end to its beginning. */
  readonly fromEnd: boolean;
  /** Every other row the other way: there and back. */
  readonly turning: boolean;
}

/**
 * Things by the rows that they stand in, each once: of one heading, in line with the first of them towards the one that
 * is nearest to it. Rows come from the top of the sheet down or, where the first of them is rather upright, from left to
 * right. A thing by itself is a row. Things at one place keep the order given.
 */
export function rowsOf(things: readonly Standing[]): readonly Row[] {
  const byHeading = new Map<number | null, Standing[]>();
  for (const thing of things) {
    const heading = thing.heading === null ? null : Math.round(turn(thing.heading) * 100) % 36000;
    addTo(byHeading, heading, thing);
  }
  const lines = [...byHeading.values()].flatMap(linesOf);
  const way = lines[0]?.way ?? [1, 0];
  const across = ([x, y]: Point2): number => x * way[1] - y * way[0];
  return lines
    .map((line) => ({ ...line, across: across(middle(line.things)) }))
    .sort((a, b) => a.across - b.across)
    .map((line) => line.things.map(({ id }) => id));
}

/** Ids of all rows, one row after the other. */
export const inOrder = (rows: readonly Row[], { backwards, fromEnd, turning }: RowsOrder): readonly string[] =>
  (backwards ? rows.toReversed() : rows).flatMap((row, i) =>
    fromEnd !== (turning && i % 2 === 1) ? row.toReversed() : row,
  );

/**
 * The rows of `all` as far as they go on without a gap from one of the things of `ids`, neighbors standing less than
 * `reach` feet apart: the whole rows of what is chosen.
 */
export function wholeRows(all: readonly Standing[], ids: ReadonlySet<string>, reach: number): readonly Row[] {
  const places = new Map(all.map(({ id, at }) => [id, at]));
  const isNext = (a: string, b: string): boolean => {
    const [[ax, ay], [bx, by]] = [places.get(a)!, places.get(b)!];
    return Math.hypot(ax - bx, ay - by) < reach;
  };
  return rowsOf(all).flatMap((row) => {
    const parts: string[][] = [];
    for (const id of row) {
      const last = parts.at(-1)?.at(-1);
      if (last !== undefined && isNext(last, id)) parts.at(-1)!.push(id);
      else parts.push([id]);
    }
    return parts.filter((part) => part.some((id) => ids.has(id)));
  });
}

interface Line {
  readonly way: Point2;
  readonly things: readonly Standing[];
}

function linesOf(things: readonly Standing[]): readonly Line[] {
  const lines: Line[] = [];
  let left = things;
  while (left.length > 0) {
    const [first] = left;
    const found = lineWay(
      left.map(({ at }) => at),
      [],
    );
    const way = forwards(found?.degrees ?? 0);
    const off = ({ at }: Standing): number =>
      Math.abs((at[1] - first!.at[1]) * way[0] - (at[0] - first!.at[0]) * way[1]);
    const along = ({ at }: Standing): number => at[0] * way[0] + at[1] * way[1];
    const own = left.filter((thing) => off(thing) < OFF_LINE);
    lines.push({ way, things: own.toSorted((a, b) => along(a) - along(b)) });
    left = left.filter((thing) => off(thing) >= OFF_LINE);
  }
  return lines;
}

/** A line's way to the right or, where it is rather upright, up. */
function forwards(degrees: number): Point2 {
  const half = turn(degrees) % 180;
  const radians = ((half > 135 ? half - 180 : half) * Math.PI) / 180;
  return [Math.cos(radians), Math.sin(radians)];
}

const turn = (degrees: number): number => ((degrees % 360) + 360) % 360;

function middle(things: readonly Standing[]): Point2 {
  const sum = things.reduce<Point2>(([x, y], { at }) => [x + at[0], y + at[1]], [0, 0]);
  return [sum[0] / things.length, sum[1] / things.length];
}
