import type { ArcReduction, Electrode, Lines, Metal } from '../../routing/site/schema/vocabulary.ts';

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
