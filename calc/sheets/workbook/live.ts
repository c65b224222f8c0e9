import type { Cell } from '../csv.ts';

/** How a number is shown: money to the cent, a quantity, hours, a share as a percentage, a plain figure. */
export type Shown = 'money' | 'quantity' | 'hours' | 'share' | 'figure';

export const NUMBER_FORMATS: Readonly<Record<Shown, string>> = {
  money: '#,##0.00;[Red]-#,##0.00',
  quantity: '#,##0.##',
  hours: '#,##0.00',
  share: '0.##%',
  figure: '0.####',
};

/** A number with its form, or a formula with what it comes to: without the sign of equality before it. */
export interface LiveNumber {
  readonly value: number | null;
  readonly shown: Shown;
  readonly formula?: string;
  /** What a formula of words comes to. */
  readonly words?: string;
}

/** A cell of the workbook: as in a CSV file, or one that is worked by the spreadsheet. */
export type LiveCell = Cell | LiveNumber;

/** A name by which a formula, or a person, finds a cell of the workbook. */
export interface LiveName {
  readonly name: string;
  /** `rates!$B$2`. */
  readonly at: string;
}

export interface LiveTable {
  readonly name: string;
  /** The head, then the rows. */
  readonly rows: readonly (readonly LiveCell[])[];
  readonly names?: readonly LiveName[];
}

export const money = (value: number | null, formula?: string): LiveNumber => live(value, 'money', formula);
export const hours = (value: number, formula?: string): LiveNumber => live(value, 'hours', formula);
export const quantity = (value: number): LiveNumber => live(value, 'quantity');
export const live = (value: number | null, shown: Shown, formula?: string): LiveNumber =>
  formula === undefined ? { value, shown } : { value, shown, formula };
