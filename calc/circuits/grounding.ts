import type { Metal } from '../../routing/site/schema/vocabulary.ts';
import type { CodeTables } from '../tables/code-tables.ts';
import { circularMils } from '../tables/conductor-of.ts';
import { groundingSize } from '../tables/protection-of.ts';
import { cited } from '../tables/sections.ts';
import { CONDUCTOR_SIZES, compareSizes } from '../tables/sizes.ts';
import { SILENT, type Tell } from '../words/explain.ts';
import { measured } from '../words/measured.ts';

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
  /** Share by which a conductor may be short of what 250.122(B) asks for; 0, to the letter, where it is not said. */
  readonly slack?: number | undefined;
}

/**
 * What a plan takes as enough of the circular mils that 250.122(B) asks for: whole sizes of one ratio (8 and 6 grown to 4 and
 * 6 AWG) miss one another by rounding of Table 8. Common practice, no source; the letter of the rule knows none.
 */
export const BY_A_HAIR = 0.005;

/**
 * Equipment grounding conductor of a circuit, full size in each raceway of a parallel one (250.122(F)). Conductors
 * grown for voltage drop raise it in proportion of circular mils; those grown for heat or for others beside them do not,
 * so `conductorNeeded` is the size after correction and adjustment.
 * @example
 * // NEC 2023 Table 250.122: 10 AWG copper to 60 A; Chapter 9 Table 8: 10380 x 26240 / 16510 = 16498, within 8 AWG
 * grounding(NEC, { breakerAmps: 40, metal: 'copper' }).size // '10'
 * grounding(NEC, { breakerAmps: 40, metal: 'copper', conductor: '6', conductorNeeded: '8' }).size // '8'
 */
export function grounding(tables: CodeTables, input: GroundingInput, tell: Tell = SILENT): { readonly size: string } {
  const { breakerAmps, metal, conductor, conductorNeeded, sets = 1, setsNeeded = 1, slack = 0 } = input;
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
      : inProportion(
          tables,
          listed,
          { size: conductor, sets },
          { size: conductorNeeded, sets: setsNeeded },
          slack,
          tell,
        );
  if (compareSizes(grown, conductor) <= 0) return { size: grown };
  tell(() => ({
    find: 'grounding conductor',
    formula: 'need be no larger than the conductors of the circuit',
    values: { asked: grown, conductors: conductor },
    result: conductor,
    source: cited(tables, 'grounding'),
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
  slack: number,
  tell: Tell,
): string {
  const area = ({ size, sets }: Paralleled): number => circularMils(tables, size) * sets;
  if (area(installed) <= area(needed)) return listed;
  const mils = (circularMils(tables, listed) * area(installed)) / area(needed);
  // Past the largest size the caller's limit, the conductor itself, holds.
  const size =
    CONDUCTOR_SIZES.find((other) => circularMils(tables, other) >= mils * (1 - Math.max(slack, 1e-12))) ??
    installed.size;
  tell(() => ({
    find: 'grounding conductor grown with the conductors',
    formula: `circular mils by the table x circular mils installed / circular mils needed, then the next size up${slack === 0 ? '' : `, one within ${100 * slack}% of it taken as enough`}`,
    values: {
      table: listed,
      installed: words(installed),
      needed: words(needed),
      'circular mils': measured(mils, 'cmil'),
      'it has': measured(circularMils(tables, size), 'cmil'),
    },
    result: size,
    source: `${cited(tables, 'groundingGrown')}${slack === 0 ? '' : `; ${100 * slack}% is common practice, no source`}`,
  }));
  return size;
}
