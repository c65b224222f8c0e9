import type { CodeTables } from '../../tables/code-tables.ts';
import type { BranchEnd } from './branch-ends.ts';
import { fullLineAmps, type LoadWish } from './charger-amps.ts';
import type { PanelWeights } from './panel-weights.ts';

/** How the chargers of new panels are run, in words. */
export function loadWords(
  load: LoadWish,
  ends: readonly BranchEnd[],
  panels: number,
  weights: PanelWeights,
  tables: CodeTables,
): readonly string[] {
  if (panels === 0) return [];
  const chargers = ends.reduce((sum, { circuits }) => sum + circuits, 0);
  const full = fullLineAmps(tables, chargers).toFixed(0);
  const held = weights.lineAmps([chargers]).toFixed(0);
  switch (load.kind) {
    case 'full':
      return ['All chargers run at full rate at once.'];
    case 'energy':
      return [
        `Load management: at least ${load.kwh} kWh in ${load.hours} hours for each car, ${held} A a line in place of ${full} A.`,
      ];
    case 'ceiling':
      return [`Load management: the lot is held to ${load.amps} A a line, in place of ${full} A.`];
  }
}
