import type { Place } from '../../../routing/site/schema/vocabulary.ts';
import type { Piece } from '../home-runs/piece.ts';
import { type ConduitWay, NO_LENGTH } from '../way.ts';

/** Straights of a conduit as distances along its way, each with the turn at its end, degrees; 0 at the last. */
export function straightsOf(
  piece: Piece,
  way: ConduitWay,
): readonly (readonly [from: number, to: number, turn: number])[] {
  const straights: [number, number, number][] = [];
  let from = piece.from;
  for (let i = 1; i < way.turns.length; i++) {
    const at = way.at[i]!;
    if (way.turns[i] === 0 || at <= piece.from + NO_LENGTH || at >= piece.to - NO_LENGTH) continue;
    straights.push([from, at, way.turns[i]!]);
    from = at;
  }
  straights.push([from, piece.to, 0]);
  return straights;
}

function feetWhere(way: ConduitWay, from: number, to: number, holds: (place: Place) => boolean): number {
  let feet = 0;
  for (let leg = 0; leg < way.places.length; leg++)
    if (holds(way.places[leg]!)) feet += Math.max(0, Math.min(to, way.at[leg + 1]!) - Math.max(from, way.at[leg]!));
  return feet;
}

/** Feet between two distances of a way that are not underground. */
export const aboveGround = (way: ConduitWay, from: number, to: number): number => feetWhere(way, from, to, isAbove);

const isAbove = (place: Place): boolean => place !== 'underground';

/** Feet above ground of the longest straight of a conduit: what its change of length with temperature is reckoned from. */
export function longestExposed(piece: Piece, way: ConduitWay): number {
  let longest = 0;
  for (const [from, to] of straightsOf(piece, way)) longest = Math.max(longest, aboveGround(way, from, to));
  return longest;
}
