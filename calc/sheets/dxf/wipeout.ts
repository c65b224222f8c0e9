import { boxOf } from '../../../routing/plane/box.ts';
import type { Point2 } from '../../../routing/site/site.ts';
import type { Tags } from './tags.ts';

/** Shown, also where it is not square with the screen, and clipped. */
const SHOWN = 7;
const POLYGON = 2;

/** What follows the groups that all entities have: an image of one pixel that has no picture, clipped to an outline. */
export function addWipeout(tags: Tags, corners: readonly Point2[]): void {
  const { minX, minY, maxX, maxY } = boxOf(corners);
  const [width, height] = [maxX - minX, maxY - minY];
  tags.add([100, 'AcDbWipeout'], [90, 0]);
  tags.point(10, [minX, minY, 0]);
  tags.point(11, [width, 0, 0]);
  tags.point(12, [0, height, 0]);
  tags.add([13, 1], [23, 1], [340, '0'], [70, SHOWN], [280, 1], [281, 50], [282, 50], [283, 0], [360, '0']);
  const ring = [...corners, corners[0]!];
  tags.add([71, POLYGON], [91, ring.length]);
  // Pixels are told from the middle of the first one, down from the upper edge.
  for (const [x, y] of ring) tags.add([14, (x - minX) / width - 0.5], [24, 0.5 - (y - minY) / height]);
}

/** Classes of wipeouts and of what says how they look, as a program asks for them. */
export function addWipeoutClasses(tags: Tags): void {
  for (const [kind, name, flags, isEntity] of [
    ['WIPEOUT', 'AcDbWipeout', 127, 1],
    ['WIPEOUTVARIABLES', 'AcDbWipeoutVariables', 0, 0],
  ] as const)
    tags.add([0, 'CLASS'], [1, kind], [2, name], [3, 'WipeOut'], [90, flags], [91, 0], [280, 0], [281, isEntity]);
}

/** Says that no frame is drawn round wipeouts. */
export function addWipeoutVariables(tags: Tags, handle: string, owner: string): void {
  tags.add([0, 'WIPEOUTVARIABLES'], [5, handle], [330, owner], [100, 'AcDbWipeoutVariables'], [70, 0]);
}
