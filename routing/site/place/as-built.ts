import { distance } from '../../plane/space.ts';
import type { AsBuilt, Drop, Point3 } from '../site.ts';

type Places = Pick<Drop, 'box' | 'retractor'>;

/**
 * A drop with what was measured in place of what is drawn, in the units of both. A retractor that was not measured is
 * taken to hang from its box as it is drawn to; the drop itself where nothing was measured.
 */
export function dropAsBuilt<D extends Places>(drop: D, found: AsBuilt | undefined): D {
  if (!found?.box && !found?.retractor) return drop;
  const box = found.box ?? drop.box;
  if (!drop.retractor) return { ...drop, box };
  return { ...drop, box, retractor: found.retractor ?? shifted(drop.retractor, drop.box, box) };
}

/** A place moved as far as another was. */
const shifted = (place: Point3, from: Point3, to: Point3): Point3 =>
  from === to ? place : [place[0] + to[0] - from[0], place[1] + to[1] - from[1], place[2] + to[2] - from[2]];

/** How far box and retractor were built from where they are drawn, in the units of the drop; the greater of the two. */
export function awayFromDrawing(drop: Places, found: AsBuilt | undefined): number {
  const built = dropAsBuilt(drop, found);
  return Math.max(
    distance(built.box, drop.box),
    built.retractor && drop.retractor ? distance(built.retractor, drop.retractor) : 0,
  );
}
