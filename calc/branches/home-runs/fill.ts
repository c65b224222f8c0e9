import type { Method } from '../../../routing/site/schema/vocabulary.ts';
import type { CodeTables } from '../../tables/code-tables.ts';
import { conductorArea } from '../../tables/conductor-of.ts';
import { fillLimit, racewayArea, tradeSizes } from '../../tables/raceway-of.ts';
import { tradeSizeInches } from '../../tables/sizes.ts';
import { SILENT, type Tell } from '../../words/explain.ts';
import { measured } from '../../words/measured.ts';

export interface Fill {
  /** Square inches of all conductors over their insulation. */
  readonly conductorArea: number;
  readonly fillPercent: number;
  readonly limitPercent: number;
  /** The one given, or the smallest that fits; the method's largest, with `ok` false, where none does. */
  readonly tradeSize: string;
  readonly ok: boolean;
}

export interface FillInput {
  readonly method: Method;
  /** Grounding and pilot conductors count. `insulation` may be `"bare"`, or a group such as `"TFN/TFFN"`. */
  readonly conductors: readonly { readonly size: string; readonly insulation: string; readonly count: number }[];
  readonly tradeSize?: string | undefined;
  /** Not over 24 in. long (Note 4). */
  readonly nipple?: boolean | undefined;
  /** Smallest trade size that is used at all; the method's smallest where absent. */
  readonly least?: string | undefined;
}

/**
 * How full conductors make a raceway, against Chapter 9 Table 1. RangeError for a tray (Article 392 is not covered) and
 * where the tables lack a conductor or trade size.
 * @example
 * // NEC 2023 Chapter 9 Tables 4 and 5: 6 x 0.0366 + 0.0211 = 0.2407 in² of 0.864 in²
 * fill(NEC, {
 *   method: 'EMT',
 *   conductors: [
 *     { size: '8', insulation: 'THWN-2', count: 6 },
 *     { size: '10', insulation: 'THWN-2', count: 1 },
 *   ],
 * }) // { conductorArea: 0.2407, fillPercent: 27.9, limitPercent: 40, tradeSize: '1', ok: true }
 */
export function fill(tables: CodeTables, input: FillInput, tell: Tell = SILENT): Fill {
  const { method, conductors, nipple = false } = input;
  const area = conductors.reduce(
    (sum, { size, insulation, count }) => sum + count * conductorArea(tables, insulation, size),
    0,
  );
  const count = conductors.reduce((sum, conductor) => sum + conductor.count, 0);
  const limitPercent = fillLimit(tables, count, nipple);
  const percentIn = (tradeSize: string): number => (100 * area) / racewayArea(tables, method, tradeSize);
  // A percent worked from sums of decimals: 40.00000000001 is 40.
  const fits = (tradeSize: string): boolean => percentIn(tradeSize) <= limitPercent + 1e-9;
  const floor = input.least === undefined ? 0 : tradeSizeInches(input.least);
  const sizes = tradeSizes(tables, method).filter((size) => tradeSizeInches(size) >= floor);
  const tradeSize = input.tradeSize ?? sizes.find(fits) ?? sizes.at(-1);
  if (tradeSize === undefined) throw new RangeError(`${tables.edition} tables hold no fill of ${method}`);
  const fillPercent = percentIn(tradeSize);

  tell(() => ({
    find: 'area of the conductors',
    formula: 'sum of count x area over insulation',
    values: Object.fromEntries(
      conductors.map(({ size, insulation, count: many }, at) => [
        `${at + 1}: ${many} of ${size} ${insulation}`,
        measured(conductorArea(tables, insulation, size), 'in² each'),
      ]),
    ),
    result: area,
    unit: 'in²',
    source: tables.insulated.source,
  }));
  tell(() => ({
    find: 'fill limit',
    formula: nipple ? 'raceway not over 24 in. long' : 'limit by the number of conductors',
    values: { conductors: count },
    result: limitPercent,
    unit: '%',
    source: tables.fill.source,
  }));
  tell(() => ({
    find: input.tradeSize === undefined ? 'smallest trade size that fits, and its fill' : 'fill',
    formula: 'area of the conductors / inside area of the raceway',
    values: { raceway: `${method} ${tradeSize}`, inside: measured(racewayArea(tables, method, tradeSize), 'in²') },
    result: fillPercent,
    unit: '%',
    source: tables.raceways.source,
  }));
  return { conductorArea: area, fillPercent, limitPercent, tradeSize, ok: fits(tradeSize) };
}
