import type { Point2, Point3, Stall } from '../../site/site.ts';

/** Which way a row of things runs, and how far the next of them is to stand. */
export interface RowWay {
  /** Degrees counter-clockwise from +x, from 0 up to 360. */
  readonly degrees: number;
  /** Feet from what is chosen, as a whole, to a copy that goes on where it ends. */
  readonly next: number;
}

/** Headings that differ by less, degrees, are the same. */
const SAME_HEADING = 0.01;
/** Feet that a stall of a row may stand off the row's line: stalls of other widths do, where they are angled. */
export const OFF_LINE = 2.5;
/** Depths of a stall within which its neighbor in the row stands: farther off is the next row. */
export const REACH = 1.5;

/**
 * The row that stalls stand in, from the first of them on, or towards its free end where only one is free. The row runs
 * from the first of them, in the site's order, to the nearest stall of its heading, which is not square to the heading
 * where stalls are angled or parallel; a stall by itself goes on to its right. `next` is the pitch for one stall, and
 * for several their extent with one pitch more. Null where none of the ids is a stall.
 */
export function rowWay(stalls: readonly Stall[], ids: ReadonlySet<string>): RowWay | null {
  const lead = stalls.find(({ id }) => ids.has(id));
  if (!lead) return null;
  const alike = stalls.filter(({ heading }) => turnBetween(heading, lead.heading) < SAME_HEADING);
  const chosen = alike.filter(({ id }) => ids.has(id));
  const mate =
    nearest(lead, chosen, REACH * lead.depth) ?? nearest(lead, alike, REACH * lead.depth) ?? nearest(lead, chosen);
  if (!mate) return { degrees: upright(lead.heading - 90), next: lead.width };
  const pitch = Math.hypot(mate.at[0] - lead.at[0], mate.at[1] - lead.at[1]);
  const way: Point2 = [(mate.at[0] - lead.at[0]) / pitch, (mate.at[1] - lead.at[1]) / pitch];
  const along = ({ at }: Stall): number => (at[0] - lead.at[0]) * way[0] + (at[1] - lead.at[1]) * way[1];
  const off = ({ at }: Stall): number => Math.abs((at[1] - lead.at[1]) * way[0] - (at[0] - lead.at[0]) * way[1]);
  const row = alike.filter((stall) => off(stall) < OFF_LINE);
  const own = row.filter(({ id }) => ids.has(id)).map(along);
  const [low, high] = [Math.min(...own), Math.max(...own)];
  const others = row.filter(({ id }) => !ids.has(id)).map(along);
  const ahead = others.some((s) => s > high);
  const behind = others.some((s) => s < low);
  const onwards = ahead === behind ? along(row.at(-1)!) >= along(row[0]!) : behind;
  const turn = onwards ? 1 : -1;
  return { degrees: degreesOf([turn * way[0], turn * way[1]]), next: high - low + pitch };
}

/** The longest straight stretch of a path in the plan; null where it has none. `next` is how long that is. */
export function stretchWay(path: readonly Point3[]): RowWay | null {
  let found: RowWay | null = null;
  for (let i = 1; i < path.length; i++) {
    const [[ax, ay], [bx, by]] = [path[i - 1]!, path[i]!];
    const next = Math.hypot(bx - ax, by - ay);
    if (next > 1e-6 && next > (found?.next ?? 0) + 1e-9) found = { degrees: degreesOf([bx - ax, by - ay]), next };
  }
  return found;
}

/**
 * The line that points stand in: of one point, away from the nearest of all; of several, from the first to the one
 * nearest to it, `next` being as far as they reach and one step more. Null where there is no other point.
 */
export function lineWay(points: readonly Point2[], all: readonly Point2[]): RowWay | null {
  const [first] = points;
  if (!first) return null;
  const several = points.length > 1;
  let step: Point2 | null = null;
  for (const [x, y] of several ? points : all) {
    const to: Point2 = several ? [x - first[0], y - first[1]] : [first[0] - x, first[1] - y];
    const far = Math.hypot(...to);
    if (far > 1e-6 && far < (step ? Math.hypot(...step) : Infinity)) step = to;
  }
  if (!step) return null;
  const far = Math.hypot(...step);
  const along = points.map(([x, y]) => (x * step[0] + y * step[1]) / far);
  return { degrees: degreesOf(step), next: Math.max(...along) - Math.min(...along) + far };
}

function nearest(lead: Stall, stalls: readonly Stall[], within = Infinity): Stall | null {
  let found: Stall | null = null;
  let least = within;
  for (const stall of stalls) {
    const away = Math.hypot(stall.at[0] - lead.at[0], stall.at[1] - lead.at[1]);
    if (stall === lead || away < 1e-6 || away >= least) continue;
    least = away;
    found = stall;
  }
  return found;
}

const degreesOf = ([x, y]: Point2): number => upright((Math.atan2(y, x) * 180) / Math.PI);

const upright = (degrees: number): number => {
  const turn = ((degrees % 360) + 360) % 360;
  return turn === 360 ? 0 : turn;
};

const turnBetween = (a: number, b: number): number => {
  const turn = upright(a - b);
  return Math.min(turn, 360 - turn);
};
