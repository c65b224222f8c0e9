import { type ConduitWay, NO_LENGTH } from '../way.ts';

/** Ways from one piece of equipment, ordered so that neighbours travel together farthest. */
export interface Travel {
  readonly ways: readonly ConduitWay[];
  /** `shared[i]`: how far, ft from the entry, ways i and i + 1 are one. Of any two, the least between them counts. */
  readonly shared: readonly number[];
}

/**
 * Orders ways from one entry as one walks the tree that they make, at each fork first those that go on alone, by charger,
 * and the branch that goes farthest last: along a trunk, the boxes as they leave it. The order depends neither on the
 * order they come in nor on where the site lies.
 */
export function travelOrder(ways: readonly ConduitWay[]): Travel {
  const sorted = [...ways].sort((a, b) => fork(a, b).order);
  const together = sorted.slice(1).map((way, i) => fork(sorted[i]!, way).shared);
  return sorted.length === 0 ? { ways: [], shared: [] } : walk(branching(sorted, together));
}

/** A fork of the tree, or the end of one way. */
interface Branch {
  /** Distance of the fork from the entry, ft; Infinity for the end of a way. */
  readonly at: number;
  readonly branches: Branch[];
  readonly way: ConduitWay | null;
  /** Farthest that it goes, ft, and the first of its chargers by id: what branches are ordered by. */
  farthest: number;
  first: string;
}

const endOf = (way: ConduitWay): Branch => {
  return { at: Infinity, branches: [], way, farthest: way.length, first: way.charger.id };
};

function forkOf(at: number, branches: Branch[]): Branch {
  let { farthest, first } = branches[0]!;
  for (const branch of branches) {
    if (branch.farthest > farthest) farthest = branch.farthest;
    if (branch.first < first) first = branch.first;
  }
  return { at, branches, way: null, farthest, first };
}

/** The tree of ways that stand in the order of some walk through it, from how far neighbours go together. */
function branching(sorted: readonly ConduitWay[], together: readonly number[]): Branch {
  // Forks on the path to the last way, each with the branches that are finished; the last of each is still growing.
  const open: { readonly at: number; readonly branches: Branch[] }[] = [];
  let last = endOf(sorted[0]!);
  const close = (at: number): void => {
    while (open.length > 0 && open.at(-1)!.at > at + NO_LENGTH) {
      const { at: place, branches } = open.pop()!;
      branches.push(last);
      last = forkOf(place, branches);
    }
  };
  together.forEach((at, i) => {
    close(at);
    const top = open.at(-1);
    if (top !== undefined && Math.abs(top.at - at) <= NO_LENGTH) top.branches.push(last);
    else open.push({ at, branches: [last] });
    last = endOf(sorted[i + 1]!);
  });
  close(Number.NEGATIVE_INFINITY);
  return last;
}

/** Distances that differ by less, ft, order nothing. */
const LIKE = 1e-6;

/** Walks the tree. By a list of what is left to do, not by calls: a trunk with thousands of boxes is as deep as it is long. */
function walk(root: Branch): Travel {
  const ways: ConduitWay[] = [];
  const shared: number[] = [];
  const left: { readonly branch: Branch; readonly after: number }[] = [{ branch: root, after: 0 }];
  for (let next = left.pop(); next !== undefined; next = left.pop()) {
    const { branch, after } = next;
    if (branch.way !== null) {
      if (ways.length > 0) shared.push(after);
      ways.push(branch.way);
      continue;
    }
    const inOrder = branch.branches.sort(byReach);
    // The first one follows whatever came before this fork; the others part from it here.
    for (let i = inOrder.length - 1; i >= 0; i--)
      left.push({ branch: inOrder[i]!, after: i === 0 ? after : branch.at });
  }
  return { ways, shared };
}

/** Ends of ways first, by charger; then the branches that fork again, the one that goes farthest last. */
function byReach(a: Branch, b: Branch): number {
  const endsA = a.way !== null;
  if (endsA !== (b.way !== null)) return endsA ? -1 : 1;
  const difference = endsA ? 0 : a.farthest - b.farthest;
  return Math.abs(difference) > LIKE ? difference : compareIds(a.first, b.first);
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
function fork(a: ConduitWay, b: ConduitWay): { readonly shared: number; readonly order: number } {
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
function sameLeg(a: ConduitWay, i: number, b: ConduitWay, j: number): boolean {
  if (a.legs[i] !== b.legs[j]) return false;
  // Off the raceways two legs are one only where both ends are.
  if (a.legs[i] === '')
    return a.points[i + 1]!.every((value, axis) => Math.abs(value - b.points[j + 1]![axis]!) < 1e-9);
  const u = direction(a, i);
  const v = direction(b, j);
  return u[0] * v[0] + u[1] * v[1] + u[2] * v[2] > 1 - 1e-7;
}

function direction(way: ConduitWay, leg: number): readonly [number, number, number] {
  const from = way.points[leg]!;
  const to = way.points[leg + 1]!;
  const length = way.at[leg + 1]! - way.at[leg]!;
  return [(to[0] - from[0]) / length, (to[1] - from[1]) / length, (to[2] - from[2]) / length];
}

/** Any order that does not mix the branches of a fork: ends of ways first, then by raceway, then by direction. */
function branchOrder(a: ConduitWay, i: number, b: ConduitWay, j: number): number {
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
function racewayFrom(way: ConduitWay, leg: number): string {
  for (let i = leg; i < way.legs.length; i++) if (way.legs[i] !== '') return way.legs[i]!;
  return '';
}
