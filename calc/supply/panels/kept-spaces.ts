import type { Lines } from '../../../routing/site/schema/vocabulary.ts';
import { linesOfSpaces } from '../tree/issued-lines.ts';
import { spacesFor } from './panel-spaces.ts';

/** Rows past the last that is used in which a breaker that lost its spaces finds new ones, whatever its lines. */
const ROWS_PAST = 6;

/**
 * Spaces for the breakers of a panel of which some were issued. One that was issued has its spaces where they are in the
 * panel, on its lines and not taken by one before it; every other stands where `spacesFor` has it when none is issued,
 * so that moving one moves no other; what lost its place takes the first free spaces on its lines. An empty list for a
 * breaker that finds no room.
 * @param breakers lines of each
 * @param dealt lines that each would have if none were issued
 * @param issued spaces of each; empty where none were
 * @param rows the lines of the panel, `"ABC"` or two of them
 * @param spaces of the panel; undefined for as many as it takes
 */
export function keptSpaces(
  breakers: readonly Lines[],
  dealt: readonly Lines[],
  issued: readonly (readonly number[])[],
  rows: string,
  spaces: number | undefined,
): readonly (readonly number[])[] {
  const base = spacesFor(dealt, rows, spaces);
  const isAsDealt = breakers.every((lines, i) => lines === dealt[i]);
  if (isAsDealt && issued.every((own) => own.length === 0)) return base;
  const taken = new Set<number>();
  const result: (readonly number[] | null)[] = breakers.map(() => null);
  const take = (i: number, own: readonly number[]): boolean => {
    const fits =
      own.length === breakers[i]!.length &&
      linesOfSpaces(own, rows) === breakers[i] &&
      own.every((space) => space <= (spaces ?? Infinity) && !taken.has(space));
    if (!fits) return false;
    result[i] = own;
    for (const space of own) taken.add(space);
    return true;
  };
  issued.forEach((own, i) => {
    if (own.length > 0) take(i, own);
  });
  base.forEach((own, i) => {
    if (result[i] === null && own.length > 0) take(i, own);
  });
  const last = Math.min(spaces ?? Infinity, Math.max(0, ...base.flat(), ...taken) + 2 * breakers.length * ROWS_PAST);
  breakers.forEach(({ length: poles }, i) => {
    for (let space = 1; result[i] === null && space + 2 * (poles - 1) <= last; space++)
      take(
        i,
        Array.from({ length: poles }, (_, pole) => space + 2 * pole),
      );
  });
  return result.map((own) => own ?? []);
}
