import { direction } from '../../plane/direction.ts';
import { overlapDepth } from '../../plane/overlap-depth.ts';
import { type Rectangle, rectangleAt } from '../../plane/rectangle.ts';
import type { Point2 } from '../../site/site.ts';

/** Clear floor space for a person in a wheelchair, feet: 30 x 48 in (2010 ADA Standards 305.3). */
const SHORT = 2.5;
const LONG = 4;
/** Deepest side reach, feet (308.3.2); and how finely it is looked for. */
const DEEPEST = 2;
const STEP = 1 / 12;
/** The place may be beside the middle of the floor space by so much, feet. Common practice, no source. */
const ALONG = [0, -1, 1];

/**
 * The least depth of reach, feet, head on or to the side, from a clear floor space of 30 x 48 in that lies in nothing of `standing`, to what is
 * operated at a place; null where no such space lies within 24 in. `face` is how far the thing's own face stands out from
 * the place; null for what hangs free, over the floor space too. Floor spaces lie along a heading or across it, degrees.
 */
export function sideReach(
  at: Point2,
  face: number | null,
  heading: number,
  standing: readonly (readonly Point2[])[],
): number | null {
  // Head on, the floor space comes up to it: nothing is reached over.
  const isClear = (floor: Rectangle): boolean => standing.every((one) => overlapDepth(floor, one) < 0.01);
  const turns = [0, 90, 180, 270].map((turn) => heading + turn);
  if (turns.some((turn) => isClear(floorAt(at, turn, face ?? 0, 0, [SHORT, LONG])))) return 0;
  const first = face === null ? -SHORT / 2 : 0;
  for (let depth = first; depth <= DEEPEST + 1e-9; depth += STEP)
    for (const turn of turns)
      for (const along of ALONG)
        if (isClear(floorAt(at, turn, (face ?? 0) + depth, along, [LONG, SHORT]))) return Math.max(0, depth);
  return null;
}

/** A floor space to the right of a place as one faces along a heading: its near edge so far off. */
function floorAt(
  [x, y]: Point2,
  heading: number,
  off: number,
  along: number,
  [wide, deep]: readonly [number, number],
): Rectangle {
  const [ux, uy] = direction(heading);
  const out = off + deep / 2;
  return rectangleAt([x + out * uy + along * ux, y - out * ux + along * uy], [wide, deep], heading);
}
