import type { Method } from '../../routing/site/schema/vocabulary.ts';

/** `conductors` 3 stands for three or more. */
export interface FillRow {
  readonly conductors: 1 | 2 | 3;
  readonly percent: number;
}

/** Radius to the centre line, inches. */
export interface BendRow {
  readonly tradeSize: string;
  readonly shoe: number;
  readonly other: number;
}

/** Inches and square inches; the percent areas as printed. */
export interface RacewayRow {
  readonly method: Method;
  readonly tradeSize: string;
  readonly insideDiameter: number;
  readonly area: number;
  readonly fill60: number;
  readonly fill53: number;
  readonly fill31: number;
  readonly fill40: number;
}

export interface SupportRow {
  readonly method: Method;
  /** `general`: any run. `straight threaded`: straight runs with threaded couplings. `riser`: industrial risers. */
  readonly run: 'general' | 'straight threaded' | 'riser';
  /** Smallest and largest trade size the row speaks of; null is open. */
  readonly fromSize: string | null;
  readonly toSize: string | null;
  readonly spacingFt: number;
  /** First support within this of a box, fitting or end. */
  readonly firstFt: number;
  readonly section: string;
}

export interface ExpansionRow {
  readonly rangeF: number;
  readonly inchesPer100Ft: number;
}

/** Least cover, inches, by what is buried. */
export interface CoverRow {
  readonly place: 'elsewhere' | 'under-concrete' | 'under-building' | 'under-slab' | 'traffic' | 'dwelling' | 'airport';
  readonly location: string;
  readonly cable: number;
  readonly metalRaceway: number;
  readonly plasticRaceway: number;
  readonly dwellingBranch: number;
  readonly lowVoltage: number;
}

/** Greatest distance between conductor supports in a vertical raceway, ft. */
export interface VerticalSupportRow {
  readonly fromSize: string;
  /** Null: and larger. */
  readonly toSize: string | null;
  readonly copper: number;
  readonly aluminum: number;
}

/** Cubic inches per conductor. */
export interface BoxAllowanceRow {
  readonly size: string;
  readonly volume: number;
}

export interface MetalBoxRow {
  readonly box: string;
  readonly volume: number;
}
