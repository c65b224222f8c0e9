import type { Metal } from '../../routing/site/schema/vocabulary.ts';
import { ampacityAt } from '../tables/ampacity-of.ts';
import type { CodeTables } from '../tables/code-tables.ts';
import { circularMils } from '../tables/conductor-of.ts';
import { cited } from '../tables/sections.ts';
import { CONDUCTOR_SIZES } from '../tables/sizes.ts';
import { SILENT, type Tell } from '../words/explain.ts';
import { measured } from '../words/measured.ts';
import { conductorWords, rowFor, type SupplyConductor, supplyMils } from './supply-conductor.ts';

export interface BondingInput {
  /** Largest ungrounded conductor of the supply: all that are in parallel for one jumper, one for a jumper in each raceway. */
  readonly conductor: SupplyConductor;
  /** Of the jumper. */
  readonly metal: Metal;
}

export interface BondingJumper {
  /** Null where none of the sizes has so much: a busbar, or one in each raceway. */
  readonly size: string | null;
  /** Circular mils that are asked for past the table; null within it. */
  readonly mils: number | null;
}

/**
 * Main, system or supply-side bonding jumper, and the least grounded conductor of a service, by the largest ungrounded
 * conductor ahead of the first overcurrent device (250.102(C)(1)): the table, past it 12.5% of the circular mils. There
 * a supply of the other metal counts as the size of the jumper's metal with its ampacity at 75 °C.
 * RangeError for a conductor that the tables lack.
 * @example
 * // NEC 2023 Table 250.102(C)(1): over 350 through 600 kcmil copper, 1/0; 4 x 500 x 12.5% = 250 kcmil
 * bondingJumper(NEC, { conductor: { size: '500', metal: 'copper' }, metal: 'copper' }).size // '1/0'
 * bondingJumper(NEC, { conductor: { size: '500', metal: 'copper', sets: 4 }, metal: 'copper' }).size // '250'
 */
export function bondingJumper(tables: CodeTables, input: BondingInput, tell: Tell = SILENT): BondingJumper {
  const { conductor, metal } = input;
  const mils = supplyMils(tables, conductor);
  const { rows, shareBeyond, source } = tables.bondingJumpers;
  const row = rowFor(rows, mils, conductor.metal);
  if (row !== undefined) {
    tell(() => ({
      find: 'bonding jumper by the table',
      formula: 'by the circular mils of the largest ungrounded conductor, those in parallel added up',
      values: { conductor: conductorWords(conductor), 'circular mils': measured(mils, 'cmil'), jumper: metal },
      result: row[metal],
      source,
    }));
    return { size: row[metal], mils: null };
  }
  const counted = conductor.metal === metal ? mils : equalMils(tables, conductor, metal);
  const asked = counted * shareBeyond;
  const size = CONDUCTOR_SIZES.find((other) => circularMils(tables, other) >= asked * (1 - 1e-12)) ?? null;
  tell(() => ({
    find: 'bonding jumper past the table',
    formula: `${100 * shareBeyond}% of the circular mils of the conductors of one phase, then the next size up`,
    values: {
      conductor: conductorWords(conductor),
      'circular mils': measured(mils, 'cmil'),
      ...(counted === mils ? {} : { [`as ${metal} of the same ampacity`]: measured(counted, 'cmil') }),
      'asked for': measured(asked, 'cmil'),
    },
    result: size ?? 'no single conductor: a busbar, or one in each raceway',
    source: `${source}, notes 1 and 2; ${cited(tables, 'bondingJumper')}`,
  }));
  return { size, mils: asked };
}

/** Circular mils of one phase of another metal with no less ampacity at 75 °C; past its sizes in proportion to the largest. */
function equalMils(tables: CodeTables, { size, metal: of, sets = 1 }: SupplyConductor, metal: Metal): number {
  const amps = (one: string, made: Metal): number => ampacityAt(tables, one, made, 75) ?? 0;
  const asked = amps(size, of);
  const largest = CONDUCTOR_SIZES.at(-1)!;
  const equal = CONDUCTOR_SIZES.find((other) => amps(other, metal) >= asked);
  return (
    sets *
    (equal === undefined ? (circularMils(tables, largest) * asked) / amps(largest, metal) : circularMils(tables, equal))
  );
}
