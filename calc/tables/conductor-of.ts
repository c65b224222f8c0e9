import type { Metal, Method } from '../../routing/site/schema/vocabulary.ts';
import { findInsulation } from './ampacity-of.ts';
import type { CodeTables } from './code-tables.ts';
import type { ConductorRow, ImpedanceRow, InsulatedRow } from './conductor-rows.ts';
import { indexed } from './indexed.ts';
import { sizesUpFrom } from './sizes.ts';
import type { RacewayKind } from './table.ts';

const strandedKey = (size: string): string => `${size} stranded`;
const conductorRow = indexed<ConductorRow>((row) => (row.strands === 1 ? `${row.size} solid` : strandedKey(row.size)));
const impedanceRow = indexed<ImpedanceRow>((row) => row.size);
const insulatedRow = indexed<InsulatedRow>((row) => `${row.group} ${row.size}`);

const lacks = (tables: CodeTables, what: string): RangeError =>
  new RangeError(`${tables.edition} tables hold no ${what}`);

function bare(tables: CodeTables, size: string): ConductorRow {
  const row = conductorRow(tables.conductors.rows, strandedKey(size));
  if (row === undefined) throw lacks(tables, `conductor of size ${JSON.stringify(size)}`);
  return row;
}

/** Circular mils of a conductor: Chapter 9 Table 8, and what the name of a kcmil size says. RangeError for another word. */
export function circularMils(tables: CodeTables, size: string): number {
  const kcmil = Number(size);
  return kcmil >= 250 ? kcmil * 1000 : bare(tables, size).circularMils;
}

/** True where `resistance` has a figure for the size. */
export const hasResistance = (tables: CodeTables, size: string): boolean =>
  conductorRow(tables.conductors.rows, strandedKey(size)) !== undefined;

/** Dc resistance at 75 °C, ohm per 1000 ft: stranded, uncoated copper or aluminum (Chapter 9 Table 8). */
export const resistance = (tables: CodeTables, size: string, metal: Metal): number => bare(tables, size)[metal];

/**
 * Ac resistance and reactance, ohm to neutral per 1000 ft at 75 °C (Chapter 9 Table 9); undefined where the table has no
 * row to go by: below 14 AWG copper and 12 AWG aluminum. Of sizes that it skips (700, 800, 900, over 1000 kcmil) the
 * next smaller row counts, which errs to more drop.
 */
export function findImpedance(
  tables: CodeTables,
  size: string,
  metal: Metal,
  raceway: RacewayKind,
): { readonly r: number; readonly x: number } | undefined {
  const rows = tables.impedances.rows;
  const row = impedanceRow(rows, size) ?? rows.findLast((other) => sizesUpFrom(other.size).includes(size));
  const r = row?.[metal]?.[raceway];
  return row === undefined || r === undefined ? undefined : { r, x: row.x[raceway] };
}

/** As `findImpedance`; RangeError where the table has no row to go by. */
export function impedance(
  tables: CodeTables,
  size: string,
  metal: Metal,
  raceway: RacewayKind,
): { readonly r: number; readonly x: number } {
  const found = findImpedance(tables, size, metal, raceway);
  if (found === undefined) throw lacks(tables, `impedance of ${size} ${metal}`);
  return found;
}

/** Insulation word for a conductor without any. */
export const BARE = 'bare';
/** Insulation word for the small conductors of pilot and control circuits. */
export const FIXTURE_WIRE = 'TFN/TFFN';

function insulatedIn(tables: CodeTables, insulation: string, size: string): InsulatedRow | undefined {
  const group = findInsulation(tables, insulation)?.group ?? insulation;
  return insulatedRow(tables.insulated.rows, `${group} ${size}`);
}

/**
 * Area of one conductor over its insulation, square inches (Chapter 9 Table 5; `"bare"` Table 8). The insulation may also
 * be the name of a group of rows, such as `"TFN/TFFN"` for 18 and 16 AWG. Undefined where the tables have no row.
 */
export function findConductorArea(tables: CodeTables, insulation: string, size: string): number | undefined {
  if (insulation === BARE) return conductorRow(tables.conductors.rows, strandedKey(size))?.area;
  return insulatedIn(tables, insulation, size)?.area;
}

/** As `findConductorArea`; RangeError where the tables have no row. */
export function conductorArea(tables: CodeTables, insulation: string, size: string): number {
  const area = findConductorArea(tables, insulation, size);
  if (area === undefined) throw lacks(tables, `area of ${size} ${insulation}`);
  return area;
}

/** Diameter of one conductor over its insulation, inches. RangeError where the tables have no row. */
export function conductorDiameter(tables: CodeTables, insulation: string, size: string): number {
  const diameter = insulation === BARE ? bare(tables, size).diameter : insulatedIn(tables, insulation, size)?.diameter;
  if (diameter === undefined) throw lacks(tables, `diameter of ${size} ${insulation}`);
  return diameter;
}

/** What a wiring method is made of for Table 9: PVC, or steel. Flexible metal conduit and tray are taken as steel. */
export const methodRaceway = (method: Method): RacewayKind =>
  method === 'PVC40' || method === 'PVC80' ? 'PVC' : 'steel';

/** Conductor temperature of the tables of resistance and impedance, °C. */
export const TABLE_C = 75;

/** Resistance of a metal at a temperature, as a share of that of the tables: `1 + coefficient x (°C - 75)` (Chapter 9 Table 8, note 2). */
export const resistanceShare = (tables: CodeTables, metal: Metal, conductorC: number): number =>
  1 + tables.conductors.temperatureCoefficient[metal] * (conductorC - TABLE_C);
