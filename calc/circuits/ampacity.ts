import { printTemperature } from '../../routing/site/numbers/temperature.ts';
import type { Metal } from '../../routing/site/schema/vocabulary.ts';
import { ambientFactor, ampacityAt, bundlingFactor, insulationColumn } from '../tables/ampacity-of.ts';
import type { CodeTables } from '../tables/code-tables.ts';
import { cited } from '../tables/sections.ts';
import type { TemperatureColumn } from '../tables/table.ts';
import { SILENT, type Tell } from '../words/explain.ts';
import { measured } from '../words/measured.ts';

export interface PowerConductor {
  readonly size: string;
  readonly metal: Metal;
  readonly insulation: string;
}

/** Where a conductor runs. */
export interface Surroundings {
  readonly ambientC: number;
  /** Conductors that carry current in its raceway; grounding and pilot conductors do not count. */
  readonly currentCarrying: number;
}

export interface Ampacity {
  /** In the column of the insulation. */
  readonly tableAmpacity: number;
  readonly temperatureFactor: number;
  readonly bundlingFactor: number;
  /** After the factors and the limit of the terminals. */
  readonly ampacity: number;
}

/** The column that terminals allow a conductor: theirs, or its insulation's where that is lower. */
export const terminalColumnOf = (terminalC: TemperatureColumn, insulation: TemperatureColumn): TemperatureColumn =>
  Math.min(terminalC, insulation) as TemperatureColumn;

/**
 * Ampacity of one conductor: from the column of its insulation, corrected for ambient and for others beside it
 * (310.15), and, where `terminalC` is given, no more than the terminals' column allows (110.14(C)). Null where the table
 * has no figure for the conductor, as for 14 AWG aluminum. 0 past the ambient table.
 * @example
 * // NEC 2023 Table 310.16: 8 AWG copper has 55 A at 90 °C and 50 A at 75 °C, the terminals' limit
 * ampacity(NEC, {
 *   conductor: { size: '8', metal: 'copper', insulation: 'THWN-2' },
 *   ambientC: 30,
 *   currentCarrying: 2,
 *   terminalC: 75,
 * }).ampacity // 50
 */
export function ampacity(
  tables: CodeTables,
  input: Surroundings & { readonly conductor: PowerConductor; readonly terminalC?: TemperatureColumn | undefined },
  tell: Tell = SILENT,
): Ampacity | null {
  const { conductor, ambientC, currentCarrying, terminalC } = input;
  const { size, metal, insulation } = conductor;
  const column = insulationColumn(tables, insulation);
  const tableAmpacity = ampacityAt(tables, size, metal, column);
  if (tableAmpacity === null) return null;
  const temperatureFactor = ambientFactor(tables, column, ambientC);
  const bundling = bundlingFactor(tables, currentCarrying);
  const corrected = tableAmpacity * temperatureFactor * bundling;
  tell(() => ({
    find: 'table ampacity',
    formula: 'ampacity of the size in the column of its insulation',
    values: { conductor: `${size} ${metal} ${insulation}`, column: `${column} °C` },
    result: tableAmpacity,
    unit: 'A',
    source: tables.ampacity.source,
  }));
  tell(() => ({
    find: 'ambient factor',
    formula: 'factor of the ambient in the same column',
    values: { ambient: printTemperature(ambientC), column: `${column} °C` },
    result: temperatureFactor,
    source: tables.ambient.source,
  }));
  tell(() => ({
    find: 'bundling factor',
    formula: 'factor of the conductors that carry current in the raceway',
    values: { 'current-carrying conductors': currentCarrying },
    result: bundling,
    source: tables.bundling.source,
  }));
  tell(() => ({
    find: 'corrected ampacity',
    formula: 'table ampacity x ambient factor x bundling factor',
    values: { 'table ampacity': measured(tableAmpacity, 'A'), ambient: temperatureFactor, bundling },
    result: corrected,
    unit: 'A',
    source: cited(tables, 'ampacity'),
  }));
  const result = { tableAmpacity, temperatureFactor, bundlingFactor: bundling };
  if (terminalC === undefined) return { ...result, ampacity: corrected };

  const terminals = terminalColumnOf(terminalC, column);
  // A lower column has a figure wherever a higher one has, but for 18 and 16 AWG, which end at no terminal of ours.
  const limit = ampacityAt(tables, size, metal, terminals) ?? corrected;
  const capped = Math.min(corrected, limit);
  tell(() => ({
    find: 'ampacity',
    formula: 'the lesser of the corrected ampacity and that of the terminals',
    values: {
      corrected: measured(corrected, 'A'),
      terminals: `${measured(limit, 'A')} at ${printTemperature(terminals)}`,
    },
    result: capped,
    unit: 'A',
    source: tables.terminals.source,
  }));
  return { ...result, ampacity: capped };
}
