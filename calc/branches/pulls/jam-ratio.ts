import type { Method } from '../../../routing/site/schema/vocabulary.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { conductorDiameter } from '../../tables/conductor-of.ts';
import { racewayDiameter } from '../../tables/raceway-of.ts';

/**
 * Inside diameter of a raceway over the diameter of one of three equal conductors in it, and whether they are likely to
 * jam at a bend (Chapter 9 Table 1, informational note). RangeError where the tables lack either.
 */
export function jamRatio(
  tables: CodeTables,
  raceway: { readonly method: Method; readonly tradeSize: string },
  conductor: { readonly size: string; readonly insulation: string },
): { readonly ratio: number; readonly likely: boolean } {
  const ratio =
    racewayDiameter(tables, raceway.method, raceway.tradeSize) /
    conductorDiameter(tables, conductor.insulation, conductor.size);
  return { ratio, likely: ratio >= tables.jam.low && ratio <= tables.jam.high };
}
