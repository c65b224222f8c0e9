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
