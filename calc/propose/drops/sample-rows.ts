import { rowsOf } from '../../../routing/propose/rows/rows-of.ts';
import { indexById } from '../../../routing/site/ids.ts';
import type { Point2, SiteFile, Stall } from '../../../routing/site/site.ts';
import { toSite } from '../../../routing/site/to-site.ts';

/** So many stalls of each of two rows at most. */
const ALONG = 24;

/**
 * A part of a lot that goes on as the rest does: its longest row of some stalls, as much of it as is tried, and the row
 * nearest to that beside it, on the ground and under the steel that are there, with the equipment and raceways that
 * stand and no drop. Of rows as long it is the one nearest to the middle of all.
 * @param ids of the stalls that are to be served
 */
export function sampleRows(file: SiteFile, ids: ReadonlySet<string>): SiteFile {
  const stalls = toSite(file).stalls.filter(({ id }) => ids.has(id));
  const at = indexById(stalls);
  const rows = rowsOf(stalls.map((one) => ({ id: one.id, at: one.at, heading: one.heading }))).map((row) =>
    row.map((id) => stalls[at.get(id)!]!),
  );
  const all = middle(stalls);
  const [longest, ...others] = nearestFirst(rows, all).sort((a, b) => b.length - a.length);
  if (longest === undefined) return file;
  const part = longest.slice(0, ALONG);
  const [beside = []] = nearestFirst(others, middle(longest));
  const facing = nearestFirst(
    beside.map((one) => [one]),
    middle(part),
  )
    .slice(0, part.length)
    .flat();
  const own = new Set([...part, ...facing].map(({ id }) => id));
  const { drops, chargers, days, issued, asBuilt, ...rest } = file;
  return { ...rest, stalls: (file.stalls ?? []).filter(({ id }) => own.has(id)) };
}

function nearestFirst(rows: readonly (readonly Stall[])[], to: Point2): (readonly Stall[])[] {
  return rows
    .map((row) => ({ row, far: Math.hypot(middle(row)[0] - to[0], middle(row)[1] - to[1]) }))
    .sort((a, b) => a.far - b.far)
    .map(({ row }) => row);
}

function middle(stalls: readonly Stall[]): Point2 {
  const sum = stalls.reduce((so, { at }): Point2 => [so[0] + at[0], so[1] + at[1]], [0, 0] as Point2);
  return [sum[0] / Math.max(1, stalls.length), sum[1] / Math.max(1, stalls.length)];
}
