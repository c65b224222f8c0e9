import type { PriceRow } from './invented-prices.ts';

/** What the estimator adds to hours and material. */
export interface Rates {
  /** Dollars an hour. */
  readonly labor: number;
  /** Factor on the hours of work done off the ground. */
  readonly height: number;
  /** Shares of cost added for overhead, then of the sum for margin. */
  readonly overhead: number;
  readonly margin: number;
}

export interface PriceList {
  readonly name: string;
  readonly rows: readonly PriceRow[];
  readonly rates: Rates;
}

export const COLUMNS = ['item', 'spec', 'unit', 'material', 'hours'] as const;

/** The rates stand in the list as rows of their own: item `rate`, the spec names which, the material column its value. */
export const RATES: Readonly<Record<string, keyof Rates>> = {
  'labor, dollars an hour': 'labor',
  'height factor on hours': 'height',
  'overhead, share of cost': 'overhead',
  'margin, share of cost and overhead': 'margin',
};

/** A price list as rows of cells, as `readPrices` reads them. */
export const priceSheet = ({ rows, rates }: PriceList): readonly (readonly (string | number)[])[] => [
  COLUMNS,
  ...Object.entries(RATES).map(([words, rate]) => ['rate', words, '', rates[rate], 0]),
  ...rows.map(({ item, spec, unit, material, hours }) => [item, spec, unit, material, hours]),
];

export const keyOf = (item: string, spec: string): string => `${item}\n${spec}`;
