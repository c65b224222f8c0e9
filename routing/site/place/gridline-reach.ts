import { type Box, boxOf } from '../../plane/box.ts';
import { rectangleAt } from '../../plane/rectangle.ts';
import { inPlan } from '../../plane/space.ts';
import type { Point2, Site } from '../site.ts';
import { onGrid } from './grid-frame.ts';

/** What gridlines are lines of, and what is set out from them. */
type Structure = Pick<Site, 'gridlines' | 'columns' | 'members' | 'drops'>;

/**
 * How far the structure reaches as its gridlines measure it, feet: columns, members, and the drops that are set out
 * from the lines. By custom gridlines end a little past it, at their bubbles. Null where none of these stands.
 */
export function gridlineReach({ gridlines, columns, members, drops }: Structure): Box | null {
  const points: Point2[] = [];
  for (const { at, size, rotation = 0 } of columns) points.push(...rectangleAt(at, size, rotation));
  for (const { from, to } of members) points.push(inPlan(from), inPlan(to));
  for (const { box, retractor } of drops) points.push(inPlan(box), inPlan(retractor ?? box));
  return points.length === 0 ? null : boxOf(points.map((point) => onGrid(gridlines, point)));
}
