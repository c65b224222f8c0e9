import type { Metal, TapCondition } from '../../routing/site/schema/vocabulary.ts';
import type { PerColumn, PerRaceway, TemperatureColumn } from './table.ts';

export interface AmpacityRow {
  readonly size: string;
  readonly copper: PerColumn;
  readonly aluminum: PerColumn;
}

/** Factor for ambients up to and including `upToC`; null past what the column allows. */
export interface AmbientRow {
  readonly upToC: number;
  readonly factors: PerColumn;
}

export interface BundlingRow {
  readonly from: number;
  /** Null: and more. */
  readonly to: number | null;
  readonly percent: number;
}

export interface SmallConductorRow {
  readonly size: string;
  readonly metal: Metal | 'copper-clad aluminum';
  readonly maxAmps: number;
}

export interface GroundingRow {
  /** Rating of the overcurrent device, not exceeding. */
  readonly breakerAmps: number;
  readonly copper: string;
  readonly aluminum: string;
}

/** By the circular mils of the largest ungrounded conductor of a supply, one phase of conductors in parallel added up. */
export interface SupplyConductorRow {
  /** By the metal of the supply conductor; null: and more. */
  readonly upToMils: Readonly<Record<Metal, number | null>>;
  /** Size of copper, and of aluminum. */
  readonly copper: string;
  readonly aluminum: string;
}

export interface TerminalRow {
  /** Circuits rated this much or less; null: more. */
  readonly upToAmps: number | null;
  readonly column: TemperatureColumn;
  /** Column that may be used where equipment is listed and marked for it. */
  readonly markedColumn: TemperatureColumn;
}

/** An insulated conductor by itself, inches and square inches. */
export interface InsulatedRow {
  readonly group: string;
  readonly size: string;
  readonly diameter: number;
  readonly area: number;
}

/** Bare conductor: circular mils, inches, dc ohm per 1000 ft at 75 °C. */
export interface ConductorRow {
  readonly size: string;
  readonly circularMils: number;
  /** 1 is solid. */
  readonly strands: number;
  readonly strandDiameter: number | null;
  readonly diameter: number;
  readonly area: number;
  readonly copper: number;
  readonly coatedCopper: number;
  readonly aluminum: number;
}

/** Ohm to neutral per 1000 ft, three single conductors in a raceway, 60 Hz, 75 °C. */
export interface ImpedanceRow {
  readonly size: string;
  readonly x: PerRaceway<number>;
  readonly copper: PerRaceway<number>;
  readonly aluminum: PerRaceway<number> | null;
  /** Effective impedance at 0.85 power factor as printed. */
  readonly z85: { readonly copper: PerRaceway<number>; readonly aluminum: PerRaceway<number> | null };
}

/** One way in which conductors may leave a feeder or a transformer with no device where they start. */
export interface UnprotectedRow {
  /** A tap, the secondary of a transformer, a tap that supplies a transformer, the secondary of one that is tapped. */
  readonly of: 'tap' | 'secondary' | 'transformer tap' | 'tapped secondary';
  readonly section: string;
  /** Longest; null for any length. */
  readonly lengthFt: number | null;
  /** Share of the rating of the device ahead, at their own volts, that they carry at least; null where none is asked. */
  readonly share: number | null;
  /** True where it is for those outdoors all the way but for their end. */
  readonly outdoors: boolean;
  /** What no drawing shows and it asks for; absent where it asks for nothing of the kind. */
  readonly condition?: TapCondition;
  /** Longest on the level, ft. */
  readonly levelFt?: number;
  /** Least sizes. */
  readonly leastSize?: Readonly<Record<Metal, string>>;
  /** True where they carry at least the rated secondary current of the transformer. */
  readonly ratedCurrent?: true;
  /** True where the length is that of the tapped primary, where it is not protected at its ampacity, and of the secondary. */
  readonly withPrimary?: true;
}

export interface DropAdviceRow {
  readonly scope: 'branch' | 'feeder' | 'total';
  readonly percent: number;
  readonly section: string;
}

/** Ampacity column and Table 5 rows of one insulation. */
export interface InsulationRow {
  readonly name: string;
  readonly column: TemperatureColumn;
  /** Column inside an outdoor raceway, which is a wet location; null where it may not be there. */
  readonly wetColumn: TemperatureColumn | null;
  /** Group of rows in the table of insulated conductors; null where it has none. */
  readonly group: string | null;
}

export interface CordRow {
  readonly size: string;
  readonly two: number | null;
  readonly three: number | null;
}
