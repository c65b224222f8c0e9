import { LINES, type Lines } from '../../../routing/site/schema/vocabulary.ts';
import type { Issued } from '../../../routing/site/site.ts';

/**
 * The lines that spaces of a panel lie on: odd numbers down the left side, even down the right, the lines of `rows` in
 * turn from the top. Null where the spaces do not lie one under another on one side, or are more than the lines.
 * @param spaces numbers from the top
 * @param rows the lines of the panel, `"ABC"` or two of them
 */
export function linesOfSpaces(spaces: readonly number[], rows: string): Lines | null {
  if (spaces.length > rows.length || spaces.some((space, pole) => space !== spaces[0]! + 2 * pole)) return null;
  const letters = spaces.map((space) => rows[Math.floor((space - 1) / 2) % rows.length]!);
  const own = letters.toSorted().join('');
  return LINES.find((lines) => [...lines].sort().join('') === own) ?? null;
}

/**
 * The lines on which a circuit was issued in a panel; undefined where it was not issued there, or on lines it has not.
 * @param rows the lines of the panel, `"ABC"` or two of them
 */
export function issuedLines({ circuits }: Issued, id: string, panel: string, rows: string): Lines | undefined {
  const own = circuits.get(id);
  if (own === undefined || own.panel !== panel) return undefined;
  if (own.spaces === undefined) return own.phases;
  return linesOfSpaces(own.spaces, rows) ?? undefined;
}
