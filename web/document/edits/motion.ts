import { direction } from '../../../routing/plane/direction.ts';
import type { Point2, Point3 } from '../../../routing/site/site.ts';
import type { Element, ElementOf, ListName } from '../element-lists.ts';
import { tidy } from '../file-lengths.ts';

/** A rigid motion of the plane, in the file's units, with a lift. */
export interface Motion {
  readonly point: (at: Point2) => Point2;
  /** The direction, degrees, of what pointed this way before. */
  readonly direction: (degrees: number) => number;
  readonly lift: number;
  /** Left and right change places. */
  readonly mirrors: boolean;
}

export const shift = (dx: number, dy: number, dz = 0): Motion => ({
  point: ([x, y]) => [tidy(x + dx), tidy(y + dy)],
  direction: (degrees) => degrees,
  lift: dz,
  mirrors: false,
});

/** Turned counter-clockwise about a point. */
export function turn(about: Point2, degrees: number): Motion {
  const [cos, sin] = direction(degrees);
  return {
    point: ([x, y]) => {
      const dx = x - about[0];
      const dy = y - about[1];
      return [tidy(about[0] + dx * cos - dy * sin), tidy(about[1] + dx * sin + dy * cos)];
    },
    direction: (was) => turned(was + degrees),
    lift: 0,
    mirrors: false,
  };
}

/** Mirrored in the line through a point in a direction. */
export function mirrored(through: Point2, degrees: number): Motion {
  const [cos, sin] = direction(2 * degrees);
  return {
    point: ([x, y]) => {
      const dx = x - through[0];
      const dy = y - through[1];
      return [tidy(through[0] + dx * cos + dy * sin), tidy(through[1] + dx * sin - dy * cos)];
    },
    direction: (was) => turned(2 * degrees - was),
    lift: 0,
    mirrors: true,
  };
}

const turned = (degrees: number): number => tidy(((degrees % 360) + 360) % 360);

const inSpace = (motion: Motion, [x, y, z]: Point3): Point3 => {
  const [mx, my] = motion.point([x, y]);
  return [mx, my, motion.lift === 0 ? z : tidy(z + motion.lift)];
};

// A rectangle turned half round covers the same ground, but what has a face (its local -y) must keep it in front.
function rotation(motion: Motion, was: number | undefined): { readonly rotation?: number } {
  const now = motion.mirrors ? turned(motion.direction(was ?? 0) + 180) : motion.direction(was ?? 0);
  return was === undefined && now === 0 ? {} : { rotation: now };
}

const MOVERS: { readonly [L in ListName]?: (element: ElementOf<L>, motion: Motion) => ElementOf<L> } = {
  stalls: (stall, motion) => ({ ...stall, at: motion.point(stall.at), heading: motion.direction(stall.heading) }),
  columns: (column, motion) => ({ ...column, at: motion.point(column.at), ...rotation(motion, column.rotation) }),
  members: (member, motion) => ({ ...member, from: inSpace(motion, member.from), to: inSpace(motion, member.to) }),
  keepouts: (keepout, motion) => ({ ...keepout, outline: keepout.outline.map(motion.point) }),
  aisles: (aisle, motion) => ({ ...aisle, outline: aisle.outline.map(motion.point) }),
  equipment: (equipment, motion) => ({
    ...equipment,
    at: motion.point(equipment.at),
    ...rotation(motion, equipment.rotation),
    entry: inSpace(motion, equipment.entry),
  }),
  raceways: (raceway, motion) => ({ ...raceway, path: raceway.path.map((at) => inSpace(motion, at)) }),
  pullpoints: (pullpoint, motion) => ({ ...pullpoint, at: inSpace(motion, pullpoint.at) }),
  drops: (drop, motion) => ({
    ...drop,
    box: inSpace(motion, drop.box),
    ...(drop.retractor && { retractor: inSpace(motion, drop.retractor) }),
  }),
};

/** Whether the elements of a list have a place of their own; feeders, loads and chargers stand where others stand. */
export const hasPlace = (list: ListName): boolean => MOVERS[list] !== undefined;

/** An element, in the file's units, after a motion; one without a place of its own as it was. */
export function moved(list: ListName, element: Element, motion: Motion): Element {
  const mover = MOVERS[list] as ((element: Element, motion: Motion) => Element) | undefined;
  return mover ? mover(element, motion) : element;
}
