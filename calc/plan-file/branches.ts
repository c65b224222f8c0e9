import type { Insulation, Location, Metal, Method, Surface } from '../../routing/site/schema/vocabulary.ts';

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
export interface PlannedBox {
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
