import { direction } from '../../plane/direction.ts';
import { type Rectangle, rectangleAt } from '../../plane/rectangle.ts';
import type { Equipment } from '../site.ts';

/** The room to stand in, in front of a piece of equipment. Lengths in feet. */
export interface WorkingSpace {
  readonly width: number;
  readonly depth: number;
  readonly height: number;
}

/** The source is the utility's and has no working space unless the site gives one. */
export const hasWorkingSpace = ({ kind, workingSpace }: Equipment): boolean =>
  workingSpace !== undefined || kind !== 'source';

/**
 * Size of the working space of a piece of equipment: as deep as its `workingSpace`, as wide and high as it is itself; no
 * less than `least` in width and height, nor in depth where the site gives none. Null where it has none.
 */
export function workingSpaceSize(equipment: Equipment, least: WorkingSpace): WorkingSpace | null {
  if (!hasWorkingSpace(equipment)) return null;
  const { size, workingSpace } = equipment;
  return {
    width: Math.max(size[0], least.width),
    depth: workingSpace ?? least.depth,
    height: Math.max(size[2], least.height),
  };
}

/**
 * The working space in plan, centred on the front of the equipment; null where it has none. The front is the side
 * towards -y before the equipment is turned by its `rotation`: at 0 degrees one stands below it on the drawing.
 */
export function workingSpaceOf(equipment: Equipment, least: WorkingSpace): Rectangle | null {
  const space = workingSpaceSize(equipment, least);
  return space && spaceBefore(equipment, space);
}

/** A space of a given size in plan, centred on the front of a piece of equipment. */
export function spaceBefore(equipment: Equipment, space: WorkingSpace): Rectangle {
  const { at, size, rotation = 0 } = equipment;
  const [ux, uy] = direction(rotation);
  const out = (size[1] + space.depth) / 2;
  return rectangleAt([at[0] + out * uy, at[1] - out * ux], [space.width, space.depth], rotation);
}
