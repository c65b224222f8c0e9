import type { Point3, SiteFile } from '../../../routing/site/site.ts';
import { lengthIn } from '../in-file.ts';

type Level = [number, number, number];

/** The one height, in the units of the file, at which all drops hang that a file has beside those of another; null where they are at several. */
export function levelOf({ drops = [] }: SiteFile, before: SiteFile): number | null {
  const [first, ...rest] = drops.slice(before.drops?.length ?? 0).map(({ box }) => box[2]);
  return first !== undefined && rest.every((z) => Math.abs(z - first) < SAME) ? first : null;
}

/**
 * A lot that is laid, its new drops and what lies at their height so much lower: routes and equipment are the same, so
 * that only the height decides. Null where the drops are at several heights, or new raceways join others at theirs.
 * @param by feet
 */
export function hungLower(before: SiteFile, laid: SiteFile, by: number): SiteFile | null {
  const level = levelOf(laid, before);
  if (level === null) return null;
  const isAt = ([, , z]: Point3): boolean => Math.abs(z - level) < SAME;
  const { drops = [], raceways = [], pullpoints = [] } = before;
  if (drops.some(({ box }) => isAt(box)) || raceways.some(({ path }) => path.some(isAt))) return null;
  if (pullpoints.some(({ at }) => isAt(at))) return null;
  const lower = ([x, y, z]: Point3): Level => [x, y, z - lengthIn(before.units, by)];
  const moved = (at: Point3): Level => (isAt(at) ? lower(at) : [...at]);
  return {
    ...laid,
    drops: laid.drops!.map((one, i) =>
      i < drops.length
        ? one
        : { ...one, box: lower(one.box), ...(one.retractor && { retractor: lower(one.retractor) }) },
    ),
    raceways: (laid.raceways ?? []).map((one) => ({ ...one, path: one.path.map(moved) })),
    ...(laid.pullpoints && { pullpoints: laid.pullpoints.map((one) => ({ ...one, at: moved(one.at) })) }),
  };
}

/** Heights are the same to so much, in any unit: places are rounded more finely. */
const SAME = 1e-3;
