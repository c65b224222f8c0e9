import type { Point2, Point3 } from '../plane/point.ts';
import type { Kind, Of } from './kinds/kind.ts';
import type { ElementList, KINDS } from './kinds/kinds.ts';
import type { ChargingDay } from './schema/day-schema.ts';
import type { markSchema } from './schema/mark-schema.ts';
import type { inletSchema, siteFileSchema, vehicleSchema } from './schema/schema.ts';
import type {
  AccessibleBy,
  BentTradeSize,
  Insulation,
  LeastTradeSize,
  Location,
  Metal,
  Units,
} from './schema/vocabulary.ts';

/** The document as it stands in the file: in the file's units, nothing defaulted. What edits change and what is saved. */
export type SiteFile = Of<typeof siteFileSchema>;

export type { Aisle } from './kinds/aisles.ts';
export type { Boundary } from './kinds/boundaries.ts';
export type { Charger } from './kinds/chargers.ts';
export type { Column } from './kinds/columns.ts';
export type { Drop } from './kinds/drops.ts';
export type { Equipment } from './kinds/equipment.ts';
export type { Feeder } from './kinds/feeders.ts';
export type { Keepout } from './kinds/keepouts.ts';
export type { Load } from './kinds/loads.ts';
export type { Member } from './kinds/members.ts';
export type { Pullpoint } from './kinds/pullpoints.ts';
export type { Raceway } from './kinds/raceways.ts';
export type { Stall } from './kinds/stalls.ts';
export type { ChargingDay } from './schema/day-schema.ts';
export type { Point2, Point3 };
export type Inlet = Of<typeof inletSchema>;
export type Vehicle = Of<typeof vehicleSchema>;
/** What the title block says of the job; nothing of it is invented where it is absent. */
export type Project = NonNullable<SiteFile['project']>;
export type Drawings = NonNullable<SiteFile['drawings']>;
export type Georef = NonNullable<SiteFile['georef']>;
/** Where a circuit was issued: a plan keeps it there as long as it can. */
export type IssuedCircuit = NonNullable<NonNullable<SiteFile['issued']>['circuits']>[string];
export interface Issued {
  /** By the id of a charger, a load or an outgoing feeder. */
  readonly circuits: ReadonlyMap<string, IssuedCircuit>;
  /** Names by a charger and the place of the conduit on its way: `EV05/2`. */
  readonly conduits: ReadonlyMap<string, string>;
  /** Names by a charger and the place of the junction on its way: `EV05/1`. */
  readonly boxes: ReadonlyMap<string, string>;
}
export type AsBuilt = NonNullable<SiteFile['asBuilt']>[string];
/** One thing that one person wrote down in the field; see `routing/site/records/`. */
export type Mark = Of<typeof markSchema>;
/** What lies under the drawing and where; nothing is reckoned from it. */
export type Underlay = NonNullable<SiteFile['underlay']>;
/** Reference lines, which may be turned about an origin of their own; what is measured from them is on `onGrid`. */
export interface Gridlines {
  readonly x: readonly Gridline[];
  readonly y: readonly Gridline[];
  /** Degrees counter-clockwise; 0 where absent. */
  readonly rotation?: number;
  /** Where their zero lies, feet; the site's where absent. */
  readonly origin?: Point2;
}
export interface Gridline {
  readonly label: string;
  readonly at: number;
}

/** Every rule with a value: the file's where it gives one, else the default. Lengths in feet. */
export interface Rules {
  readonly code: string;
  readonly branchLimit: number;
  readonly cordLimit: number;
  readonly cordSlack: number;
  readonly tapLimit: number;
  readonly hangReach: number;
  readonly joinTolerance: number;
  /** Farther from the drawing than this, what was built is told. */
  readonly builtTolerance: number;
  readonly headClearance: number;
  readonly coverage: number;
  readonly allowance: { readonly equipment: number; readonly box: number; readonly electrode: number };
  readonly ambientC: number;
  /** Of raceways by their place; a branch takes the hottest on its way. */
  readonly placeAmbientC: { readonly overhead: number; readonly surface: number; readonly underground: number };
  /** From the coldest to the hottest that raceways get. */
  readonly temperatureRangeC: number;
  readonly terminalC: 60 | 75 | 90;
  readonly dropLimit: { readonly branch: number; readonly total: number };
  readonly powerFactor: number;
  /** Share of third harmonic in the current of loads from a line to neutral. */
  readonly thirdHarmonic: number;
  /** Hours a year that the chargers come to at full rate. */
  readonly chargingHours: number;
  readonly fault: {
    /** Of conductors at the highest fault current; the lowest is at that of the tables, 75 °C. */
    readonly coldC: number;
    readonly impedanceTolerance: number;
    readonly tripTimes: number;
    /** Times its full-load current that a motor feeds into a fault. */
    readonly motorTimes: number;
  };
  readonly bendLimit: number;
  readonly pullLimit: number;
  readonly waste: { readonly conductor: number; readonly raceway: number };
  readonly restHeight: { readonly low: number; readonly high: number };
  /** Highest that the box of a pedestal or on a wall is. */
  readonly pedestalHeight: number;
  /** Counts and sizes that accessible charging stalls are checked by. */
  readonly accessibleBy: AccessibleBy;
  readonly clearHeight: { readonly aisle: number; readonly stall: number; readonly van: number; readonly walk: number };
  readonly circuitsPerConduit: number;
  /** Smallest conduit that is laid in the ground. */
  readonly undergroundTradeSize: LeastTradeSize;
  /** Largest steel conduit that is bent on the job at corners. */
  readonly bentTradeSize: BentTradeSize;
  /** What lies higher is worked from a ladder, and from a lift. */
  readonly workHeight: { readonly ladder: number; readonly lift: number };
  /** What boxes above grade stand in. */
  readonly boxLocation: Location;
  readonly pilot: {
    readonly sourcePicofarads: number;
    readonly cordPicofaradsPerFoot: number;
    readonly branchPicofaradsPerFoot: number;
    readonly budgetPicofarads: number;
  };
  /** Branch conductors: metal and insulation of new circuits. */
  readonly metal: Metal;
  readonly insulation: Insulation;
  /** Class of the vehicle in a stall that names none. */
  readonly vehicle: string;
}

type Kinds = typeof KINDS;
/** Elements of a list as the engine reads them. */
type ElementsOf<K> = K extends Kind<infer _, infer E> ? readonly E[] : never;
type ElementLists = { readonly [L in ElementList]: ElementsOf<Kinds[L]> };

/**
 * The site as the engine reads it: feet throughout, every list present, rules and vehicle classes resolved.
 * Elements are shared with the file they came from, or with the last conversion, so that identity means unchanged.
 */
export interface Site extends ElementLists {
  readonly name: string;
  readonly project: Project;
  /** What the drawing set is for, and what is in it. */
  readonly drawings: Drawings;
  /** Units of the file the site came from; only for showing and writing lengths. */
  readonly units: Units;
  readonly gridlines: Gridlines;
  readonly vehicles: ReadonlyMap<string, Vehicle>;
  readonly rules: Rules;
  readonly georef?: Georef;
  /** What was measured: of the file, and over it what its records say now. */
  readonly asBuilt: ReadonlyMap<string, AsBuilt>;
  /** What was written down in the field, lengths in feet. */
  readonly records: readonly Mark[];
  readonly issued: Issued;
  readonly days: readonly ChargingDay[];
  readonly underlay?: Underlay;
  /** What lies over it, from the lowest up; all of it under the drawing. */
  readonly underlays?: readonly Underlay[];
}
