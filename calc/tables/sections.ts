/**
 * Where an edition of the code says what: section numbers without the name of the edition. Findings, steps and sheets
 * cite these, so that a sentence names the edition that it went by.
 */
export interface Sections {
  readonly interruptingRating: string;
  readonly availableFault: string;
  /** Series ratings: tested combinations, motors between their devices, what equipment is marked with. */
  readonly seriesRating: string;
  readonly seriesMotors: string;
  readonly seriesMarking: string;
  /** Warning of arc flash, and the dated label of large equipment. */
  readonly arcFlash: string;
  readonly arcFlashDated: string;
  /** Markings that are put on in the field, and what each disconnect is marked with. */
  readonly markings: string;
  readonly disconnectMarking: string;
  /** Selective coordination, where it is asked for. */
  readonly selective: string;
  /** Of charging equipment: its marking, receptacles with ground-fault interrupters, protection of persons in it. */
  readonly chargerMarking: string;
  readonly chargerReceptacle: string;
  readonly chargerPersons: string;
  /** A path on which a fault to ground trips its device. */
  readonly faultPath: string;
  readonly terminals: string;
  readonly workingSpace: string;
  readonly workingDepth: string;
  /** Width and height, read after `workingSpace`. */
  readonly workingSize: string;
  readonly entrances: string;
  /** The same, read after `workingSpace`. */
  readonly entrancesThere: string;
  readonly branchConductor: string;
  readonly feederConductor: string;
  readonly feederDevice: string;
  readonly chargerLoad: string;
  /** Charging as a continuous load for overcurrent protection. */
  readonly chargerDevice: string;
  /** Measured demand of what stands already. */
  readonly existingDemand: string;
  /** Protection at the next standard rating up. */
  readonly nextRating: string;
  /** The largest motor of several at more than its current; demand factors of other loads. */
  readonly severalMotors: string;
  readonly demandFactors: string;
  /** The same, and where it ends. */
  readonly nextRatings: string;
  readonly smallConductors: string;
  readonly grounding: string;
  /** Grounding conductors that grow with the others. */
  readonly groundingGrown: string;
  readonly groundingOfTaps: string;
  /** Electrode conductor and jumper of a separately derived system. */
  readonly derivedSystem: string;
  /** Bonding and grounding at the service. */
  readonly serviceGrounding: string;
  /** The electrode of a structure that a feeder supplies. */
  readonly structureElectrode: string;
  readonly bondingJumper: string;
  /** Sizes that a conductor to some electrodes need not pass. */
  readonly electrodeMost: string;
  readonly wetUnderground: string;
  readonly wetAbove: string;
  /** Boxes and fittings in damp and wet places; couplings and connectors of tubing there. */
  readonly wetBoxes: string;
  readonly wetFittings: string;
  /** Raceways that come out of the ground where they are subject to damage. */
  readonly risers: string;
  readonly expansion: string;
  readonly parallel: string;
  /** Where several ambients lie on one way. */
  readonly severalAmbients: string;
  readonly ampacity: string;
  /** Ampacity of ducts that warm one another. */
  readonly ductBank: string;
  readonly boxVolume: string;
  readonly pullBox: string;
  readonly boxAccess: string;
  readonly handholes: string;
  readonly handholeSize: string;
  readonly panelRating: string;
  readonly panelDevice: string;
  /** Of a panel behind a transformer. */
  readonly panelSecondary: string;
  readonly taps: string;
  readonly secondaries: string;
  /** Secondaries that the primary device may protect. */
  readonly primaryAlone: string;
  readonly cordLength: string;
  readonly loadManagement: string;
  /** The ceiling of load management as the load to be served. */
  readonly managedLoad: string;
  /** Cords of charging equipment by the table of their ampacity. */
  readonly chargerCord: string;
  /** Disconnecting means of charging equipment, and how any disconnect is locked open. */
  readonly chargerDisconnect: string;
  readonly lockable: string;
  /** Ground-fault protection of equipment: of services, of feeders. */
  readonly groundFaultService: string;
  readonly groundFaultFeeder: string;
  /** Energy management systems. */
  readonly energyManagement: string;
  readonly couplingHeight: string;
  readonly busSources: string;
}

interface Cited {
  readonly edition: string;
  readonly code: string;
  readonly sections: Sections;
}

/** Sections as a source names them: `NEC 2023 215.3, 625.42`. */
export const cited = ({ edition, sections }: Cited, ...names: readonly (keyof Sections)[]): string =>
  `${edition} ${names.map((name) => sections[name]).join(', ')}`;

/** The same by the short name of the code, where the edition stands elsewhere on the sheet: `NEC 408.36, 215.3`. */
export const citedShort = ({ code, sections }: Cited, ...names: readonly (keyof Sections)[]): string =>
  `${code} ${names.map((name) => sections[name]).join(', ')}`;
