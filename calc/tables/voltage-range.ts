import type { CodeTable } from './table.ts';

/** Volts that a system may have in ordinary service. */
export interface VoltageRangeRow {
  readonly nominal: number;
  /** Highest, at the service and at equipment. */
  readonly most: number;
  /** Lowest at equipment. */
  readonly least: number;
}

/** Range A: what is there but for short and rare times. */
export const VOLTAGE_RANGE: CodeTable<VoltageRangeRow> = {
  source: 'ANSI C84.1 range A',
  verified:
    'From memory of Table 1, editions 2006 to 2020; every entry is that of 120 V times the ratio within 1 V, and a utility’s page gives 5 percent and 456 to 504 V at 480.',
  doubts: ['Earlier editions have 110 V on 120 at equipment that lights; some print 125 V as the highest there.'],
  rows: [
    { nominal: 120, most: 126, least: 108 },
    { nominal: 208, most: 218, least: 187 },
    { nominal: 240, most: 252, least: 216 },
    { nominal: 277, most: 291, least: 249 },
    { nominal: 480, most: 504, least: 432 },
  ],
};

/** The range of a nominal voltage; of one that the table has not, 5 percent over and 10 under it. */
export const voltageRange = (nominal: number): VoltageRangeRow =>
  VOLTAGE_RANGE.rows.find((row) => Math.abs(row.nominal - nominal) <= 1) ?? {
    nominal,
    most: 1.05 * nominal,
    least: 0.9 * nominal,
  };
