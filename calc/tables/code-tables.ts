import type { RulePath } from '../../routing/site/rules/rule-notes.ts';
import type { Electrode, Metal, Method } from '../../routing/site/schema/vocabulary.ts';
import type {
  AmbientRow,
  AmpacityRow,
  BundlingRow,
  ConductorRow,
  CordRow,
  DropAdviceRow,
  GroundingRow,
  ImpedanceRow,
  InsulatedRow,
  InsulationRow,
  SmallConductorRow,
  SupplyConductorRow,
  TerminalRow,
  UnprotectedRow,
} from './conductor-rows.ts';
import type {
  ImpedanceBandRow,
  TransformerProtectionRow,
  TransformerRow,
  TypicalImpedanceRow,
  WorkingSpaceRow,
} from './equipment-rows.ts';
import type {
  BendRow,
  BoxAllowanceRow,
  CoverRow,
  ExpansionRow,
  FillRow,
  MetalBoxRow,
  RacewayRow,
  SupportRow,
  VerticalSupportRow,
} from './raceway-rows.ts';
import type { Sections } from './sections.ts';
import type { CodeTable, PerRaceway, RuleBasis, Sourced, TemperatureColumn } from './table.ts';

/** One edition of the code as data. Another edition is another set of data, not other code. */
export interface CodeTables {
  readonly edition: string;
  /** The code without its year, as a sentence cites it where the edition is said beside: `NEC`. */
  readonly code: string;
  readonly sections: Sections;
  /** Of the rules of a site whose usual value the code sets. */
  readonly ruleBases: Readonly<Partial<Record<RulePath, RuleBasis>>>;
  readonly ampacity: CodeTable<AmpacityRow>;
  readonly insulations: CodeTable<InsulationRow>;
  readonly ambient: CodeTable<AmbientRow>;
  readonly bundling: CodeTable<BundlingRow>;
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
  readonly smallConductors: CodeTable<SmallConductorRow>;
  readonly standardRatings: CodeTable<number> & { readonly fuses: readonly number[] };
  /** Up to this rating a conductor may be protected at the next standard rating above its ampacity. */
  readonly nextRating: Sourced & { readonly upToAmps: number };
  readonly grounding: CodeTable<GroundingRow>;
  readonly electrodeConductors: CodeTable<SupplyConductorRow> & {
    /** To an electrode alone it need be no larger; null where the code sets no such size of the metal. */
    readonly most: Readonly<Partial<Record<Electrode, Readonly<Record<Metal, string | null>>>>>;
    /** Rods where one alone is not proved enough, and the least length of a ring, feet. */
    readonly rods: number;
    readonly ringFt: number;
  };
  /** Past the last row a share of the circular mils of the supply conductor. */
  readonly bondingJumpers: CodeTable<SupplyConductorRow> & { readonly shareBeyond: number };
  readonly terminals: CodeTable<TerminalRow>;
  readonly continuous: Sourced & { readonly factor: number };
  readonly fill: CodeTable<FillRow> & { readonly nipplePercent: number; readonly nippleInches: number };
  readonly jam: Sourced & { readonly low: number; readonly high: number };
  readonly bends: CodeTable<BendRow>;
  readonly bendLimit: Sourced & { readonly degrees: number };
  readonly raceways: CodeTable<RacewayRow> & {
    /** How far the figures of each method were checked. */
    readonly verifiedBy: Readonly<Partial<Record<Method, string>>>;
    /** Smallest trade size that may be chosen without a special case. */
    readonly smallest: string;
  };
  readonly insulated: CodeTable<InsulatedRow>;
  readonly conductors: CodeTable<ConductorRow> & {
    /** Change of resistance per °C from 75 °C. */
    readonly temperatureCoefficient: Readonly<Record<Metal, number>>;
  };
  readonly impedances: CodeTable<ImpedanceRow>;
  readonly supports: CodeTable<SupportRow>;
  readonly expansion: CodeTable<ExpansionRow> & {
    /** Growth per degree F, of itself. */
    readonly perF: PerRaceway<number>;
    /** Inches of change between fixed points at which an expansion fitting is needed. */
    readonly fittingAt: number;
    /** Degrees F that one guide adds to the air's maximum for direct sun. */
    readonly sunF: number;
  };
  readonly cover: CodeTable<CoverRow>;
  readonly verticalSupports: CodeTable<VerticalSupportRow>;
  readonly boxAllowances: CodeTable<BoxAllowanceRow> & {
    readonly clamps: number;
    readonly yoke: number;
    /** One allowance covers this many grounding conductors. */
    readonly groundings: number;
    readonly groundingBeyond: number;
  };
  readonly metalBoxes: CodeTable<MetalBoxRow>;
  readonly pullBoxes: Sourced & { readonly straightTimes: number; readonly angleTimes: number };
  readonly transformerProtection: CodeTable<TransformerProtectionRow> & {
    /** Grouped, so many devices at most count as the secondary protection of a transformer, by the sum of their ratings. */
    readonly mostSecondaries: number;
    /** Where so many percent are no standard rating, the next one up may be used. */
    readonly nextRatingPercent: number;
  };
  /** Past it no figure of these tables is for a conductor, a device or a transformer. */
  readonly lowVoltage: Sourced & { readonly upToVolts: number };
  /** Shortest way first. */
  readonly unprotected: CodeTable<UnprotectedRow>;
  readonly threePhaseTransformers: CodeTable<TransformerRow>;
  readonly singlePhaseTransformers: CodeTable<TransformerRow>;
  readonly singlePhaseImpedances: CodeTable<TypicalImpedanceRow>;
  readonly threePhaseImpedances: CodeTable<ImpedanceBandRow>;
  readonly workingSpace: CodeTable<WorkingSpaceRow> & {
    readonly widthIn: number;
    readonly heightFt: number;
    /** Equipment of so many amperes and more, wider than so many feet, is entered from both ends, each so wide. */
    readonly entrances: { readonly fromAmps: number; readonly overFt: number; readonly widthFt: number };
  };
  readonly dropAdvice: CodeTable<DropAdviceRow>;
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
  readonly cords: CodeTable<CordRow> & {
    readonly power: readonly CordRow[];
    readonly ambientC: number;
    readonly column: TemperatureColumn;
  };
  /** Methods that may come out of the ground where they are subject to damage. */
  readonly damage: Sourced & { readonly methods: readonly Method[] };
  /** Of a busbar with a source at each end, what its device and 125% of the other source may come to, of its rating. */
  readonly busSources: Sourced & { readonly share: number; readonly factor: number };
  /**
   * Of the motors of a piece of equipment the largest counts so many times. An inverse-time breaker of one has at most so
   * many times its full load, and the next standard rating up.
   */
  readonly motors: Sourced & { readonly largestFactor: number; readonly breakerShare: number };
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
