import { kept } from '../../../routing/kept/kept.ts';
import { boxIndex, positionsIn } from '../../../routing/plane/box-index.ts';
import { insideOf, type Obstacle } from '../../../routing/plane/obstacle.ts';
import type { Aisle, Stall } from '../../../routing/site/site.ts';
import { outlineOf, stallOutline, stallsIn } from '../../../routing/standing/outlines.ts';
import type { Handhole, PlannedBox, TrafficRating } from '../../plan-file/branches.ts';
import { HANDHOLE_SIZES } from '../../tables/handholes.ts';

const NONE: readonly Handhole[] = [];

/**
 * The boxes in the ground as handholes with their covers at grade: the smallest nominal size as long as 314.28 asks
 * (314.30(A)), rated for what comes over it. One past the largest size is named by its length.
 */
export const handholesOf = kept(
  (boxes: readonly PlannedBox[], stalls: readonly Stall[], aisles: readonly Aisle[]): readonly Handhole[] => {
    if (boxes.length === 0) return NONE;
    const index = boxIndex(aisles, (aisle): Obstacle => outlineOf(aisle));
    return boxes.map((box): Handhole => {
      const [x, y] = box.at;
      const here = { minX: x, minY: y, maxX: x, maxY: y };
      const over = positionsIn(index, here).map((i) => aisles[i]!);
      const kinds = over.filter((aisle) => insideOf(outlineOf(aisle), x, y)).map(({ kind = 'drive' }) => kind);
      const isParkedOn = stallsIn(stalls, here).some((stall) => insideOf(stallOutline(stall), x, y));
      const rating = ratingOf(kinds, isParkedOn || box.under !== 'soil');
      return { id: box.id, at: box.at, size: handholeSize(box.length ?? 0), rating };
    });
  },
);

function ratingOf(kinds: readonly NonNullable<Aisle['kind']>[], isPaved: boolean): TrafficRating {
  if (kinds.includes('drive') || kinds.includes('fire')) return 'H-20';
  return isPaved && !kinds.includes('walk') ? 'Tier 22' : 'Tier 8';
}

function handholeSize(least: number): string {
  const fits = HANDHOLE_SIZES.find(([, inches]) => inches >= least - 1e-9);
  return fits?.[0] ?? `${Math.ceil(least - 1e-9)} in long`;
}
