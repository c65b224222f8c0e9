import { direction } from '../../plane/direction.ts';
import type { Point2, Site } from '../site.ts';

/** The turn and the origin of a site's gridlines. */
type GridFrame = Pick<Site['gridlines'], 'rotation' | 'origin'>;

const ZERO: Point2 = [0, 0];

/** Whether gridlines lie square to the axes of the site and are measured from its origin, as they mostly are. */
export const isPlainGrid = ({ rotation = 0, origin = ZERO }: GridFrame): boolean =>
  rotation % 360 === 0 && origin[0] === 0 && origin[1] === 0;

/**
 * A place as it is set out, feet: as the gridlines measure it, or as the site does where there are none. The place
 * itself where they lie square to the site's axes and are measured from its origin.
 */
export const setOutPlace = (gridlines: Site['gridlines'], at: Point2): Point2 =>
  gridlines.x.length + gridlines.y.length === 0 ? at : onGrid(gridlines, at);

/**
 * A place of the site as its gridlines measure it, feet: how far along their x and their y from their origin. The
 * place itself where they are neither turned nor moved.
 */
export function onGrid(grid: GridFrame, at: Point2): Point2 {
  if (isPlainGrid(grid)) return at;
  const [cos, sin] = direction(grid.rotation ?? 0);
  const [ox, oy] = grid.origin ?? ZERO;
  const [dx, dy] = [at[0] - ox, at[1] - oy];
  return [dx * cos + dy * sin, dy * cos - dx * sin];
}

/** The place of the site that gridlines measure so: the inverse of `onGrid`. */
export function offGrid(grid: GridFrame, [u, v]: Point2): Point2 {
  if (isPlainGrid(grid)) return [u, v];
  const [cos, sin] = direction(grid.rotation ?? 0);
  const [ox, oy] = grid.origin ?? ZERO;
  return [ox + u * cos - v * sin, oy + u * sin + v * cos];
}

/** The ways of the site that the x and the y of its gridlines run, of length 1. */
export function gridWays({ rotation = 0 }: GridFrame): readonly [x: Point2, y: Point2] {
  const [cos, sin] = direction(rotation);
  return [
    [cos, sin],
    [sin === 0 ? 0 : -sin, cos],
  ];
}
