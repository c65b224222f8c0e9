import { areaOf } from '../../plane/area.ts';
import { clippedToBox } from '../../plane/clip.ts';
import { printLength } from '../../site/numbers/feet-inches.ts';
import type { WorkingSpace } from '../../site/place/working-space.ts';
import type { Finding } from '../../site/rules/finding.ts';
import type { Equipment, Point2, Site } from '../../site/site.ts';
import { seenFrom, TOUCHING_AREA } from '../../standing/footprint.ts';
import type { WorkingNeeds } from './working-needs.ts';

interface Standing {
  readonly id: string;
  readonly what: string;
  readonly outline: readonly Point2[];
}

/**
 * Large equipment whose working space is not entered from both ends, and has not twice its depth clear either.
 * @param standing what stands in a space before the equipment, so wide and so deep
 */
export function entrances(
  equipment: Equipment,
  space: WorkingSpace,
  { twoEntrances, entranceWidth: entrance, cites }: WorkingNeeds,
  standing: (space: WorkingSpace) => readonly Standing[],
  { units }: Pick<Site, 'units'>,
): Finding[] {
  if (!twoEntrances) return [];
  const { width, depth } = space;
  const front = -equipment.size[1] / 2;
  const all = standing({ ...space, width: width + 2 * entrance, depth: 2 * depth });
  const within = (minX: number, maxX: number, deep: number): readonly Standing[] =>
    all.filter(({ outline }) => {
      const box = { minX, maxX, minY: front - deep, maxY: front };
      return areaOf(clippedToBox(seenFrom(equipment, outline), box)) > TOUCHING_AREA;
    });
  if (within(-width / 2, width / 2, 2 * depth).length === 0) return [];
  const half = width / 2;
  const ends = [within(-half - entrance, -half, depth), within(half, half + entrance, depth)];
  const shut = [...new Set(ends.flat())];
  if (shut.length === 0) return [];
  const { id } = equipment;
  return [
    {
      severity: 'fail',
      rule: 'working-space',
      about: [id, ...shut.map((one) => one.id)],
      says: `${id}, ${printLength(equipment.size[0], units)} wide, is to have an entrance ${printLength(entrance, units)} wide at each end of its working space, or ${printLength(2 * depth, units)} clear before it: ${shut.map(({ what }) => what).join(', ')} ${shut.length === 1 ? 'stands' : 'stand'} at an end. Clear both ends, or twice the depth.`,
      limit: entrance,
      unit: 'ft',
      source: cites.entrances,
    },
  ];
}
