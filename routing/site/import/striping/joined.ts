import { addTo } from '../../../lists/grouping.ts';
import { apart } from '../../../plane/distance.ts';
import type { Point2 } from '../../site.ts';
import type { ImportedLine } from '../imported.ts';

/** Ends nearer than this, feet, meet. */
const MEETS = 0.05;

/** Lines whose ends meet as one: an island is often drawn as lines and arcs of its own. Where three meet, none are joined. */
export function joinedLines(lines: readonly ImportedLine[], rounding = 0): readonly ImportedLine[] {
  const cell = MEETS + 3 * rounding;
  const ends = new Map<string, { readonly i: number; readonly at: Point2 }[]>();
  const cellOf = ([x, y]: Point2): readonly [number, number] => [Math.floor(x / cell), Math.floor(y / cell)];
  const isOpen = ({ closed, points }: ImportedLine): boolean => !closed && points.length > 1;
  for (const [i, line] of lines.entries()) {
    if (!isOpen(line)) continue;
    for (const at of [line.points[0]!, line.points.at(-1)!]) addTo(ends, cellOf(at).join(' '), { i, at });
  }
  /** The one other line that ends at a place. */
  const other = (i: number, at: Point2): number | null => {
    const [x, y] = cellOf(at);
    const met: number[] = [];
    for (const dx of [-1, 0, 1])
      for (const dy of [-1, 0, 1])
        for (const end of ends.get(`${x + dx} ${y + dy}`) ?? [])
          if (end.i !== i && apart(end.at, at) <= cell) met.push(end.i);
    return met.length === 1 ? met[0]! : null;
  };
  const used = new Set<number>();
  /** Adds to the end of a row of points all that is joined on there. */
  const extend = (from: number, points: Point2[]): void => {
    let last = from;
    for (let next = other(last, points.at(-1)!); next !== null && !used.has(next); next = other(last, points.at(-1)!)) {
      used.add(next);
      last = next;
      const own = lines[next]!.points;
      const forward = apart(own[0]!, points.at(-1)!) <= apart(own.at(-1)!, points.at(-1)!);
      for (const point of (forward ? own : [...own].reverse()).slice(1)) points.push(point);
    }
  };
  return lines.flatMap((line, i): ImportedLine[] => {
    if (!isOpen(line)) return [line];
    if (used.has(i)) return [];
    used.add(i);
    const points = [...line.points];
    extend(i, points);
    points.reverse();
    extend(i, points);
    if (points.length === line.points.length) return [line];
    const closes = points.length > 3 && apart(points[0]!, points.at(-1)!) <= cell;
    return [{ ...line, points: closes ? points.slice(0, -1) : points, closed: closes }];
  });
}
