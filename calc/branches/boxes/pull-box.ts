import type { CodeTables } from '../../tables/code-tables.ts';
import { tradeSizeInches } from '../../tables/sizes.ts';
import { SILENT, type Tell } from '../../words/explain.ts';

export interface PullBoxInput {
  /** Trade sizes of raceways whose conductors go straight through. */
  readonly straight?: readonly string[] | undefined;
  /** Trade sizes of raceways on one wall, row by row, whose conductors turn or come back. */
  readonly rows?: readonly (readonly string[])[] | undefined;
}

/**
 * Least length of a pull box, inches, for conductors of 4 AWG and larger (314.28(A)): 8 times the largest straight
 * raceway; from the wall of an angle or U pull to the opposite one, 6 times the largest of a row plus the others of it,
 * for the row that asks most. 0 for a box without raceways. The distance between two raceways of the same conductors is
 * 6 times the larger one besides.
 * @example
 * // NEC 2023 314.28(A): 8 x 3 in. straight through is more than 6 x 2 + 1.25 in. of the row
 * pullBox(NEC, { straight: ['3'], rows: [['2', '1-1/4']] }).length // 24
 */
export function pullBox(tables: CodeTables, input: PullBoxInput, tell: Tell = SILENT): { readonly length: number } {
  const { straightTimes, angleTimes, source } = tables.pullBoxes;
  const straight = Math.max(0, ...(input.straight ?? []).map((size) => straightTimes * tradeSizeInches(size)));
  const rows = (input.rows ?? []).map((row) => {
    const inches = row.map(tradeSizeInches);
    const largest = Math.max(0, ...inches);
    return (angleTimes - 1) * largest + inches.reduce((sum, size) => sum + size, 0);
  });
  const length = Math.max(straight, ...rows);
  if (input.straight !== undefined && input.straight.length > 0)
    tell(() => ({
      find: 'length of a straight pull',
      formula: `${straightTimes} x the largest raceway`,
      values: { raceways: input.straight?.join(', ') ?? '' },
      result: straight,
      unit: 'in',
      source,
    }));
  rows.forEach((inches, at) => {
    tell(() => ({
      find: `length of row ${at + 1}`,
      formula: `${angleTimes} x the largest raceway + the others of its row`,
      values: { raceways: input.rows?.[at]?.join(', ') ?? '' },
      result: inches,
      unit: 'in',
      source,
    }));
  });
  tell(() => ({
    find: 'length of the box',
    formula: 'the greatest of these',
    values: {},
    result: length,
    unit: 'in',
    source,
  }));
  return { length };
}
