import type { RulePath } from '../../routing/site/rules/rule-notes.ts';
import type { Electrode, Metal, Method, TapCondition } from '../../routing/site/schema/vocabulary.ts';
import type { Sections } from './sections.ts';

/** Temperature columns of the ampacity table, in the order in which rows hold them. */
export const COLUMNS = [60, 75, 90] as const;
/** Conductor temperature rating of a column, °C. */
export type Column = (typeof COLUMNS)[number];

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

export interface Table<Row> extends Sourced {
  readonly rows: readonly Row[];
}

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
  readonly column: Column;
  /** Column that may be used where equipment is listed and marked for it. */
  readonly markedColumn: Column;
}

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

/** Percent of rated current; null where no protection is required on that side. */
export interface TransformerProtectionRow {
  readonly protection: 'primary only' | 'primary and secondary';
  readonly primary: { readonly from9: number; readonly under9: number; readonly under2: number };
  readonly secondary: { readonly from9: number; readonly under9: number } | null;
}

export interface TransformerRow {
  readonly kva: number;
  /** Least efficiency at 35% load, percent. */
  readonly efficiency: number;
  /** Full-load amperes by line-to-line volts. */
  readonly amps: Readonly<Partial<Record<208 | 240 | 480, number>>>;
  readonly lossAt35: number | null;
  /** Resistance in percent, were half the loss at 35% load in the windings, and were all of it. */
  readonly resistanceHalf: number | null;
  readonly resistanceBound: number | null;
}

export interface TypicalImpedanceRow {
  readonly kva: number;
  readonly rise: '150C' | '115C';
  readonly z: number;
  readonly x: number;
  readonly r: number;
  readonly xr: number;
}

/** A plausible band, not a rating. */
export interface ImpedanceBandRow {
  readonly kva: number;
  readonly z: readonly [low: number, high: number];
  readonly xr: readonly [low: number, high: number];
  readonly middleR: number;
}

/** Depth of working space, ft, by what is opposite. */
export interface WorkingSpaceRow {
  readonly toVolts: number;
  /** Live parts on one side, nothing live or grounded opposite. */
  readonly clear: number;
  /** Grounded parts opposite; concrete, brick and tile count. */
  readonly grounded: number;
  /** Live parts on both sides. */
  readonly live: number;
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
  readonly column: Column;
  /** Column inside an outdoor raceway, which is a wet location; null where it may not be there. */
  readonly wetColumn: Column | null;
  /** Group of rows in the table of insulated conductors; null where it has none. */
  readonly group: string | null;
}

/** Where the usual value of a site's rule comes from, and what it goes by on a drawing. */
export interface RuleBasis {
  readonly source: string;
  readonly basis: string;
}

export interface CordRow {
  readonly size: string;
  readonly two: number | null;
  readonly three: number | null;
}

/** One edition of the code as data. Another edition is another set of data, not other code. */
export interface CodeTables {
  readonly edition: string;
  /** The code without its year, as a sentence cites it where the edition is said beside: `NEC`. */
  readonly code: string;
  readonly sections: Sections;
  /** Of the rules of a site whose usual value the code sets. */
  readonly ruleBases: Readonly<Partial<Record<RulePath, RuleBasis>>>;
  readonly ampacity: Table<AmpacityRow>;
  readonly insulations: Table<InsulationRow>;
  readonly ambient: Table<AmbientRow>;
  readonly bundling: Table<BundlingRow>;
  readonly rooftop: Sourced & {
    readonly adderC: number;
    /** Inches from roof to raceway at which the adder ends. */
    readonly clearance: number;
    readonly exempt: readonly string[];
  };
  readonly least: Sourced & {
    /** Smallest size for a circuit. */
    readonly circuit: Readonly<Record<Metal, string>>;
    /** Smallest size that may be run in parallel. */
    readonly parallel: string;
  };
  readonly smallConductors: Table<SmallConductorRow>;
  readonly standardRatings: Table<number> & { readonly fuses: readonly number[] };
  /** Up to this rating a conductor may be protected at the next standard rating above its ampacity. */
  readonly nextRating: Sourced & { readonly upToAmps: number };
  readonly grounding: Table<GroundingRow>;
  readonly electrodeConductors: Table<SupplyConductorRow> & {
    /** To an electrode alone it need be no larger; null where the code sets no such size of the metal. */
    readonly most: Readonly<Partial<Record<Electrode, Readonly<Record<Metal, string | null>>>>>;
  };
  /** Past the last row a share of the circular mils of the supply conductor. */
  readonly bondingJumpers: Table<SupplyConductorRow> & { readonly shareBeyond: number };
  readonly terminals: Table<TerminalRow>;
  readonly continuous: Sourced & { readonly factor: number };
  readonly fill: Table<FillRow> & { readonly nipplePercent: number; readonly nippleInches: number };
  readonly jam: Sourced & { readonly low: number; readonly high: number };
  readonly bends: Table<BendRow>;
  readonly bendLimit: Sourced & { readonly degrees: number };
  readonly raceways: Table<RacewayRow> & {
    /** How far the figures of each method were checked. */
    readonly verifiedBy: Readonly<Partial<Record<Method, string>>>;
    /** Smallest trade size that may be chosen without a special case. */
    readonly smallest: string;
  };
  readonly insulated: Table<InsulatedRow>;
  readonly conductors: Table<ConductorRow> & {
    /** Change of resistance per °C from 75 °C. */
    readonly temperatureCoefficient: Readonly<Record<Metal, number>>;
  };
  readonly impedances: Table<ImpedanceRow>;
  readonly supports: Table<SupportRow>;
  readonly expansion: Table<ExpansionRow> & {
    /** Growth per degree F, of itself. */
    readonly perF: PerRaceway<number>;
    /** Inches of change between fixed points at which an expansion fitting is needed. */
    readonly fittingAt: number;
    /** Degrees F that one guide adds to the air's maximum for direct sun. */
    readonly sunF: number;
  };
  readonly cover: Table<CoverRow>;
  readonly verticalSupports: Table<VerticalSupportRow>;
  readonly boxAllowances: Table<BoxAllowanceRow> & {
    readonly clamps: number;
    readonly yoke: number;
    /** One allowance covers this many grounding conductors. */
    readonly groundings: number;
    readonly groundingBeyond: number;
  };
  readonly metalBoxes: Table<MetalBoxRow>;
  readonly pullBoxes: Sourced & { readonly straightTimes: number; readonly angleTimes: number };
  readonly transformerProtection: Table<TransformerProtectionRow> & {
    /** Grouped, so many devices at most count as the secondary protection of a transformer, by the sum of their ratings. */
    readonly mostSecondaries: number;
  };
  /** Past it no figure of these tables is for a conductor, a device or a transformer. */
  readonly lowVoltage: Sourced & { readonly upToVolts: number };
  /** Shortest way first. */
  readonly unprotected: Table<UnprotectedRow>;
  readonly threePhaseTransformers: Table<TransformerRow>;
  readonly singlePhaseTransformers: Table<TransformerRow>;
  readonly singlePhaseImpedances: Table<TypicalImpedanceRow>;
  readonly threePhaseImpedances: Table<ImpedanceBandRow>;
  readonly workingSpace: Table<WorkingSpaceRow> & {
    readonly widthIn: number;
    readonly heightFt: number;
    /** Equipment of so many amperes and more, wider than so many feet, is entered from both ends, each so wide. */
    readonly entrances: { readonly fromAmps: number; readonly overFt: number; readonly widthFt: number };
  };
  readonly dropAdvice: Table<DropAdviceRow>;
  /** Line to line: what a charger takes across two lines, and what a feeder may be moved to; the usual one first. */
  readonly nominalVolts: Sourced & {
    readonly chargers: readonly [number, ...number[]];
    readonly feeders: readonly number[];
  };
  /** Measured demand of what stands already counts so many times. */
  readonly existingDemand: Sourced & { readonly factor: number };
  /**
   * Ground-fault protection of equipment: devices of so many amperes and more on a solidly grounded wye of more than so many
   * volts to ground, to so many line to line; its highest setting, and its longest delay at so many amperes of fault.
   */
  readonly groundFault: Sourced & {
    readonly fromAmps: number;
    readonly overVoltsToGround: number;
    readonly toVolts: number;
    readonly settingAmps: number;
    readonly atAmps: number;
    readonly seconds: number;
  };
  /**
   * Flexible cord (`rows`) and power cable of several conductors (`power`), amperes with two and with three conductors that
   * carry current, at an ambient and in a column of the table of ambient correction.
   */
  readonly cords: Table<CordRow> & {
    readonly power: readonly CordRow[];
    readonly ambientC: number;
    readonly column: Column;
  };
  /** Methods that may come out of the ground where they are subject to damage. */
  readonly damage: Sourced & { readonly methods: readonly Method[] };
  /** Of a busbar with a source at each end, what its device and 125% of the other source may come to, of its rating. */
  readonly busSources: Sourced & { readonly share: number; readonly factor: number };
  /** An inverse-time breaker of a motor, at most so many times its full load, and the next standard rating up. */
  readonly motors: Sourced & { readonly breakerShare: number };
  /** Equipment of so many amperes and more has a label of arc flash with its date. */
  readonly arcFlashLabel: Sourced & { readonly fromAmps: number };
  /** Full-load amperes of motors between the devices of a series rating, in percent of the lower rating at most. */
  readonly seriesMotors: Sourced & { readonly percent: number };
  /** Breakers that can be set to so many amperes and more have a way to less arc energy. */
  readonly arcEnergy: Sourced & { readonly fromAmps: number };
  readonly vehicleSupply: Sourced & {
    /** Usable output cord, ft, unless listed with cable management. */
    readonly cordFt: number;
    /** A disconnect is needed above these. */
    readonly disconnectAboveAmps: number;
    readonly disconnectAboveVoltsToGround: number;
    /** Farthest that equipment is in sight of another, ft. */
    readonly inSightFt: number;
    /** Least height of a stored coupling, inches. */
    readonly couplingOutdoorsIn: number;
    readonly couplingIndoorsIn: number;
    /** Least calculated load of one charger, VA. */
    readonly unitLoadVa: number;
  };
}
