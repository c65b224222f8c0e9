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
  /** Of each in parallel; 1 where it is not said. */
  readonly sets?: number | undefined;
  readonly setsNeeded?: number | undefined;
}

/**
 * A conductor within so much of what is asked for is taken: whole sizes of one ratio (8 and 6 to 4 and 6 AWG) miss one
 * another by rounding of Table 8. Common practice, no source.
 */
const BY_A_HAIR = 0.005;

/**
 * Equipment grounding conductor of a circuit, full size in each raceway of a parallel one (250.122(F)). Conductors
 * grown for voltage drop raise it in proportion of circular mils; those grown for heat or for others beside them do not,
 * so `conductorNeeded` is the size after correction and adjustment.
 */
export function grounding(tables: CodeTables, input: GroundingInput, tell: Tell = SILENT): { readonly size: string } {
  const { breakerAmps, metal, conductor, conductorNeeded, sets = 1, setsNeeded = 1 } = input;
  const listed = groundingSize(tables, breakerAmps, metal);
  tell(() => ({
    find: 'grounding conductor by the table',
    formula: 'smallest size for the rating of the overcurrent device',
    values: { device: measured(breakerAmps, 'A'), metal },
    result: listed,
    source: tables.grounding.source,
  }));
  if (conductor === undefined) return { size: listed };

  const grown =
    conductorNeeded === undefined
      ? listed
      : inProportion(tables, listed, { size: conductor, sets }, { size: conductorNeeded, sets: setsNeeded }, tell);
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

interface Paralleled {
  readonly size: string;
  readonly sets: number;
}

const words = ({ size, sets }: Paralleled): string => (sets === 1 ? size : `${sets} x ${size}`);

function inProportion(
  tables: CodeTables,
  listed: string,
  installed: Paralleled,
  needed: Paralleled,
  tell: Tell,
): string {
  const area = ({ size, sets }: Paralleled): number => circularMils(tables, size) * sets;
  if (area(installed) <= area(needed)) return listed;
  const mils = (circularMils(tables, listed) * area(installed)) / area(needed);
  // Past the largest size the caller's limit, the conductor itself, holds.
  const size = CONDUCTOR_SIZES.find((other) => circularMils(tables, other) >= mils * (1 - BY_A_HAIR)) ?? installed.size;
  tell(() => ({
    find: 'grounding conductor grown with the conductors',
    formula: `circular mils by the table x circular mils installed / circular mils needed, then the next size up, one within ${100 * BY_A_HAIR}% of it taken as enough`,
    values: {
      table: listed,
      installed: words(installed),
      needed: words(needed),
      'circular mils': measured(mils, 'cmil'),
      'it has': measured(circularMils(tables, size), 'cmil'),
    },
    result: size,
    source: `${tables.edition} 250.122(B); ${100 * BY_A_HAIR}% is common practice, no source`,
  }));
  return size;
}
