import type { CrewMember, Rates } from './rates.ts';

export type { CrewMember, Rates } from './rates.ts';

/** Price of one unit of an item, and the hours it takes to install. */
export interface PriceRow {
  readonly item: string;
  /** One spec, a range, a point of a curve or `*`: `lineForm`. */
  readonly spec: string;
  readonly unit: 'ft' | 'each';
  /** Dollars a unit. */
  readonly material: number;
  readonly hours: number;
}

/** A supplier's lump sum for all material of some items; their hours are those of the list. */
export interface Quote {
  readonly name: string;
  /** Dollars for all of it. */
  readonly material: number;
  /** Items of the takeoff, or an item and a spec after a comma. */
  readonly covers: readonly string[];
  /** Last day on which it holds, `2026-12-31`. */
  readonly validUntil?: string;
}

/** A sum of dollars that is not taken off: it is in the price as it stands. */
export interface Allowance {
  readonly name: string;
  readonly dollars: number;
}

/** What a supplier calls something, in words or as a part number, and what that is here; of nothing that is, both are empty. */
export interface SupplierWord {
  readonly theirs: string;
  readonly item: string;
  readonly spec: string;
}

/** A line of a supplier's list whose words are not known here. */
export interface UnknownLine {
  readonly theirs: string;
  readonly part?: string;
  /** Null where it is by the hundred or thousand of what is not said. */
  readonly unit: PriceRow['unit'] | null;
  /** Dollars a unit. */
  readonly material: number;
  readonly hours: number | null;
}

export interface PriceList {
  readonly name: string;
  readonly rows: readonly PriceRow[];
  readonly rates: Rates;
  /** Whose average, with the burden, is the labor rate. */
  readonly crew?: readonly CrewMember[];
  readonly quotes?: readonly Quote[];
  readonly allowances?: readonly Allowance[];
  /** What the price does not cover, in words. */
  readonly exclusions?: readonly string[];
  /** Day of the bid, `2026-12-01`, that quotes are held against; that of the project where absent. */
  readonly bidDay?: string;
  /** What suppliers' words mean: asked once. */
  readonly words?: readonly SupplierWord[];
  /** Lines of suppliers' lists that nobody has said the meaning of: they price nothing. */
  readonly unknown?: readonly UnknownLine[];
}

/** What the list is called that is there from the start, and in what is laid over it. */
export const INVENTED_NAME = 'invented prices';

export const priceKey = (item: string, spec: string): string => `${item}\n${spec}`;
