import { areaOf, clippedToBox } from '../plane/clip.ts';
import { printLength } from '../site/feet-inches.ts';
import type { Finding } from '../site/finding.ts';
import type { Equipment, Point2, Site } from '../site/site.ts';
import type { WorkingSpace } from '../site/working-space.ts';
import { seenFrom, TOUCHING_AREA } from './footprint.ts';
import type { WorkingNeeds } from './working-needs.ts';

/** Width of an entrance, feet: 24 in (110.26(C)(2)). */
const ENTRANCE = 2;

interface Standing {
  readonly id: string;
  readonly what: string;
  readonly outline: readonly Point2[];
}

/**
 * Large equipment whose working space is not entered from both ends, 24 in wide, and has not twice its depth clear either
 * (110.26(C)(2)).
 * @param standing what stands in a space before the equipment, so wide and so deep
 */
export function entrances(
  equipment: Equipment,
  space: WorkingSpace,
  { twoEntrances }: WorkingNeeds,
  standing: (space: WorkingSpace) => readonly Standing[],
  { units }: Site,
): Finding[] {
  if (!twoEntrances) return [];
  const { width, depth } = space;
  const front = -equipment.size[1] / 2;
  const all = standing({ ...space, width: width + 2 * ENTRANCE, depth: 2 * depth });
  const within = (minX: number, maxX: number, deep: number): readonly Standing[] =>
    all.filter(({ outline }) => {
      const box = { minX, maxX, minY: front - deep, maxY: front };
      return areaOf(clippedToBox(seenFrom(equipment, outline), box)) > TOUCHING_AREA;
    });
  if (within(-width / 2, width / 2, 2 * depth).length === 0) return [];
  const half = width / 2;
  const ends = [within(-half - ENTRANCE, -half, depth), within(half, half + ENTRANCE, depth)];
  const shut = [...new Set(ends.flat())];
  if (shut.length === 0) return [];
  const { id } = equipment;
  return [
    {
      severity: 'fail',
      rule: 'working-space',
      about: [id, ...shut.map((one) => one.id)],
      says: `${id}, ${printLength(equipment.size[0], units)} wide, is to have an entrance ${printLength(ENTRANCE, units)} wide at each end of its working space, or ${printLength(2 * depth, units)} clear before it: ${shut.map(({ what }) => what).join(', ')} ${shut.length === 1 ? 'stands' : 'stand'} at an end. Clear both ends, or twice the depth.`,
      limit: ENTRANCE,
      unit: 'ft',
      source: 'NEC 110.26(C)(2): 1200 A or more and over 6 ft wide',
    },
  ];
}
