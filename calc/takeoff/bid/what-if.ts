import type { CostSheet } from './cost.ts';

/** What the price would do if something were otherwise. */
export interface WhatIf {
  readonly name: string;
  /** What changes, and by how much: `copper`, 0.2. */
  readonly by: number;
  readonly of: 'copper' | 'labor' | 'line';
  /** Dollars of material and labor in the bill that it changes by that share. */
  readonly material: number;
  readonly labor: number;
  /** Dollars that the price moves by, up with more and down with less. */
  readonly moves: number;
}

/** Shares by which each is changed. Common practice, no source. */
export const WHAT_IF = { copper: 0.2, labor: 0.1, line: 0.1 } as const;
/** So many lines are shown: those that move the price most. */
const MOST = 5;

/**
 * How far the price moves when copper costs a fifth more, an hour a tenth more, and when each of the five lines that move it
 * most is a tenth more: the larger first. By what a dollar of material and of labor comes to in the price; lifts by the
 * day are left as they are.
 */
export function whatIf({ rows, labor, multipliers }: CostSheet): readonly WhatIf[] {
  const one = (name: string, of: WhatIf['of'], material: number, work: number): WhatIf => ({
    name,
    by: WHAT_IF[of],
    of,
    material,
    labor: work,
    moves: WHAT_IF[of] * (material * multipliers.material + work * multipliers.labor),
  });
  const copper = rows.reduce((sum, row) => sum + (/\bcopper\b/.test(row.spec) ? row.material : 0), 0);
  const lines = rows
    .map((row) => one(`${row.item}, ${row.spec}`, 'line', row.material, row.labor))
    .sort((a, b) => b.moves - a.moves)
    .slice(0, MOST);
  return [one('copper', 'copper', copper, 0), one('labor rate', 'labor', 0, labor), ...lines].sort(
    (a, b) => b.moves - a.moves,
  );
}
