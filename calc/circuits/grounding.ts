import type { Metal } from '../../routing/site/vocabulary.ts';
import { SILENT, type Tell } from '../explain.ts';
import { measured } from '../measured.ts';
import type { CodeTables } from '../tables/code-tables.ts';
import { CONDUCTOR_SIZES, circularMils, compareSizes, groundingSize } from '../tables/lookup.ts';

export interface GroundingInput {
  readonly breakerAmps: number;
  readonly metal: Metal;
  /** Size installed of the circuit's conductors: the grounding conductor need be no larger (250.122(A)). */
  readonly conductor?: string | undefined;
  /** Size that their load asks for; where `conductor` is larger, the grounding conductor grows with it (250.122(B)). */
  readonly conductorNeeded?: string | undefined;
}

/**
 * Equipment grounding conductor of a circuit, full size in each raceway of a parallel one (250.122(F)). Conductors
 * grown for voltage drop raise it in proportion of circular mils; those grown for heat or for others beside them do not,
 * so `conductorNeeded` is the size after correction and adjustment.
 */
export function grounding(tables: CodeTables, input: GroundingInput, tell: Tell = SILENT): { readonly size: string } {
  const { breakerAmps, metal, conductor, conductorNeeded } = input;
  const listed = groundingSize(tables, breakerAmps, metal);
  tell(() => ({
    find: 'grounding conductor by the table',
    formula: 'smallest size for the rating of the overcurrent device',
    values: { device: measured(breakerAmps, 'A'), metal },
    result: listed,
    source: tables.grounding.source,
  }));
  if (conductor === undefined) return { size: listed };

  const grown = conductorNeeded === undefined ? listed : inProportion(tables, listed, conductor, conductorNeeded, tell);
  if (compareSizes(grown, conductor) <= 0) return { size: grown };
  tell(() => ({
    find: 'grounding conductor',
    formula: 'need be no larger than the conductors of the circuit',
    values: { asked: grown, conductors: conductor },
    result: conductor,
    source: `${tables.edition} 250.122(A)`,
  }));
  return { size: conductor };
}

function inProportion(tables: CodeTables, listed: string, installed: string, needed: string, tell: Tell): string {
  if (compareSizes(installed, needed) <= 0) return listed;
  const mils = (circularMils(tables, listed) * circularMils(tables, installed)) / circularMils(tables, needed);
  // Past the largest size the caller's limit, the conductor itself, holds.
  const size = CONDUCTOR_SIZES.find((other) => circularMils(tables, other) >= mils * (1 - 1e-12)) ?? installed;
  tell(() => ({
    find: 'grounding conductor grown with the conductors',
    formula: 'circular mils by the table x circular mils installed / circular mils needed, then the next size up',
    values: { table: listed, installed, needed, 'circular mils': measured(mils, 'cmil') },
    result: size,
    source: `${tables.edition} 250.122(B)`,
  }));
  return size;
}
