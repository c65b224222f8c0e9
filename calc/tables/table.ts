/** Temperature columns of the ampacity table, in the order in which rows hold them. */
export const TEMPERATURE_COLUMNS = [60, 75, 90] as const;
/** Conductor temperature rating of a column, °C. */
export type TemperatureColumn = (typeof TEMPERATURE_COLUMNS)[number];

/** One value per temperature column: 60, 75, 90 °C. Null where the table has none. */
export type PerColumn = readonly [number | null, number | null, number | null];

/** What a raceway is made of, as far as reactance and resistance care. */
export const RACEWAY_KINDS = ['PVC', 'aluminum', 'steel'] as const;
export type RacewayKind = (typeof RACEWAY_KINDS)[number];
export type PerRaceway<T> = Readonly<Record<RacewayKind, T>>;

/** Where figures come from and how far they were checked. */
export interface Sourced {
  readonly source: string;
  /** What the figures were checked against, or that they are from memory. */
  readonly verified: string;
  readonly doubts: readonly string[];
}

export interface CodeTable<Row> extends Sourced {
  readonly rows: readonly Row[];
}

/** Where the usual value of a site's rule comes from, and what it goes by on a drawing. */
export interface RuleBasis {
  readonly source: string;
  readonly basis: string;
}
