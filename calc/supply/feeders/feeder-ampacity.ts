import type { Feeder } from '../../../routing/site/site.ts';
import { ampacity, terminalColumnOf } from '../../circuits/ampacity.ts';
import { ampacityAt, insulationColumn } from '../../tables/ampacity-of.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { cited } from '../../tables/sections.ts';
import type { TemperatureColumn } from '../../tables/table.ts';
import { SILENT, type Tell } from '../../words/explain.ts';
import { measured } from '../../words/measured.ts';

/** Conductors that carry current in a raceway of one set alone: three lines; the neutral carries only what they differ by. */
export const CARRYING = 3;

/** What a feeder's conductors can carry, A, all sets together. */
export interface FeederAmpacity {
  /** In the column of the terminals, before correction: 125% of continuous load must be within it. */
  readonly atTerminals: number;
  /** Corrected for where they lie, and no more than the terminals allow: the load itself must be within it. */
  readonly ampacity: number;
}

/**
 * What the conductors of a feeder can carry where they lie, three of them with current in each raceway unless the file says more: before correction
 * at the terminals, and after it (215.2(A)(1), 310.15, 110.14(C)). Null where the tables hold no such conductor.
 * @param ambientC of the hottest stretch
 */
export function feederAmpacity(
  tables: CodeTables,
  { sets, currentCarrying = CARRYING, ...conductor }: Feeder['conductor'],
  ambientC: number,
  terminalC: TemperatureColumn,
  tell: Tell = SILENT,
): FeederAmpacity | null {
  const one = ampacity(tables, { conductor, ambientC, currentCarrying, terminalC }, tell);
  if (one === null) return null;
  const column = terminalColumnOf(terminalC, insulationColumn(tables, conductor.insulation));
  const atTerminals = (ampacityAt(tables, conductor.size, conductor.metal, column) ?? one.ampacity) * sets;
  if (sets > 1)
    tell(() => ({
      find: 'ampacity of all sets',
      formula: 'ampacity x sets',
      values: { ampacity: measured(one.ampacity, 'A'), sets },
      result: one.ampacity * sets,
      unit: 'A',
      source: `${cited(tables, 'parallel')} (from memory)`,
    }));
  return { atTerminals, ampacity: one.ampacity * sets };
}
