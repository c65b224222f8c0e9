import type { SupportSpacing, SupportSpacings } from '../../routing/checks/support/support-findings.ts';
import { kept } from '../../routing/kept/kept.ts';
import { METHODS, type Metal, type Method } from '../../routing/site/schema/vocabulary.ts';
import type { CodeTables } from './code-tables.ts';
import { indexed } from './indexed.ts';
import type { BendRow, CoverRow, RacewayRow, SupportRow } from './raceway-rows.ts';
import { compareSizes, tradeSizeInches } from './sizes.ts';

const racewayKey = (method: string, tradeSize: string): string => `${method} ${tradeSize}`;
const racewayRow = indexed<RacewayRow>((row) => racewayKey(row.method, row.tradeSize));
const bendRow = indexed<BendRow>((row) => row.tradeSize);

function knownRaceway(tables: CodeTables, method: Method, tradeSize: string): RacewayRow {
  const row = racewayRow(tables.raceways.rows, racewayKey(method, tradeSize));
  if (row === undefined) throw new RangeError(`${tables.edition} tables hold no ${method} ${tradeSize}`);
  return row;
}

/** True where the tables have this method in this trade size. A tray has none. */
export const hasRaceway = (tables: CodeTables, method: Method, tradeSize: string): boolean =>
  racewayRow(tables.raceways.rows, racewayKey(method, tradeSize)) !== undefined;

/**
 * Inside area of a raceway, square inches (Chapter 9 Table 4). A tray has no row, for its fill is Article 392, which is
 * not covered: RangeError, as for a trade size that the method does not have.
 */
export const racewayArea = (tables: CodeTables, method: Method, tradeSize: string): number =>
  knownRaceway(tables, method, tradeSize).area;

/** Inside diameter of a raceway, inches. RangeError as for `racewayArea`. */
export const racewayDiameter = (tables: CodeTables, method: Method, tradeSize: string): number =>
  knownRaceway(tables, method, tradeSize).insideDiameter;

/** Trade sizes that may be chosen of a method, smallest first; none for a tray. LFMC starts at 1/2 (350.20(A)). */
export function tradeSizes(tables: CodeTables, method: Method): readonly string[] {
  const smallest = tradeSizeInches(tables.raceways.smallest);
  return tables.raceways.rows
    .filter((row) => row.method === method && tradeSizeInches(row.tradeSize) >= smallest)
    .map((row) => row.tradeSize);
}

/** Percent of a raceway that its conductors may fill, by how many they are (Chapter 9 Table 1); 60 for a nipple. */
export function fillLimit(tables: CodeTables, conductorCount: number, nipple = false): number {
  if (nipple) return tables.fill.nipplePercent;
  const row = tables.fill.rows.findLast(({ conductors }) => conductors <= Math.max(1, conductorCount));
  if (row === undefined) throw new RangeError(`no fill limit for ${conductorCount} conductors`);
  return row.percent;
}

/** Least radius of a bend to its centre line, inches (Chapter 9 Table 2); by one-shot and full-shoe benders unless `other`. */
export function bendRadius(tables: CodeTables, tradeSize: string, bender: 'shoe' | 'other' = 'shoe'): number {
  const row = bendRow(tables.bends.rows, tradeSize);
  if (row === undefined)
    throw new RangeError(`${tables.edition} tables hold no bend of trade size ${JSON.stringify(tradeSize)}`);
  return row[bender];
}

const covers = (row: SupportRow, inches: number | null): boolean =>
  inches === null
    ? row.fromSize === null && row.toSize === null
    : (row.fromSize === null || inches >= tradeSizeInches(row.fromSize)) &&
      (row.toSize === null || inches <= tradeSizeInches(row.toSize));

/**
 * Greatest distance between supports and from a termination to the first, ft, for any run of a method. Straight runs of
 * threaded RMC and IMC may go farther (Table 344.30(B), `run` `straight threaded`). The figure for a tray is common
 * practice without a source, and needs no trade size.
 */
export function supportSpacing(
  tables: CodeTables,
  method: Method,
  tradeSize: string | null,
  run: 'general' | 'straight threaded' = 'general',
): { readonly spacingFt: number; readonly firstFt: number } {
  // IMC borrows the straight-run rows of RMC (342.30).
  const rowsOf = run === 'straight threaded' && method === 'IMC' ? 'RMC' : method;
  const inches = tradeSize === null ? null : tradeSizeInches(tradeSize);
  const row = tables.supports.rows.find(
    (other) => other.method === rowsOf && other.run === run && covers(other, inches),
  );
  if (row === undefined) throw new RangeError(`no support spacing for ${run} ${method} ${tradeSize}`);
  return { spacingFt: row.spacingFt, firstFt: row.firstFt };
}

/**
 * Greatest distance between supports of each method whatever the trade size, ft, with the section that says so: of a
 * method that goes by trade size, that of its smallest. A raceway of the site has no trade size of its own.
 */
export const supportSpacings = kept((tables: CodeTables): SupportSpacings => {
  const strictest = (method: Method): SupportSpacing => {
    const rows = tables.supports.rows.filter((row) => row.method === method && row.run === 'general');
    const row = rows.reduce((least, other) => (other.spacingFt < least.spacingFt ? other : least));
    return { feet: row.spacingFt, section: row.section };
  };
  return Object.fromEntries(METHODS.map((method) => [method, strictest(method)])) as SupportSpacings;
});

/** Greatest distance between supports of conductors in a vertical raceway, ft (Table 300.19(A)). */
export function verticalSupportSpacing(tables: CodeTables, size: string, metal: Metal): number {
  const row = tables.verticalSupports.rows.find(({ toSize }) => toSize === null || compareSizes(size, toSize) <= 0);
  if (row === undefined) throw new RangeError(`no vertical support for ${size}`);
  return row[metal];
}

/** Least cover, inches, of a buried raceway at a place (Table 300.5(A)). */
export function coverInches(tables: CodeTables, method: Method, place: CoverRow['place']): number {
  const row = tables.cover.rows.find((other) => other.place === place);
  if (row === undefined) throw new RangeError(`no cover for ${place}`);
  return method === 'PVC40' || method === 'PVC80' ? row.plasticRaceway : row.metalRaceway;
}

/** Cover over a raceway under a parking lot, feet: the most that any asks for there. */
export function parkingCover(tables: CodeTables): number {
  const row = tables.cover.rows.find(({ place }) => place === 'traffic');
  if (row === undefined) throw new RangeError(`${tables.edition} tables hold no cover under traffic`);
  return Math.max(row.metalRaceway, row.plasticRaceway) / 12;
}
