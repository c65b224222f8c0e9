import type { Metal } from '../../routing/site/schema/vocabulary.ts';
import type { CodeTables } from '../tables/code-tables.ts';
import { impedance, resistance } from '../tables/conductor-of.ts';
import type { RacewayKind } from '../tables/table.ts';
import type { Tell } from '../words/explain.ts';
import { measured } from '../words/measured.ts';

/**
 * How a drop is worked: `resistance` by Chapter 9 Table 8 alone, `impedance` by Table 9 as R cos + X sin, `exact` by
 * Table 9 with phasors, the current lagging the voltage at the feeding end.
 */
export type DropMethod =
  | { readonly method: 'resistance' }
  | { readonly method: 'impedance' | 'exact'; readonly raceway: RacewayKind; readonly powerFactor: number };

export interface DropConductor {
  readonly size: string;
  readonly metal: Metal;
  /** Conductors in parallel per line; 1 where it is not said. */
  readonly sets?: number;
}

/** Ohms of one line per foot, and the power factor to use them with. RangeError where the tables lack the size. */
export function lineOhmsPerFoot(
  tables: CodeTables,
  conductor: DropConductor,
  by: DropMethod,
  tell: Tell,
): { readonly r: number; readonly x: number; readonly powerFactor: number } {
  const { size, metal, sets = 1 } = conductor;
  if (!(sets >= 1)) throw new RangeError(`sets must be 1 or more, got ${sets}`);
  if (by.method === 'resistance') {
    const r = resistance(tables, size, metal);
    tell(() => ({
      find: 'resistance of one line',
      formula: 'resistance of the conductor / sets in parallel',
      values: { conductor: `${size} ${metal}`, resistance: measured(r, 'ohm per 1000 ft'), sets },
      result: r / sets,
      unit: 'ohm per 1000 ft',
      source: tables.conductors.source,
    }));
    return { r: r / sets / 1000, x: 0, powerFactor: 1 };
  }
  const { r, x } = impedance(tables, size, metal, by.raceway);
  tell(() => ({
    find: 'resistance and reactance of one line',
    formula: 'of the conductor in its raceway / sets in parallel',
    values: {
      conductor: `${size} ${metal}`,
      raceway: by.raceway,
      resistance: measured(r, 'ohm per 1000 ft'),
      reactance: measured(x, 'ohm per 1000 ft'),
      sets,
    },
    result: `${r / sets} + j${x / sets}`,
    unit: 'ohm per 1000 ft',
    source: tables.impedances.source,
  }));
  return { r: r / sets / 1000, x: x / sets / 1000, powerFactor: by.powerFactor };
}
