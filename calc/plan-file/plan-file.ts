import type { Run } from '../../routing/network/run.ts';
import type { Reach } from '../../routing/reach/reach-result.ts';
import type { Finding } from '../../routing/site/rules/finding.ts';
import type { RuleWord } from '../../routing/site/rules/rule-words.ts';
import type { DayLimitFields } from '../../routing/site/schema/day-schema.ts';
import type {
  ArcReduction,
  Electrode,
  Insulation,
  Lines,
  Location,
  Metal,
  Method,
  Surface,
  Units,
} from '../../routing/site/schema/vocabulary.ts';
import type { Point3 } from '../../routing/site/site.ts';

/** A plan as it is published: plain JSON, lengths and coordinates in the units of its site file, at full precision. */
export interface PlanFile {
  readonly format: 'overrow/plan';
  readonly version: 1;
  /** Name of the site. */
  readonly site: string;
  readonly units: Units;
  /** Edition of the code whose tables were used. */
  readonly code: string;
  readonly runs: readonly Run[];
  readonly reach: readonly Reach[];
  readonly circuits: readonly Circuit[];
  readonly conduits: readonly Conduit[];
  readonly boxes: readonly Box[];
  /** What those in the ground are, and what they have to bear. */
  readonly handholes: readonly Handhole[];
  readonly supply: Supply;
  /** Every overcurrent device, each after what feeds the equipment that it stands in; branch devices last. */
  readonly devices: readonly Device[];
  /** One for each source, or other equipment that nothing feeds. */
  readonly loadCalculations: readonly LoadCalculation[];
  /** At the boxes of the chargers that have a branch, by what feeds them. */
  readonly faults: readonly ChargerFault[];
  readonly takeoff: readonly TakeoffRow[];
  /** Everything overhead, handed to the member that holds it. */
  readonly hung: readonly Hung[];
  /** What hangs overhead and no member holds, pounds. */
  readonly loose: readonly { readonly of: string; readonly pounds: number }[];
  /** Each day of charging under the rules of load management. */
  readonly days: readonly PlannedDay[];
  readonly findings: readonly Finding[];
  /** Every check that the planner makes, with how many things it was applied to and what came of it. */
  readonly checks: readonly Check[];
  /** What, beside a failure, keeps it from being called sound; empty where nothing does. */
  readonly withheld: readonly string[];
  /** What of the job nobody looked at. */
  readonly notChecked: readonly string[];
  /** What was built beside what is drawn; absent where no place was measured. */
  readonly asBuilt?: AsBuiltFile;
}

/** A figure as drawn and as built: what is left of a limit, or a length; null where there is none. */
export interface AsBuiltPair {
  readonly drawn: number | null;
  readonly built: number | null;
}

/** What the measured places do to cords, branches and voltages, and what there is to say only as built. */
export interface AsBuiltFile {
  readonly drops: readonly {
    readonly drop: string;
    /** As built; a retractor that was not measured hangs from its box as drawn. */
    readonly box: Point3;
    readonly retractor?: Point3;
    /** From the drawing, of box and retractor the greater. */
    readonly away: number;
    readonly chargers: readonly {
      readonly charger: string;
      readonly cord: AsBuiltPair;
      readonly branch: AsBuiltPair;
      /** Percent. */
      readonly volts: AsBuiltPair;
      /** Length of its run; null where the box was built past the longest tap. */
      readonly run: AsBuiltPair;
    }[];
    readonly findings: readonly Finding[];
  }[];
  readonly findings: readonly Finding[];
}

/** What a hung load is made of; `pull` is what a cord carried to an inlet pulls beyond its own weight. */
export type MadeOf = 'conduit' | 'wire' | 'fittings' | 'trapeze' | 'box' | 'module' | 'retractor' | 'cord' | 'pull';

/** Pounds, or pounds a foot, of each of them that there is. */
export type Made = Readonly<Partial<Record<MadeOf, number>>>;

/** What hangs from one place of a member. */
export interface HungPoint {
  readonly at: Point3;
  readonly pounds: number;
  readonly of: readonly string[];
  readonly made: Made;
  /** Pull there that is not downward, pounds; absent where there is none. */
  readonly sideways?: number;
  /** Which way that pulls, degrees counter-clockwise from +x. */
  readonly heading?: number;
}

/** What hangs evenly along a part of a member. */
export interface HungRun {
  readonly from: Point3;
  readonly to: Point3;
  /** Per foot along the member, whatever the units of the file. */
  readonly poundsPerFoot: number;
  readonly of: readonly string[];
  /** Per foot, likewise. */
  readonly made: Made;
}

/** What one member carries of all that hangs overhead, in order along it. */
export interface Hung {
  readonly member: string;
  readonly pounds: number;
  readonly points: readonly HungPoint[];
  readonly runs: readonly HungRun[];
}

/** One check of the planner: what it is, how many things it was applied to, and what came of it. */
export interface Check {
  readonly rule: RuleWord;
  readonly title: string;
  readonly source: string;
  /** Things it was applied to; 0 where nothing of that kind is drawn. */
  readonly lookedAt: number;
  /** Findings of it, by their weight. */
  readonly fail: number;
  readonly warn: number;
  readonly note: number;
}

/** Two-pole circuits take two of the three lines, three-pole all. */
export type PhasePair = 'AB' | 'BC' | 'CA' | 'ABC';

/** The branch circuit of one charger that has a run. */
export interface Circuit {
  readonly charger: string;
  readonly from: string;
  readonly breakerAmps: number;
  readonly phases: PhasePair;
  readonly conductor: { readonly size: string; readonly metal: Metal; readonly insulation: Insulation };
  readonly grounding: { readonly size: string };
  /** True where a pilot conductor is carried with the circuit; it returns on the grounding conductor. */
  readonly pilot: boolean;
  /** Current-carrying conductors in the fullest conduit on the way, nipples aside. */
  readonly currentCarrying: number;
  readonly ambientC: number;
  readonly factors: { readonly ambient: number; readonly bundling: number };
  /** Amperes after factors and terminal limit. */
  readonly ampacity: number;
  /** What fixed the conductor size: `ampacity` or `voltage drop`. */
  readonly sizedBy: 'ampacity' | 'voltage drop';
  /** Of its branch at rated current. */
  readonly branchDropPercent: number;
  /** From nominal to its box with everything on, as load management leaves it. */
  readonly totalDropPercent: number;
  /** The same where it alone runs at its rating and the rest of what is managed with it keeps the ceiling. */
  readonly worstDropPercent: number;
  readonly voltsAtBox: number;
  readonly conduits: readonly string[];
}

export interface ConduitConductor {
  /** Lines carry current; grounding and pilot conductors count for fill only. */
  readonly use: 'line' | 'grounding' | 'bonding' | 'pilot';
  readonly size: string;
  readonly insulation: string;
  readonly count: number;
}

/** One conduit between two places where it can be opened. Lengths in feet. */
export interface Conduit {
  readonly id: string;
  readonly method: Method;
  /** `"1-1/4"`; null for a tray. */
  readonly tradeSize: string | null;
  readonly length: number;
  readonly circuits: readonly string[];
  readonly conductors: readonly ConduitConductor[];
  readonly fillPercent: number;
  readonly fillLimit: number;
  readonly bends: number;
  readonly bendDegrees: number;
  readonly from: string;
  readonly to: string;
  readonly path: readonly (readonly [number, number, number])[];
  /** Raceways that it lies along, in order. */
  readonly raceways: readonly string[];
}

/** A box where conduits meet or end: at a drop, at a pull point, or where circuits part on the way. */
export interface Box {
  /** The drop, the pull point, or the junction's name in `Conduit.from` and `to`. */
  readonly id: string;
  readonly kind: 'drop' | 'junction' | 'pullpoint';
  readonly at: readonly [number, number, number];
  /** Those that end in it; at a pull point that only feeders pass, the feeders. */
  readonly conduits: readonly string[];
  /** Method and trade size of each of them: `EMT 3/4 in`. */
  readonly raceways: readonly string[];
  /** Least volume, cubic inches, for conductors to 6 AWG; null with larger ones. */
  readonly volume: number | null;
  /** Smallest standard metal box with that volume; null where none has. */
  readonly box: string | null;
  /** Least length, inches, where a conductor is 4 AWG or larger, and in the ground; else null. */
  readonly length: number | null;
  /** What lies over a box in the ground, which is a handhole with its cover at grade; null for one above grade. */
  readonly under: Surface | null;
  /** What it stands in, by the rule for boxes above grade; in the ground always wet. */
  readonly location: Location;
}

/** Class of traffic that a handhole and its cover bear. */
export type TrafficRating = 'Tier 8' | 'Tier 22' | 'H-20';

/** A box in the ground with its cover at grade, reached without digging. */
export interface Handhole {
  /** The junction or pull point. */
  readonly id: string;
  readonly at: readonly [number, number, number];
  /** `12 x 12 in`. */
  readonly size: string;
  readonly rating: TrafficRating;
}

export interface LineVolts {
  readonly AB: number;
  readonly BC: number;
  readonly CA: number;
  readonly AN?: number;
  readonly BN?: number;
  readonly CN?: number;
}

export interface LineAmps {
  readonly A: number;
  readonly B: number;
  readonly C: number;
  readonly N?: number;
}

/** Bolted fault currents at a place, A. */
export interface FaultAmps {
  /** Three-phase where there are three lines, else line to line; the most, which ratings are held against. */
  readonly most: number;
  /** X over R of that; absent where there is no resistance. */
  readonly xr?: number;
  /** The most of line to neutral; absent where there is no neutral, and at a box, to which none is brought. */
  readonly lineToNeutral?: number;
  /** The least of two lines, and of a line to the grounding conductor where the system is grounded. */
  readonly least: { readonly lineToLine: number; readonly lineToGround?: number };
  /** What motors add to the most, at so many times their full-load current; absent where there is none. */
  readonly motorAmps?: number;
  /** No source on the way gave a figure: the supply is taken as unlimited, and less is there in truth. */
  readonly isUnlimited: boolean;
}

/** Fault currents at the box of a charger, at the end of its branch. */
export interface ChargerFault extends FaultAmps {
  readonly charger: string;
}

export interface SupplyEquipment {
  readonly id: string;
  readonly volts: LineVolts;
  readonly amps: LineAmps;
  readonly connectedVa: number;
  readonly demandAmps: number;
  /** The same with no charger counted for less than the code's least load; absent where that is no more. */
  readonly unitDemandAmps?: number;
  readonly breakerAmps?: number;
  readonly percentLoaded?: number;
  readonly spareAmps?: number;
  readonly spareSpaces?: number;
  /** `fault.most`. */
  readonly faultAmps?: number;
  /** Absent where nothing is known, and at a source that gives no figure. */
  readonly fault?: FaultAmps;
  /** Line to line, the highest of its pairs with generation and nothing drawn; absent where no generation is drawn. */
  readonly highestVolts?: number;
  /** Line currents of its single-phase chargers as assigned, and as plain rotation would have them. */
  readonly balance?: { readonly assigned: LineBalance; readonly rotation: LineBalance };
  /** Share of their rated amperes that load management leaves its chargers; 1 where it has nothing to do. */
  readonly chargerShare: number;
}

/** Line currents of the chargers of one panel at their rated amperes. */
export interface LineBalance {
  readonly worstLineAmps: number;
  /** Greatest line current over the mean of the three, less one, percent. */
  readonly imbalancePercent: number;
}

export interface SupplyFeeder {
  readonly id: string;
  /** Length used, feet. */
  readonly length: number;
  readonly amps: LineAmps;
  readonly dropPercent: number;
  readonly lossWatts: number;
  readonly breakerAmps: number;
  /** Greatest line current that it is chosen for, A. */
  readonly demandAmps: number;
  /** In each of its raceways beside the lines: for grounding, or a supply-side bonding jumper; absent where nothing is. */
  readonly ground?: { readonly use: 'grounding' | 'bonding'; readonly size: string };
  /** `demandAmps` of the breaker. */
  readonly percentLoaded: number;
}

export interface SupplyTransformer {
  readonly id: string;
  /** 0 where the file gives no rating. */
  readonly kva: number;
  readonly loadKva: number;
  readonly percentLoaded: number;
  /** Greatest line current of its secondary, percent of the rated. */
  readonly worstLinePercent: number;
  /** In its windings; the loss of its core is not known. */
  readonly lossWatts: number;
}

/** Where a neutral is bonded to ground, or an electrode lands. Sizes are absent where no conductor is known to go by. */
export interface Bonded {
  readonly id: string;
  readonly of: 'service' | 'derived system' | 'structure';
  /** As given. */
  readonly electrode?: Electrode;
  /** Largest ungrounded conductor, with all that are in parallel. */
  readonly conductor?: { readonly size: string; readonly metal: Metal; readonly sets: number };
  /** Main or system bonding jumper; its size is null where no single conductor has its circular mils. */
  readonly jumper?: { readonly size: string | null; readonly mils: number | null; readonly metal: Metal };
  /** To the electrode; as to structural steel where none is given. */
  readonly electrodeConductor?: { readonly size: string; readonly metal: Metal };
}

/** The supply with every charger running at once; `withoutGeneration` where generation makes a difference. */
export interface Supply {
  readonly equipment: readonly SupplyEquipment[];
  readonly feeders: readonly SupplyFeeder[];
  readonly transformers: readonly SupplyTransformer[];
  readonly loads: readonly { readonly id: string; readonly lines: Lines }[];
  readonly bonded: readonly Bonded[];
  readonly withoutGeneration?: Omit<Supply, 'withoutGeneration'>;
}

/** One overcurrent device: where it stands, what it protects, and how it is known of. */
export interface Device {
  /** `P1.main`, `F1.from` and `F1.to` by the end of a feeder, `T1.primary`, `T1.secondary`; of a branch, the charger or load. */
  readonly id: string;
  /**
   * A main protects the busbar that it stands before, a primary or secondary device a transformer, a feeder device the
   * conductors that leave with it.
   */
  readonly use: 'main' | 'primary' | 'secondary' | 'feeder' | 'charger' | 'load';
  /** The equipment that it stands in. */
  readonly at: string;
  /** The element whose rating it has: equipment, feeder, charger or load. */
  readonly of: string;
  /** The elements that it protects: feeders, equipment, chargers, loads. */
  readonly protects: readonly string[];
  /** Null where nobody gives one. */
  readonly amps: number | null;
  readonly lines: Lines;
  readonly poles: number;
  /** Line to line, of the side that it stands on. */
  readonly volts: number;
  /**
   * `drawn`: the file says that it stands there. `assumed`: the file gives its rating, and where it stands is as usual.
   * `sized`: chosen for what the file gives. `missing`: something there needs one and nobody drew it.
   */
  readonly known: 'drawn' | 'assumed' | 'sized' | 'missing';
  /** True where it belongs to a feeder that stands already. */
  readonly existing: boolean;
  /** True where the file says that it has ground-fault protection of equipment. */
  readonly groundFault?: true;
  /** Its documented way to less arc energy, as the file says. */
  readonly arcEnergy?: ArcReduction;
}

/** Chargers of one rating in a load calculation, volt-amperes of all of them together. */
export interface ChargerLoad {
  readonly count: number;
  readonly amps: number;
  readonly volts: number;
  readonly phases: 1 | 3;
  /** At their rating. */
  readonly nameplateVa: number;
  /** Each counted for no less than the code's least load of a charger. */
  readonly unitVa: number;
}

/** Chargers that an energy management system holds to a ceiling. */
export interface ManagedLoad {
  /** Equipment where the ceiling is kept. */
  readonly equipment: string;
  /** Line current that the chargers there may come to, A, and as volt-amperes. */
  readonly amps: number;
  readonly ceilingVa: number;
  /** Of the chargers under it. */
  readonly nameplateVa: number;
  readonly unitVa: number;
}

/** Another load of a load calculation. */
export interface OtherLoad {
  readonly id: string;
  readonly name: string;
  readonly va: number;
  readonly continuous: boolean;
  /** Part of it that counts in demand; absent for all of it. */
  readonly demand?: number;
  readonly motor?: true;
}

/** Lines A, B, C, amperes. */
export type LineTriple = readonly [number, number, number];

/**
 * How a load is counted: `connected`, all ratings with nothing held back; `nameplate`, chargers at their rating or what
 * the energy management leaves; `unit`, each charger for no less than the code's least load, likewise; `measured`, the
 * larger of these two beside the measured demand of what stands already.
 */
export type LoadMethod = 'connected' | 'nameplate' | 'unit' | 'measured';

/** A load counted one way. */
export interface LoadCase {
  readonly method: LoadMethod;
  /** Continuous load counted once. */
  readonly kva: number;
  readonly amps: LineTriple;
  /** Continuous load counted as the code has it for devices and conductors; measured demand likewise. */
  readonly designAmps: LineTriple;
  /** Whether the greatest line is within the rating; null where none is known, and of `connected`, which sizes nothing. */
  readonly fits: boolean | null;
}

/** How far the volts fall when something comes on. */
export interface VoltageStep {
  /** The largest charger by itself, or everything at once. */
  readonly of: 'one' | 'all';
  readonly charger: string | null;
  /** The board where they fall most. */
  readonly board: string;
  readonly va: number;
  /** At the source's terminals; null where it gives no fault current. */
  readonly sourcePercent: number | null;
  /** At the board, the source's part among it; null where its ohms are not known. */
  readonly boardPercent: number | null;
}

/** The load of one service as an authority asks for it. */
export interface LoadCalculation {
  /** The utility's point of connection, or what else nothing feeds. */
  readonly source: string;
  /** What volts and amperes are given at: the service equipment where there is one piece, else the source. */
  readonly at: string;
  readonly volts: number;
  readonly phases: 1 | 3;
  /** The service equipment; what the source feeds first is taken where none is drawn as such. */
  readonly service: readonly { readonly id: string; readonly ratingAmps: number | null; readonly taken: boolean }[];
  /** Of all of it together, A; null where one has none. */
  readonly ratingAmps: number | null;
  readonly chargers: readonly ChargerLoad[];
  /** Chargers that no run reaches, which count for nothing. */
  readonly withoutRun: number;
  readonly managed: readonly ManagedLoad[];
  readonly loads: readonly OtherLoad[];
  /** Volt-amperes of generation, which takes nothing off. */
  readonly generationVa: number;
  /** Greatest measured demand of what stands already, A at `volts`; null where none is given. */
  readonly existingAmps: number | null;
  /** In the order of the methods; `measured` where there is a measured demand. */
  readonly cases: readonly LoadCase[];
  /** The one that asks for most, which decides. */
  readonly decides: LoadMethod;
  /** Greatest line of it, as designed for, A. */
  readonly designAmps: number;
  /** What of the rating is left; negative where it does not fit; null where no rating is known. */
  readonly spareAmps: number | null;
  /** Largest charger or load that may come on by itself, VA. */
  readonly largestStepVa: number;
  /** How far the volts fall when the largest charger starts, and when everything does; none where no charger runs. */
  readonly steps: readonly VoltageStep[];
  /** Least usual size of a utility's transformer that carries the load of that case, kVA; null past the largest. */
  readonly transformerKva: number | null;
}

/** What is bought for a row that is cut from sticks or reels, or ordered to length; whole feet. */
export interface Bought {
  /** Feet; its share by length where rows are cut from the same sticks. */
  readonly quantity: number;
  /** Length of one stick or reel; 0 where it is ordered to length. */
  readonly stock: number;
  /** Of it left over. */
  readonly left: number;
}

export interface TakeoffRow {
  readonly item: string;
  readonly spec: string;
  readonly quantity: number;
  /** Absent where just the quantity is bought. */
  readonly bought?: Bought;
  /** How much of the quantity is worked off the ground, higher than a hand reaches. */
  readonly high: number;
  /** How much of that is worked from a lift, higher than a ladder serves; absent where none is. */
  readonly lift?: number;
  /** `ft` is rewritten to the file's units on output. */
  readonly unit: string;
  readonly basis: string;
  /** Ids of what the row is made of. */
  readonly of: readonly string[];
  /**
   * How much of it, before waste, in each of them, how much of that off the ground and from a lift (`aloft`, absent where
   * none is), and the lengths that it is cut for where they are several.
   */
  readonly parts: readonly {
    readonly of: string;
    readonly quantity: number;
    readonly aloft?: { readonly high: number; readonly lift: number };
    readonly cut?: readonly number[];
  }[];
}

/** A day of charging: what each car gets under each rule. Energy in kilowatt-hours. */
export interface PlannedDay {
  readonly id: string;
  /** The rule that the lot is run by. */
  readonly strategy: DayStrategy;
  readonly limits: readonly DayLimitFields[];
  readonly cars: readonly {
    readonly arrive: string;
    readonly leave: string;
    readonly need: number;
    /** What its cord could give it without any limit. */
    readonly most: number;
    /** Null where it found no free stall. */
    readonly charger: string | null;
  }[];
  /** Empty where the day could not be worked; then a finding says why. */
  readonly strategies: Readonly<Partial<Record<DayStrategy, PlannedCharging>>>;
  readonly findings: readonly Finding[];
}

export type DayStrategy = 'unmanaged' | 'equal' | 'first' | 'deadline' | 'laxity';

export interface PlannedCharging {
  readonly energy: number;
  readonly short: number;
  readonly carsShort: number;
  readonly worstShort: number;
  readonly got: readonly number[];
  readonly peakKw: number;
  /** By limit and row, amperes of the chargers alone; kilowatts of a limit in them. */
  readonly peak: Readonly<Record<string, Readonly<Record<string, number>>>>;
  readonly energyCost: number;
  readonly demandCost: number;
  readonly cost: number;
}
