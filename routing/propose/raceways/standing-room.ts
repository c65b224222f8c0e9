import { runsOf } from '../../network/runs.ts';
import { distance } from '../../plane/space.ts';
import type { Equipment, Point3, Site } from '../../site/site.ts';

/** A place this near to a straight, feet, is on it. */
const ON = 1e-3;

/**
 * How many circuits more find room in the conduits that lie between two places of what stands, by the rule of how many share
 * one: circuits of the same equipment alone share conduits, and those that are laid anew leave theirs.
 * @param anew chargers whose ways are sought
 */
export function standingRoom(
  site: Site,
  { id }: Pick<Equipment, 'id'>,
  anew: ReadonlySet<string>,
): (a: Point3, b: Point3) => number {
  const paths = runsOf(site).runs.flatMap(({ charger, from, path }) =>
    from === id && path.length > 1 && !anew.has(charger) ? [path] : [],
  );
  const { circuitsPerConduit } = site.rules;
  return (a, b) => {
    const lie = paths.filter((path) =>
      path.some((to, i) => i > 0 && isOn(a, path[i - 1]!, to) && isOn(b, path[i - 1]!, to)),
    );
    return (circuitsPerConduit - (lie.length % circuitsPerConduit)) % circuitsPerConduit;
  };
}

/** On a straight between two places: the ways to both are no longer than it. */
const isOn = (at: Point3, from: Point3, to: Point3): boolean =>
  distance(from, at) + distance(at, to) - distance(from, to) < ON * ON;
