import type * as v from 'valibot';
import type { Point2, Point3 } from '../plane/point.ts';
import type {
  aisleSchema,
  chargerSchema,
  columnSchema,
  dropSchema,
  equipmentSchema,
  feederSchema,
  inletSchema,
  keepoutSchema,
  loadSchema,
  memberSchema,
  pullpointSchema,
  racewaySchema,
  siteFileSchema,
  stallSchema,
  vehicleSchema,
} from './schema.ts';
import type { Insulation, LeastTradeSize, Metal, Units } from './vocabulary.ts';

type DeepReadonly<T> = T extends (infer _)[]
  ? { readonly [K in keyof T]: DeepReadonly<T[K]> }
  : T extends object
    ? { readonly [K in keyof T]: DeepReadonly<T[K]> }
    : T;
type Of<S extends v.GenericSchema> = DeepReadonly<v.InferOutput<S>>;

/** The document as it stands in the file: in the file's units, nothing defaulted. What edits change and what is saved. */
export type SiteFile = Of<typeof siteFileSchema>;

export type { Point2, Point3 };

export type Stall = Of<typeof stallSchema>;
export type Column = Of<typeof columnSchema>;
export type Member = Of<typeof memberSchema>;
export type Keepout = Of<typeof keepoutSchema>;
export type Aisle = Of<typeof aisleSchema>;
export type Equipment = Of<typeof equipmentSchema>;
type FeederRecord = Of<typeof feederSchema>;
export interface Feeder extends Omit<FeederRecord, 'conductor'> {
  readonly conductor: Omit<FeederRecord['conductor'], 'metal'> & { readonly metal: Metal };
}
export type Load = Of<typeof loadSchema>;
export type Raceway = Of<typeof racewaySchema>;
export type Pullpoint = Of<typeof pullpointSchema>;
export type Drop = Of<typeof dropSchema>;
export type Charger = Of<typeof chargerSchema>;
export type Inlet = Of<typeof inletSchema>;
export type Vehicle = Of<typeof vehicleSchema>;
export type Georef = NonNullable<SiteFile['georef']>;
/** Where a circuit was issued: a plan keeps it there as long as it can. */
export type IssuedCircuit = NonNullable<NonNullable<SiteFile['issued']>['circuits']>[string];
export interface Issued {
  /** By the id of a charger, a load or an outgoing feeder. */
  readonly circuits: ReadonlyMap<string, IssuedCircuit>;
}
export type AsBuilt = NonNullable<SiteFile['asBuilt']>[string];
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
  readonly allowance: { readonly equipment: number; readonly box: number };
  readonly ambientC: number;
  /** Of raceways by their place; a branch takes the hottest on its way. */
  readonly placeAmbientC: { readonly overhead: number; readonly surface: number; readonly underground: number };
  /** From the coldest to the hottest that raceways get. */
  readonly temperatureRangeC: number;
  readonly terminalC: 60 | 75 | 90;
  readonly dropLimit: { readonly branch: number; readonly total: number };
  readonly powerFactor: number;
  readonly bendLimit: number;
  readonly pullLimit: number;
  readonly waste: { readonly conductor: number; readonly raceway: number };
  readonly restHeight: { readonly low: number; readonly high: number };
  /** Highest that the box of a pedestal or on a wall is. */
  readonly pedestalHeight: number;
  readonly clearHeight: { readonly aisle: number; readonly stall: number; readonly van: number; readonly walk: number };
  readonly circuitsPerConduit: number;
  /** Smallest conduit that is laid in the ground. */
  readonly undergroundTradeSize: LeastTradeSize;
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

/**
 * The site as the engine reads it: feet throughout, every list present, rules and vehicle classes resolved.
 * Elements are shared with the file they came from, or with the last conversion, so that identity means unchanged.
 */
export interface Site {
  readonly name: string;
  /** Units of the file the site came from; only for showing and writing lengths. */
  readonly units: Units;
  readonly stalls: readonly Stall[];
  readonly columns: readonly Column[];
  readonly members: readonly Member[];
  readonly keepouts: readonly Keepout[];
  readonly aisles: readonly Aisle[];
  readonly gridlines: Gridlines;
  readonly equipment: readonly Equipment[];
  readonly feeders: readonly Feeder[];
  readonly loads: readonly Load[];
  readonly raceways: readonly Raceway[];
  readonly pullpoints: readonly Pullpoint[];
  readonly drops: readonly Drop[];
  readonly chargers: readonly Charger[];
  readonly vehicles: ReadonlyMap<string, Vehicle>;
  readonly rules: Rules;
  readonly georef?: Georef;
  readonly asBuilt: ReadonlyMap<string, AsBuilt>;
  readonly issued: Issued;
  readonly underlay?: Underlay;
  /** What lies over it, from the lowest up; all of it under the drawing. */
  readonly underlays?: readonly Underlay[];
}
