import type { CodeTables } from '../tables/code-tables.ts';
import type { RacewayKind } from '../tables/table.ts';
import { SILENT, type Tell } from '../words/explain.ts';
import { measured } from '../words/measured.ts';

/** Degrees F of a range in degrees C. */
const F_PER_C = 1.8;
const INCHES_PER_FOOT = 12;

export interface ExpansionInput {
  readonly material: RacewayKind;
  /** Straight run between fixed points, ft. */
  readonly length: number;
  /** From the coldest to the hottest that the raceway gets. */
  readonly temperatureRangeC: number;
}

/**
 * Change of length of a raceway over its temperature range, inches.
 * @example
 * // NEC 2023 Table 352.44: 100 ft of PVC over 100 °F changes by 4.06 in.
 * expansion(NEC, { material: 'PVC', length: 100, temperatureRangeC: 100 / 1.8 }).change // 4.06
 */
export function expansion(tables: CodeTables, input: ExpansionInput, tell: Tell = SILENT): { readonly change: number } {
  const { material, length, temperatureRangeC } = input;
  const perF = tables.expansion.perF[material];
  const rangeF = temperatureRangeC * F_PER_C;
  const change = perF * length * INCHES_PER_FOOT * rangeF;
  tell(() => ({
    find: 'change of length',
    formula: 'growth per degree F x length x range',
    values: {
      material,
      'growth per degree F': perF,
      length: measured(length, 'ft'),
      range: `${measured(temperatureRangeC, '°C')} = ${measured(rangeF, '°F')}`,
    },
    result: change,
    unit: 'in',
    source: tables.expansion.source,
  }));
  return { change };
}

/**
 * Straight length, ft, at which a raceway changes so much that it needs an expansion fitting, 1/4 in. (352.44(A)); the
 * code sets the figure for PVC only. Infinity without a temperature range.
 */
export function fittingLength(tables: CodeTables, material: RacewayKind, temperatureRangeC: number): number {
  return tables.expansion.fittingAt / (tables.expansion.perF[material] * INCHES_PER_FOOT * temperatureRangeC * F_PER_C);
}
