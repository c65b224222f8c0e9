import { ascending } from '../../../routing/lists/ascending.ts';
import type { Method } from '../../../routing/site/schema/vocabulary.ts';
import type { Point3 } from '../../../routing/site/site.ts';
import { type ConduitWay, legAt, NO_LENGTH, type PullAt } from '../way.ts';

/** Where a conduit of a home run can be opened, or is only coupled to one of another method in the ground. */
export interface ConduitOpening {
  readonly kind: 'equipment' | 'drop' | 'pullpoint' | 'junction' | 'coupling';
  /** Id of the element; of a junction or a coupling its number within the home run, from 1. */
  readonly id: string;
  /** Where a pull point is drawn: of every home run that it opens, its box stands there. */
  readonly place?: Point3;
}

/** One conduit of a home run: a stretch of one member's way, and the circuits it is shared with. */
export interface Piece {
  /** Index of the member along whose way it is measured. */
  readonly along: number;
  /** Distances from the entry, ft. */
  readonly from: number;
  readonly to: number;
  readonly start: ConduitOpening;
  readonly end: ConduitOpening;
  readonly method: Method;
  /** Some of it lies in the ground. */
  readonly underground: boolean;
  /** Indices of the members in it, ascending. */
  readonly members: readonly number[];
  /** Corners inside it and the sum of their angles, degrees. Turns inside a box are not bends. */
  readonly bends: number;
  readonly bendDegrees: number;
}

/** An opening by which member's it is, not by its name: the same in bundles alike. */
type Place =
  | { readonly kind: 'equipment'; readonly member: number }
  | { readonly kind: 'drop'; readonly member: number }
  | { readonly kind: 'pullpoint'; readonly member: number; readonly pull: number }
  | (ConduitOpening & { readonly kind: 'junction' | 'coupling' });

/** A piece without the names of where it begins and ends: the same in bundles alike. */
export interface ConduitCut extends Omit<Piece, 'start' | 'end'> {
  readonly start: Place;
  readonly end: Place;
}

interface Opened {
  /** First member whose way passes the place, and its distance on it. */
  readonly owner: number;
  readonly at: number;
  readonly place: Place;
}

/** Ways of one home run in travel order, and how far each goes as one with the next, ft. */
interface Bundle {
  readonly ways: readonly ConduitWay[];
  readonly shared: readonly number[];
}

/** How far two members of a bundle go as one, ft; `i` at most `j`. */
function together(shared: readonly number[], i: number, j: number): number {
  let least = Infinity;
  for (let k = i; k < j; k++) least = Math.min(least, shared[k]!);
  return least;
}

/**
 * Cuts the ways of one home run into conduits: at the equipment, the boxes, the pull points, where a member parts from
 * the rest and where the method changes; where it only changes in the ground a coupling does. Each foot that members share is in one piece, and the pieces of a member lie end
 * to end along its way. A pull point within `tolerance`, ft, of another opening is that opening.
 */
export function cutsOf(bundle: Bundle, tolerance: number): readonly ConduitCut[] {
  const { ways, shared } = bundle;
  const opened: Opened[] = [];
  const cuts: ConduitCut[] = [];
  for (let j = 0; j < ways.length; j++) {
    const way = ways[j]!;
    const begin = j === 0 ? 0 : shared[j - 1]!;
    if (way.length - begin <= NO_LENGTH) continue;
    let from = begin;
    let start: Place = begin <= NO_LENGTH ? { kind: 'equipment', member: j } : openingAt(bundle, opened, j, begin);
    for (const { at, pull, coupled } of breaksOf(bundle, j, begin, tolerance)) {
      const end = open(bundle, opened, j, at, pull, coupled && pull === null ? 'coupling' : 'junction');
      cuts.push(cutOf(bundle, j, from, at, start, end));
      from = at;
      start = end;
    }
  }
  return cuts;
}

/** The pieces of a bundle by the cuts of one that is alike. */
export function piecesOf(cuts: readonly ConduitCut[], ways: readonly ConduitWay[]): readonly Piece[] {
  const pieces = new Array<Piece>(cuts.length);
  const pulls = new Map<Place, ConduitOpening>();
  for (let i = 0; i < cuts.length; i++) {
    const { along, from, to, start, end, method, underground, members, bends, bendDegrees } = cuts[i]!;
    const [one, other] = [openingOf(start, ways, pulls), openingOf(end, ways, pulls)];
    pieces[i] = { along, from, to, start: one, end: other, method, underground, members, bends, bendDegrees };
  }
  return pieces;
}

/** The opening of a bundle that is at a place of all that are alike, one for each place. */
function openingOf(place: Place, ways: readonly ConduitWay[], pulls: Map<Place, ConduitOpening>): ConduitOpening {
  if (place.kind === 'equipment') return ways[place.member]!.fedFrom;
  if (place.kind === 'drop') return ways[place.member]!.endsAt;
  if (place.kind !== 'pullpoint') return place;
  const known = pulls.get(place);
  if (known !== undefined) return known;
  const { id, place: at } = ways[place.member]!.pulls[place.pull]!;
  const opening: ConduitOpening = { kind: 'pullpoint', id, place: at };
  pulls.set(place, opening);
  return opening;
}

function cutOf({ ways, shared }: Bundle, j: number, from: number, to: number, start: Place, end: Place): ConduitCut {
  const way = ways[j]!;
  let last = j;
  while (last + 1 < ways.length && together(shared, j, last + 1) >= to - NO_LENGTH) last++;
  const members = Array.from({ length: last + 1 - j }, (_, i) => j + i);
  let leg = 0;
  while (way.at[leg + 1]! <= from + NO_LENGTH) leg++;
  let underground = false;
  for (let i = leg; i < way.places.length && way.at[i]! < to - NO_LENGTH; i++)
    underground ||= way.places[i] === 'underground';
  let bends = 0;
  let bendDegrees = 0;
  for (let i = leg + 1; way.at[i]! < to - NO_LENGTH; i++) {
    if (way.turns[i] === 0) continue;
    bends++;
    bendDegrees += way.turns[i]!;
  }
  return { along: j, from, to, start, end, method: way.methods[leg]!, underground, members, bends, bendDegrees };
}

/** The opening that an earlier member made where member j leaves it. */
function openingAt(bundle: Bundle, opened: Opened[], j: number, at: number): Place {
  for (const other of opened)
    if (Math.abs(other.at - at) <= NO_LENGTH && together(bundle.shared, other.owner, j) >= at - NO_LENGTH)
      return other.place;
  return open(bundle, opened, j, at, null, 'junction');
}

/** Opens the conduit along member j: at the box of whoever's it is, at a pull point, or at what is there `otherwise`. */
function open(
  { ways, shared }: Bundle,
  opened: Opened[],
  j: number,
  at: number,
  pull: PullAt | null,
  otherwise: 'junction' | 'coupling',
): Place {
  let place: Place | null = null;
  for (let i = j; i < ways.length && place === null; i++)
    if (Math.abs(ways[i]!.length - at) <= NO_LENGTH && together(shared, j, i) >= at - NO_LENGTH)
      place = { kind: 'drop', member: i };
  if (place === null && pull !== null) place = { kind: 'pullpoint', member: j, pull: ways[j]!.pulls.indexOf(pull) };
  place ??= { kind: otherwise, id: String(1 + opened.filter((other) => other.place.kind === otherwise).length) };
  opened.push({ owner: j, at, place });
  return place;
}

interface Break {
  readonly at: number;
  /** Pull point there, if it is one. */
  readonly pull: PullAt | null;
  /** Nothing but the method changes there, and in the ground: no box is wanted. */
  readonly coupled: boolean;
}

/** Places after `begin` where conduit along member j ends, in order: partings, changes of method, pull points, the box. */
function breaksOf({ ways, shared }: Bundle, j: number, begin: number, tolerance: number): readonly Break[] {
  const way = ways[j]!;
  const forced: number[] = [];
  const partings: number[] = [];
  let until = Infinity;
  for (let i = j + 1; i < ways.length; i++) {
    until = Math.min(until, shared[i - 1]!);
    if (until <= begin + NO_LENGTH) break;
    if (until < way.length - NO_LENGTH) partings.push(until);
  }
  forced.push(...partings);
  for (const at of way.changes) if (at > begin + NO_LENGTH) forced.push(at);
  forced.push(way.length);
  ascending(forced);
  const isCoupled = (at: number): boolean =>
    at < way.length - NO_LENGTH &&
    partings.every((other) => Math.abs(other - at) > NO_LENGTH) &&
    [legAt(way, at - 2 * NO_LENGTH), legAt(way, at)].every((leg) => way.places[leg] === 'underground');
  const breaks: { at: number; pull: PullAt | null; coupled: boolean }[] = [];
  for (const at of forced)
    if (at - (breaks.at(-1)?.at ?? begin) > NO_LENGTH) breaks.push({ at, pull: null, coupled: isCoupled(at) });
  if (way.pulls.length === 0) return breaks;
  for (const pull of way.pulls) {
    const off = (other: Break): number => Math.abs(other.at - pull.at);
    const near = breaks.filter((other) => off(other) <= tolerance).sort((a, b) => off(a) - off(b))[0];
    if (near !== undefined) near.pull ??= pull;
    else if (pull.at > begin + tolerance) breaks.push({ at: pull.at, pull, coupled: false });
  }
  return breaks.sort((a, b) => a.at - b.at);
}
