import { DEFAULT_RULES } from './rules.ts';
import type { Rules } from './site.ts';

/** The name of one rule: `branchLimit`, `allowance.box`. */
export type RulePath = {
  [K in keyof Rules]: Rules[K] extends object ? `${K}.${keyof Rules[K] & string}` : K;
}[keyof Rules];

export interface RuleNote {
  readonly path: RulePath;
  readonly default: string | number;
  /** Unit of the default; '' for a word or a plain count. Feet are shown in the units of the file. */
  readonly unit: string;
  /** What the rule decides. */
  readonly meaning: string;
  /** Where the default comes from, and how far it is to be trusted. */
  readonly source: string;
}

const PRACTICE = 'common practice, no source';
const OWN = 'a convention of this planner';
const PILOT =
  'IEC 61851-1:2010 Annex A Table A.1 (the circuit of SAE J1772), as transcribed in public notes, not read in the standard itself';
const WIRE_CAPACITANCE =
  'upper end of 30 to 50 pF/ft given for wire in hobby and bus-design notes; a guess on the safe side: none measured for single conductors in grounded steel raceway was found. The limit in the listed instructions of the equipment rules';

const BY_PLACE =
  'the ambientC of the site where it is not given; a raceway may have an ambientC of its own, and one in the sun closer to a roof than 7/8 in is taken 33 C warmer: NEC 310.15(B)(2) (from memory). Cooler ground is for the engineer to show';

type Note = readonly [unit: string, meaning: string, source: string];

const NOTES: Readonly<Record<RulePath, Note>> = {
  code: [
    '',
    'Edition of the code that checks cite',
    `${OWN}; the edition adopted at the site, with its amendments, rules`,
  ],
  branchLimit: ['ft', 'Longest conductor length of a branch', PRACTICE],
  cordLimit: [
    'ft',
    'Longest usable output cord, unless the equipment is listed with a cable management system',
    'NEC 625.17(C), as summarised in trade teaching; measured from the cable exit to the face of the connector (from memory)',
  ],
  cordSlack: ['ft', 'Cord kept back for a drip loop, handling and misparking', `${PRACTICE}: 2 to 4 ft`],
  tapLimit: ['ft', 'Longest tap from a raceway to a box or an entry', PRACTICE],
  hangReach: ['ft', 'Farthest in plan that a member holds what hangs overhead', PRACTICE],
  joinTolerance: ['ft', 'Raceways closer than this touch', `${OWN}: allows for slips of drawing`],
  builtTolerance: ['ft', 'Farther from the drawing than this, what was built is told', PRACTICE],
  headClearance: [
    'ft',
    'Gap between the leading bumper and the head of the stall',
    `${PRACTICE}: 0 (touching the stop) to 2.5 ft (short-parked)`,
  ],
  coverage: ['', 'Share of the parking directions and inlets of a served stall that its cord must reach', OWN],
  'allowance.equipment': [
    'ft',
    'Conductor added to a run at the equipment',
    `${PRACTICE}: 4 to 8 ft of make-up in a panel`,
  ],
  'allowance.box': [
    'ft',
    'Conductor added to a run at the box',
    `${PRACTICE}: 1 to 2 ft a side; free length of 6 in is NEC 300.14 (from memory)`,
  ],
  ambientC: [
    'C',
    'Ambient temperature of branch conductors',
    `${PRACTICE}: a hot day outdoors in shade; the design temperature of the site belongs here`,
  ],
  'placeAmbientC.overhead': ['C', 'Ambient temperature of raceways overhead, as under a canopy', BY_PLACE],
  'placeAmbientC.surface': ['C', 'Ambient temperature of raceways on a surface', BY_PLACE],
  'placeAmbientC.underground': ['C', 'Ambient temperature of raceways in the ground', BY_PLACE],
  temperatureRangeC: [
    'C',
    'From the coldest to the hottest that exposed raceways get, for expansion fittings',
    `${PRACTICE}: about 100 F between a winter night and summer sun; the range of the site belongs here`,
  ],
  terminalC: [
    'C',
    'Temperature rating of the terminals that branch conductors land on',
    'NEC 110.14(C) (from memory): 75 C where the equipment is marked for it; 60 C where it is not and the circuit is 100 A or less',
  ],
  'dropLimit.branch': [
    'percent',
    'Largest voltage drop in the branch',
    'NEC 210.19 informational note (from memory): a recommendation, not a requirement',
  ],
  'dropLimit.total': [
    'percent',
    'Largest voltage drop in feeders and branch together',
    'NEC 210.19 and 215.2 informational notes (from memory): a recommendation, not a requirement',
  ],
  powerFactor: ['', 'Power factor of a charger, lagging', PRACTICE],
  bendLimit: ['degrees', 'Most bend between pull points', 'NEC 358.26 EMT, 344.26 RMC, 352.26 PVC (from memory)'],
  pullLimit: ['ft', 'Longest pull between pull points', `${PRACTICE}: 100 to 200 ft, shorter with bends`],
  'waste.conductor': [
    'share',
    'Added to conductor lengths in the takeoff',
    `${PRACTICE}: 3 to 5 percent for long measured feeders; a trade training page uses 10`,
  ],
  'waste.raceway': ['share', 'Added to raceway lengths in the takeoff', `${PRACTICE}: 5 to 10 percent`],
  'restHeight.low': ['ft', 'Least height of a stowed connector', 'NEC 625.50, outdoors: 24 in'],
  'restHeight.high': [
    'ft',
    'Greatest height of a stowed connector',
    '2010 ADA Standards 308, reach range: 48 in (from memory)',
  ],
  pedestalHeight: [
    'ft',
    'Highest box of a pedestal or on a wall',
    `${PRACTICE}: what a hand reaches, 48 in by the 2010 ADA Standards 308 (from memory)`,
  ],
  'clearHeight.aisle': [
    'ft',
    'Least clear height over drive aisles',
    `${PRACTICE}: 13 ft 6 in where fire apparatus pass; the fire official decides`,
  ],
  'clearHeight.stall': ['ft', 'Least clear height over stalls', `${PRACTICE}: 80 to 84 in`],
  'clearHeight.van': [
    'ft',
    'Least clear height over van-accessible stalls, their access aisles and their way',
    '2010 ADA Standards 502.5: 98 in',
  ],
  'clearHeight.walk': ['ft', 'Least headroom over walks', '2010 ADA Standards 307.4: 80 in'],
  circuitsPerConduit: [
    '',
    'Most charger circuits in one conduit',
    'three two-wire circuits are 6 current-carrying conductors at 80 percent, four would be 8 at 70: NEC Table 310.15(C)(1); the choice is common practice',
  ],
  'pilot.sourcePicofarads': [
    'pF',
    'Capacitance of the source side of a pilot circuit',
    `recommended source side; ${PILOT}`,
  ],
  'pilot.cordPicofaradsPerFoot': ['pF/ft', 'Capacitance of the pilot conductor in the cord', WIRE_CAPACITANCE],
  'pilot.branchPicofaradsPerFoot': ['pF/ft', 'Capacitance of the pilot pair in the branch', WIRE_CAPACITANCE],
  'pilot.budgetPicofarads': ['pF', 'Most capacitance of source and cable together', PILOT],
  metal: ['', 'Metal of new branch conductors', PRACTICE],
  insulation: [
    '',
    'Insulation of new branch conductors',
    `${PRACTICE}: rated for wet places, as raceways outdoors are`,
  ],
  vehicle: ['', 'Class of the vehicle in a stall that names none', OWN],
};

const defaultOf = (path: string): string | number =>
  path.split('.').reduce<unknown>((at, name) => (at as Readonly<Record<string, unknown>>)[name], DEFAULT_RULES) as
    | string
    | number;

/** Every rule with its default, its meaning and where the default comes from, in the order of the rules. */
export const RULE_NOTES: readonly RuleNote[] = Object.entries(NOTES).map(([path, [unit, meaning, source]]) => ({
  path: path as RulePath,
  default: defaultOf(path),
  unit,
  meaning,
  source,
}));
