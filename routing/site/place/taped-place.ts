import type { Gridline, Point2, Point3, Site } from '../site.ts';
import { nearestGridline } from './from-gridlines.ts';
import { offGrid, setOutPlace } from './grid-frame.ts';

/** The two ways in which gridlines count: `x` along the row of lines 1, 2, 3, `y` across it. */
export type TapeAxis = 'x' | 'y';

const AXIS = { x: 0, y: 1 } as const;

/** How far a place lies past a gridline of an axis, feet; negative before it. From the origin of the lines without one. */
export const tapedFrom = (gridlines: Site['gridlines'], at: Point3, axis: TapeAxis, line: Gridline | null): number =>
  setOutPlace(gridlines, [at[0], at[1]])[AXIS[axis]] - (line?.at ?? 0);

/**
 * The place that lies so far past a gridline of an axis, feet, and is otherwise where `at` is: what the tape reads, put
 * into the coordinates of the site. The inverse of `tapedFrom`, on turned gridlines too.
 */
export function placeTaped(
  gridlines: Site['gridlines'],
  at: Point3,
  axis: TapeAxis,
  line: Gridline | null,
  offset: number,
): Point3 {
  const [u, v] = setOutPlace(gridlines, [at[0], at[1]]);
  const value = (line?.at ?? 0) + offset;
  const onLines: Point2 = axis === 'x' ? [value, v] : [u, value];
  const [x, y] = gridlines.x.length + gridlines.y.length === 0 ? onLines : offGrid(gridlines, onLines);
  return [x, y, at[2]];
}

/** The gridline of an axis from which setting-out measures a place; null where the axis has none. */
export const settingOutLine = (gridlines: Site['gridlines'], at: Point3, axis: TapeAxis): Gridline | null =>
  nearestGridline(gridlines[axis], tapedFrom(gridlines, at, axis, null));
