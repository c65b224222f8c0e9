import { rectangleAt } from '../../routing/plane/rectangle.ts';
import type { Column, Equipment, Member, Point2, Stall, Vehicle } from '../../routing/site/site.ts';
import { footprintOf } from '../../routing/standing/footprint.ts';
import { parkedRectangle } from '../../routing/standing/parked.ts';

/** An upright body on a convex outline, feet: a car, a column, a cabinet. */
export interface Block {
  readonly list: 'stalls' | 'columns' | 'equipment';
  readonly id: string;
  /** Convex, counter-clockwise. */
  readonly outline: readonly Point2[];
  readonly low: number;
  readonly high: number;
}

/** The car that is taken to stand in a stall, as the box round it. */
export const vehicleBlock = (stall: Stall, vehicle: Vehicle, headClearance: number): Block => ({
  list: 'stalls',
  id: stall.id,
  outline: parkedRectangle(stall, vehicle, headClearance),
  low: 0,
  high: vehicle.height,
});

export const equipmentBlock = (equipment: Equipment): Block => ({
  list: 'equipment',
  id: equipment.id,
  outline: footprintOf(equipment),
  low: 0,
  high: equipment.size[2],
});

/** A column up to `top`, feet. */
export const columnBlock = ({ id, at, size, rotation = 0 }: Column, top: number): Block => ({
  list: 'columns',
  id,
  outline: rectangleAt(at, size, rotation),
  low: 0,
  high: top,
});

/** Height of a column that gives none and under no member, feet. Common practice, no source. */
const USUAL_COLUMN = 10;
/** A member passes over a column that is within this of its middle in plan, feet, beside the column's own size. */
const BESIDE = 1;

/** Members are looked for so far round the middle of a column, feet. */
export const COLUMN_REACH = 6;

/** How high a column stands: as it says, else up to the lowest of some members that pass over it, feet. */
export function columnTop(column: Column, near: readonly Member[]): number {
  if (column.height !== undefined) return column.height;
  const reach = Math.hypot(...column.size) / 2 + BESIDE;
  let top = Number.POSITIVE_INFINITY;
  for (const { from, to } of near) {
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
    const [ox, oy] = [column.at[0] - from[0], column.at[1] - from[1]];
    const square = dx * dx + dy * dy;
    const t = square === 0 ? 0 : Math.min(1, Math.max(0, (ox * dx + oy * dy) / square));
    if (Math.hypot(ox - t * dx, oy - t * dy) <= reach) top = Math.min(top, from[2] + t * (to[2] - from[2]));
  }
  return Number.isFinite(top) && top > 0 ? top : USUAL_COLUMN;
}
