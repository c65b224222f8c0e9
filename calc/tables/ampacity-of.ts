import type { Metal } from '../../routing/site/schema/vocabulary.ts';
import type { CodeTables } from './code-tables.ts';
import type { AmpacityRow, InsulationRow } from './conductor-rows.ts';
import { indexed } from './indexed.ts';
import { type PerColumn, TEMPERATURE_COLUMNS, type TemperatureColumn } from './table.ts';

const ampacityRow = indexed<AmpacityRow>((row) => row.size);
const insulationRow = indexed<InsulationRow>((row) => row.name);

const inColumn = (values: PerColumn, column: TemperatureColumn): number | null =>
  values[TEMPERATURE_COLUMNS.indexOf(column)] ?? null;

/** Table ampacity, A, at 30 °C with at most three conductors that carry current; null where the table has none. */
export function ampacityAt(tables: CodeTables, size: string, metal: Metal, column: TemperatureColumn): number | null {
  const row = ampacityRow(tables.ampacity.rows, size);
  return row === undefined ? null : inColumn(row[metal], column);
}

/** Row of an insulation; undefined where the tables do not know it. */
export const findInsulation = (tables: CodeTables, insulation: string): InsulationRow | undefined =>
  insulationRow(tables.insulations.rows, insulation);

function knownInsulation(tables: CodeTables, insulation: string): InsulationRow {
  const row = findInsulation(tables, insulation);
  if (row === undefined)
    throw new RangeError(`${tables.edition} tables hold no insulation ${JSON.stringify(insulation)}`);
  return row;
}

/**
 * Temperature column of an insulation, °C. A raceway outdoors is wet inside, so those with a dry and a wet rating (XHHW,
 * THHW) get the wet one, 75 °C. THHN has only a dry one and gets it, 90 °C: whether it may be there, `suitsWetPlaces`
 * says. RangeError for an insulation that the tables do not know.
 */
export const insulationColumn = (tables: CodeTables, insulation: string): TemperatureColumn =>
  knownInsulation(tables, insulation).column;

/** True where the insulation may be in a wet location, as every raceway outdoors is (300.5(B), 300.9). */
export const suitsWetPlaces = (tables: CodeTables, insulation: string): boolean =>
  knownInsulation(tables, insulation).wetColumn !== null;

/** Ambient correction for a column; between two bands the hotter one counts; 0 past the end of the table. */
export function ambientFactor(tables: CodeTables, column: TemperatureColumn, ambientC: number): number {
  const row = tables.ambient.rows.find(({ upToC }) => ambientC <= upToC);
  return row === undefined ? 0 : (inColumn(row.factors, column) ?? 0);
}

/** Adjustment for conductors that carry current in one raceway; 1 for three or fewer. */
export function bundlingFactor(tables: CodeTables, currentCarrying: number): number {
  const row = tables.bundling.rows.find(
    ({ from, to }) => currentCarrying >= from && currentCarrying <= (to ?? Infinity),
  );
  return row === undefined ? 1 : row.percent / 100;
}

/** Degrees C to add to the ambient for a raceway in the sun on a roof, `inchesAbove` it. */
export function rooftopAdderC(tables: CodeTables, insulation: string, inchesAbove: number): number {
  const { adderC, clearance, exempt } = tables.rooftop;
  return inchesAbove >= clearance || exempt.includes(insulation) ? 0 : adderC;
}
