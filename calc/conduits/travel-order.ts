import { NO_LENGTH, type Way } from './way.ts';

/** Ways from one piece of equipment, ordered so that neighbours travel together farthest. */
export interface Travel {
  readonly ways: readonly Way[];
  /** `shared[i]`: how far, ft from the entry, ways i and i + 1 are one. Of any two, the least between them counts. */
  readonly shared: readonly number[];
}

/**
 * Orders ways from one entry as one walks the tree that they make: at each fork the boxes right there, then each branch
 * whole. The order does not depend on the order they come in.
 */
export function travelOrder(ways: readonly Way[]): Travel {
  const ordered = [...ways].sort((a, b) => fork(a, b).order);
  const shared: number[] = [];
  for (let i = 0; i + 1 < ordered.length; i++) shared.push(fork(ordered[i]!, ordered[i + 1]!).shared);
  return { ways: ordered, shared };
}

/** How far each of some ways, by their places ascending, goes as one with the next of them, ft. */
export function sharedBetween({ shared }: Travel, places: readonly number[]): readonly number[] {
  const between: number[] = [];
  for (let i = 0; i + 1 < places.length; i++) {
    let least = Infinity;
    for (let place = places[i]!; place < places[i + 1]!; place++) least = Math.min(least, shared[place]!);
    between.push(least);
  }
  return between;
}

/** How far two ways go as one, and which branch comes first where they part. */
function fork(a: Way, b: Way): { readonly shared: number; readonly order: number } {
  let i = 0;
  let j = 0;
  let distance = 0;
  while (i < a.legs.length && j < b.legs.length && sameLeg(a, i, b, j)) {
    const nextA = a.at[i + 1]!;
    const nextB = b.at[j + 1]!;
    distance = Math.min(nextA, nextB);
    if (nextA <= nextB + NO_LENGTH) i++;
    if (nextB <= nextA + NO_LENGTH) j++;
  }
  return { shared: distance, order: branchOrder(a, i, b, j) };
}

/** True where leg i of one way and leg j of the other, which start on one line, go the same way. */
function sameLeg(a: Way, i: number, b: Way, j: number): boolean {
  if (a.legs[i] !== b.legs[j]) return false;
  // Off the raceways two legs are one only where both ends are.
  if (a.legs[i] === '')
    return a.points[i + 1]!.every((value, axis) => Math.abs(value - b.points[j + 1]![axis]!) < 1e-9);
  const u = direction(a, i);
  const v = direction(b, j);
  return u[0] * v[0] + u[1] * v[1] + u[2] * v[2] > 1 - 1e-7;
}

function direction(way: Way, leg: number): readonly [number, number, number] {
  const from = way.points[leg]!;
  const to = way.points[leg + 1]!;
  const length = way.at[leg + 1]! - way.at[leg]!;
  return [(to[0] - from[0]) / length, (to[1] - from[1]) / length, (to[2] - from[2]) / length];
}

/** Boxes at the fork first, by charger; then branches by raceway, then by direction. */
function branchOrder(a: Way, i: number, b: Way, j: number): number {
  const endsA = i + 1 >= a.legs.length && (a.legs[i] ?? '') === '';
  const endsB = j + 1 >= b.legs.length && (b.legs[j] ?? '') === '';
  if (endsA !== endsB) return endsA ? -1 : 1;
  if (!endsA) {
    const byRaceway = compareIds(racewayFrom(a, i), racewayFrom(b, j));
    if (byRaceway !== 0) return byRaceway;
    const u = direction(a, i);
    const v = direction(b, j);
    for (let axis = 0; axis < 3; axis++) {
      const turn = u[axis]! - v[axis]!;
      if (Math.abs(turn) > 1e-6) return turn;
    }
  }
  return compareIds(a.charger.id, b.charger.id);
}

const compareIds = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** The first raceway at or after a leg. */
function racewayFrom(way: Way, leg: number): string {
  for (let i = leg; i < way.legs.length; i++) if (way.legs[i] !== '') return way.legs[i]!;
  return '';
}
