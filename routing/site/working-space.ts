import { direction } from '../plane/direction.ts';
import { type Rectangle, rectangleAt } from '../plane/rectangle.ts';
import type { Equipment } from './site.ts';

/** Depth taken where the site gives none, feet: the least in NEC Table 110.26(A)(1), to 1000 V with nothing opposite. */
export const DEFAULT_WORKING_DEPTH = 3;

/** NEC 110.26(A)(2) and (3), from memory: 30 in wide and 6 1/2 ft high, or as the equipment where that is more. */
const LEAST_WIDTH = 2.5;
const LEAST_HEIGHT = 6.5;

/** The room to stand in, in front of a piece of equipment. Lengths in feet. */
export interface WorkingSpace {
  readonly width: number;
  readonly depth: number;
  readonly height: number;
}

/**
 * Size of the working space of a piece of equipment: as deep as its `workingSpace`, else 3 ft. The source is the
 * utility's and has none unless the site gives one: null.
 */
export function workingSpaceSize({ kind, size, workingSpace }: Equipment): WorkingSpace | null {
  if (workingSpace === undefined && kind === 'source') return null;
  return {
    width: Math.max(size[0], LEAST_WIDTH),
    depth: workingSpace ?? DEFAULT_WORKING_DEPTH,
    height: Math.max(size[2], LEAST_HEIGHT),
  };
}

/**
 * The working space in plan, centred on the front of the equipment; null where it has none. The front is the side
 * towards -y before the equipment is turned by its `rotation`: at 0 degrees one stands below it on the drawing.
 * @param width in place of its own
 */
export function workingSpaceOf(equipment: Equipment, width?: number): Rectangle | null {
  const space = workingSpaceSize(equipment);
  if (!space) return null;
  const { at, size, rotation = 0 } = equipment;
  const [ux, uy] = direction(rotation);
  const out = (size[1] + space.depth) / 2;
  return rectangleAt([at[0] + out * uy, at[1] - out * ux], [width ?? space.width, space.depth], rotation);
}
