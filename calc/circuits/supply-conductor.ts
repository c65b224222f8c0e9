import type { Metal } from '../../routing/site/schema/vocabulary.ts';
import type { CodeTables } from '../tables/code-tables.ts';
import { circularMils } from '../tables/conductor-of.ts';
import type { SupplyConductorRow } from '../tables/conductor-rows.ts';

/** Largest ungrounded conductor of a supply: of one phase, so many in parallel. */
export interface SupplyConductor {
  readonly size: string;
  readonly metal: Metal;
  /** 1 where it is not said. */
  readonly sets?: number | undefined;
}

/** Circular mils of one phase. RangeError for another word than a size. */
export const supplyMils = (tables: CodeTables, { size, sets = 1 }: SupplyConductor): number =>
  circularMils(tables, size) * sets;

/** `"2 x 500 copper"`. */
export const conductorWords = ({ size, metal, sets = 1 }: SupplyConductor): string =>
  `${sets === 1 ? '' : `${sets} x `}${size} ${metal}`;

/** The first row that goes as far as a conductor; undefined past the last. */
export const rowFor = (
  rows: readonly SupplyConductorRow[],
  mils: number,
  metal: Metal,
): SupplyConductorRow | undefined => rows.find(({ upToMils }) => mils <= (upToMils[metal] ?? Infinity) * (1 + 1e-9));
