import { distance } from '../../routing/plane/space.ts';
import type { Point3 } from '../../routing/site/site.ts';
import type { ConduitOpening, Piece } from './home-runs/piece.ts';
import { type ConduitWay, NO_LENGTH, pathBetween } from './way.ts';

/**
 * The path of a conduit as it is drawn: along its way, and at a pull point that stands beside the way, or beside where
 * a tap leaves it, on to the box there. The inches to such a box are within the join tolerance and no part of the run, so
 * they count in no length.
 */
export function drawnPath(way: ConduitWay, { from, to, start, end }: Piece): readonly Point3[] {
  const path = pathBetween(way, from, to);
  if (start.place === undefined && end.place === undefined) return path;
  return endingAt(endingAt(path, end).toReversed(), start).toReversed();
}

/** The path, its end drawn to where an opening stands. */
function endingAt(path: readonly Point3[], { place }: ConduitOpening): readonly Point3[] {
  const last = path.at(-1)!;
  if (place === undefined || distance(place, last) <= NO_LENGTH) return path;
  const before = path.at(-2)!;
  const onto = distance(before, place);
  // Short of the end on the last leg: there is no going past the box and back.
  if (onto + distance(place, last) > distance(before, last) + NO_LENGTH) return [...path, place];
  if (onto > NO_LENGTH) return [...path.slice(0, -1), place];
  return path.length > 2 ? [...path.slice(0, -2), place] : [...path, place];
}
