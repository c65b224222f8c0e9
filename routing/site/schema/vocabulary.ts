/** The closed word lists of the site file. Each type is read from its list, so the list is there at run time. */

export const UNITS = ['ft', 'm'] as const;
export type Units = (typeof UNITS)[number];

/** Use of a stall: `ambulatory` is wider for who walks with an aid, without an access aisle. */
export const STALL_USES = ['standard', 'accessible', 'van-accessible', 'ambulatory'] as const;
/** By which published counts and sizes accessible charging stalls are checked. */
export const ACCESSIBLE_BY = ['none', 'access-board', 'california'] as const;
export type AccessibleBy = (typeof ACCESSIBLE_BY)[number];

export const PARKING_WAYS = ['nose-in', 'back-in', 'either'] as const;

/** The two ways a car can stand in a stall. */
export const DIRECTIONS = ['nose-in', 'back-in'] as const;
export type Direction = (typeof DIRECTIONS)[number];

export const INLET_SIDES = ['left', 'right', 'front', 'rear'] as const;

export const KEEPOUT_BLOCKS = ['raceway', 'drop', 'equipment', 'cord'] as const;
export type KeepoutBlocks = (typeof KEEPOUT_BLOCKS)[number];

/** What an aisle is for: cars, fire apparatus too, people on foot, or the accessible aisle and route beside a stall. */
export const AISLE_KINDS = ['drive', 'fire', 'walk', 'access'] as const;
export type AisleKind = (typeof AISLE_KINDS)[number];
export const AISLE_WORDS: Readonly<Record<AisleKind, string>> = {
  drive: 'drive aisle',
  fire: 'fire lane',
  walk: 'walk',
  access: 'access aisle',
};

export const BOUNDARY_KINDS = ['property', 'right-of-way', 'easement', 'street'] as const;
export type BoundaryKind = (typeof BOUNDARY_KINDS)[number];
export const BOUNDARY_WORDS: Readonly<Record<BoundaryKind, string>> = {
  property: 'property line',
  'right-of-way': 'right-of-way line',
  easement: 'easement line',
  street: 'street centerline',
};

export const EQUIPMENT_KINDS = [
  'source',
  'service',
  'panelboard',
  'switchboard',
  'transformer',
  'disconnect',
  'inverter',
] as const;
export type EquipmentKind = (typeof EQUIPMENT_KINDS)[number];
/** What a kind of equipment is called. */
export const EQUIPMENT_WORDS: Readonly<Record<EquipmentKind, string>> = {
  source: 'source',
  service: 'service equipment',
  panelboard: 'panelboard',
  switchboard: 'switchboard',
  transformer: 'transformer',
  disconnect: 'disconnect',
  inverter: 'inverter',
};

/** What a system is grounded to. */
export const ELECTRODES = ['building-steel', 'water-pipe', 'concrete-encased', 'ring', 'rods'] as const;
export type Electrode = (typeof ELECTRODES)[number];
export const ELECTRODE_WORDS: Readonly<Record<Electrode, string>> = {
  'building-steel': 'structural steel',
  'water-pipe': 'a metal water pipe',
  'concrete-encased': 'a concrete-encased electrode',
  ring: 'a ground ring',
  rods: 'ground rods',
};

export const METHODS = ['EMT', 'RMC', 'IMC', 'PVC40', 'PVC80', 'LFMC', 'tray'] as const;
/** Wiring method of a raceway. */
export type Method = (typeof METHODS)[number];

export const PLACES = ['overhead', 'surface', 'underground'] as const;
export type Place = (typeof PLACES)[number];

/** What is cut open and made good over a trench. */
export const SURFACES = ['asphalt', 'concrete', 'soil'] as const;
export type Surface = (typeof SURFACES)[number];

/** Trade sizes that may be the least in the ground. */
export const LEAST_TRADE_SIZES = ['1/2', '3/4', '1', '1-1/4', '1-1/2', '2'] as const;
export type LeastTradeSize = (typeof LEAST_TRADE_SIZES)[number];

/** Largest conduit that is bent on the job. */
export const BENT_TRADE_SIZES = ['none', ...LEAST_TRADE_SIZES] as const;
export type BentTradeSize = (typeof BENT_TRADE_SIZES)[number];

/** What boxes above grade stand in: open to the weather, under a roof that is open at its sides, or indoors. */
export const LOCATIONS = ['wet', 'damp', 'dry'] as const;
export type Location = (typeof LOCATIONS)[number];

export const MOUNTS = ['overhead', 'pedestal', 'wall'] as const;
export type Mount = (typeof MOUNTS)[number];

/** Kinds of file that can lie under the drawing. */
export const UNDERLAY_KINDS = ['png', 'jpeg', 'svg', 'pdf', 'dxf', 'geojson'] as const;
export type UnderlayKind = (typeof UNDERLAY_KINDS)[number];

/**
 * Where the overcurrent device of a feeder stands: in what feeds it, in what it feeds, one in each, or none at either end, as
 * of a tap that supplies a transformer.
 */
export const DEVICE_PLACES = ['from', 'to', 'both', 'none'] as const;
export type DevicePlace = (typeof DEVICE_PLACES)[number];

/** Ways to less arc energy at a large breaker. */
export const ARC_REDUCTIONS = [
  'zone-interlocking',
  'differential',
  'maintenance-switch',
  'active-mitigation',
  'instantaneous-trip',
  'instantaneous-override',
  'equivalent',
] as const;
export type ArcReduction = (typeof ARC_REDUCTIONS)[number];
export const ARC_WORDS: Readonly<Record<ArcReduction, string>> = {
  'zone-interlocking': 'zone-selective interlocking',
  differential: 'differential relaying',
  'maintenance-switch': 'an energy-reducing maintenance switch',
  'active-mitigation': 'active arc-flash mitigation',
  'instantaneous-trip': 'an instantaneous trip setting',
  'instantaneous-override': 'an instantaneous override',
  equivalent: 'approved equivalent means',
};

/** What lets conductors start without a device and no drawing shows. */
export const TAP_CONDITIONS = ['high-bay', 'industrial'] as const;
export type TapCondition = (typeof TAP_CONDITIONS)[number];

export const METALS = ['copper', 'aluminum'] as const;
export type Metal = (typeof METALS)[number];
/** Spellings of a metal that a file may use; the engine knows only the words. */
export const METAL_SPELLINGS = ['copper', 'aluminum', 'Cu', 'Al'] as const;
export type MetalSpelling = (typeof METAL_SPELLINGS)[number];
/** The metal a spelling stands for. */
export const metalOf = (spelling: MetalSpelling): Metal =>
  spelling === 'Cu' ? 'copper' : spelling === 'Al' ? 'aluminum' : spelling;

export const INSULATIONS = ['THWN-2', 'XHHW-2', 'THHN', 'THWN', 'XHHW', 'THW', 'TW', 'RHW-2', 'USE-2'] as const;
export type Insulation = (typeof INSULATIONS)[number];

export const LINES = ['A', 'B', 'C', 'AB', 'BC', 'CA', 'ABC'] as const;
export type Lines = (typeof LINES)[number];

/** What a drawing set is for. */
export const SET_PURPOSES = ['permit', 'bid', 'construction', 'as-built'] as const;
export type SetPurpose = (typeof SET_PURPOSES)[number];

/** What a drawing set is made of beside its cover, in the order of its sheets. */
export const SHEET_PARTS = [
  'basis',
  'legend',
  'plan',
  'strips',
  'sections',
  'enlarged',
  'details',
  'one-line',
  'loads',
  'circuits',
  'panels',
  'feeders',
  'conduits',
  'setting-out',
  'accessible',
  'takeoff',
  'steel',
  'days',
  'raised',
  'checklist',
  'open-items',
  'photos',
] as const;
export type SheetPart = (typeof SHEET_PARTS)[number];
