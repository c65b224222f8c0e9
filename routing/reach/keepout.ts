import { insideOf } from '../plane/obstacle.ts';
import type { Keepout, Point3 } from '../site/site.ts';
import { outlineOf } from '../standing/outlines.ts';

/** A keep-out holds a point: inside its outline, and no lower or higher than it goes. */
export const holdsPoint = (keepout: Keepout, [x, y, z]: Point3): boolean =>
  z >= (keepout.from ?? Number.NEGATIVE_INFINITY) &&
  z <= (keepout.to ?? Number.POSITIVE_INFINITY) &&
  insideOf(outlineOf(keepout), x, y);
