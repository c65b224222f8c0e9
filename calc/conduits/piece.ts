import type { Method } from '../../routing/site/vocabulary.ts';
import { NO_LENGTH, type Way } from './way.ts';

/** Where a conduit of a home run can be opened. */
export interface Opening {
  readonly kind: 'equipment' | 'drop' | 'pullpoint' | 'junction';
  /** Id of the element; of a junction its number within the home run, from 1. */
  readonly id: string;
}

/** One conduit of a home run: a stretch of one member's way, and who else is in it. */
export interface Piece {
  /** Index of the member along whose way it is measured. */
  readonly along: number;
  /** Distances from the entry, ft. */
  readonly from: number;
  readonly to: number;
  readonly start: Opening;
  readonly end: Opening;
  readonly method: Method;
  /** Indices of the members in it, ascending. */
  readonly members: readonly number[];
  /** Corners inside it and the sum of their angles, degrees. Turns inside a box are not bends. */
  readonly bends: number;
  readonly bendDegrees: number;
}

interface Node {
  /** First member whose way passes the place, and its distance on it. */
  readonly owner: number;
  readonly at: number;
  readonly opening: Opening;
}

/**
 * Cuts the ways of one home run, in travel order, into conduits: at the equipment, the boxes, the pull points, where a
 * member parts from the rest and where the method changes. Each foot that members share is in one piece, and the pieces
 * of a member lie end to end along its way. `shared[i]`: how far members i and i + 1 go as one, ft. A pull point within
 * `tolerance` of another opening is that opening.
 */
export function piecesOf(ways: readonly Way[], shared: readonly number[], tolerance: number): readonly Piece[] {
  const nodes: Node[] = [];
  const pieces: Piece[] = [];
  let junctions = 0;
  const together = (i: number, j: number): number => {
    let least = Infinity;
    for (let k = i; k < j; k++) least = Math.min(least, shared[k]!);
    return least;
  };

  ways.forEach((way, j) => {
    const begin = j === 0 ? 0 : Math.min(shared[j - 1]!, way.length);
    if (way.length - begin <= NO_LENGTH) return;
    const ends: number[] = [];
    for (let i = j + 1; i < ways.length; i++) {
      const until = together(j, i);
      if (until > begin + NO_LENGTH && until < way.length - NO_LENGTH) ends.push(until);
    }
    const openings = openingsAlong(way, begin, ends, tolerance);
    let start = begin <= NO_LENGTH ? atEquipment(way) : openingAt(begin, j);
    openings.push({ at: way.length, id: null });
    let from = begin;
    for (const { at, id } of openings) {
      const end = opened(at, j, id);
      pieces.push({
        along: j,
        from,
        to: at,
        start,
        end,
        method: methodAfter(way, from),
        members: ways.flatMap((_, i) => (i === j || (i > j && together(j, i) >= at - NO_LENGTH) ? [i] : [])),
        ...bendsBetween(way, from, at),
      });
      from = at;
      start = end;
    }
  });
  return pieces;

  /** The opening that an earlier member made where member j leaves it. */
  function openingAt(at: number, j: number): Opening {
    const node = nodes.find(
      (other) => Math.abs(other.at - at) <= NO_LENGTH && together(other.owner, j) >= at - NO_LENGTH,
    );
    return node?.opening ?? opened(at, j, null);
  }

  function opened(at: number, j: number, pull: string | null): Opening {
    const box = ways.find(
      (way, i) => i >= j && Math.abs(way.length - at) <= NO_LENGTH && together(j, i) >= at - NO_LENGTH,
    );
    const opening: Opening =
      box !== undefined
        ? { kind: 'drop', id: box.charger.drop }
        : pull !== null
          ? { kind: 'pullpoint', id: pull }
          : { kind: 'junction', id: String(++junctions) };
    nodes.push({ owner: j, at, opening });
    return opening;
  }
}

const atEquipment = (way: Way): Opening => ({ kind: 'equipment', id: way.charger.from });

interface Break {
  readonly at: number;
  /** Pull point there, if it is one. */
  readonly id: string | null;
}

/** Places between `begin` and the box where conduit ends, in order: partings, changes of method, pull points. */
function openingsAlong(way: Way, begin: number, partings: readonly number[], tolerance: number): Break[] {
  const forced = [...partings];
  for (let leg = 1; leg < way.legs.length; leg++) {
    const at = way.at[leg]!;
    if (way.methods[leg] !== way.methods[leg - 1] && at > begin + NO_LENGTH) forced.push(at);
  }
  forced.sort((a, b) => a - b);
  const breaks: { at: number; id: string | null }[] = [];
  for (const at of forced) if (at - (breaks.at(-1)?.at ?? begin) > NO_LENGTH) breaks.push({ at, id: null });
  for (const pull of way.pulls) {
    const near = breaks.find((other) => Math.abs(other.at - pull.at) <= tolerance);
    if (near !== undefined) near.id ??= pull.id;
    else if (pull.at > begin + tolerance) breaks.push({ at: pull.at, id: pull.id });
  }
  return breaks.sort((a, b) => a.at - b.at);
}

function methodAfter(way: Way, distance: number): Method {
  const leg = way.legs.findIndex((_, i) => way.at[i + 1]! > distance + NO_LENGTH);
  return way.methods[leg]!;
}

function bendsBetween(way: Way, from: number, to: number): { readonly bends: number; readonly bendDegrees: number } {
  let bends = 0;
  let bendDegrees = 0;
  way.turns.forEach((turn, i) => {
    if (turn === 0 || way.at[i]! <= from + NO_LENGTH || way.at[i]! >= to - NO_LENGTH) return;
    bends++;
    bendDegrees += turn;
  });
  return { bends, bendDegrees };
}
