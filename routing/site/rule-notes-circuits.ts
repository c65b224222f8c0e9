import { CRITERION, OWN, PRACTICE, type RuleTold, TRADE } from './rule-told.ts';

const PILOT =
  'IEC 61851-1:2010 Annex A Table A.1 (the circuit of SAE J1772), as transcribed in public notes, not read in the standard itself';
const WIRE_CAPACITANCE =
  'upper end of 30 to 50 pF/ft given for wire in hobby and bus-design notes; a guess on the safe side: none measured for single conductors in grounded steel raceway was found. The limit in the listed instructions of the equipment rules';

const byPlace = (where: string): RuleTold => ({
  name: `ambient temperature ${where}`,
  unit: '°C',
  meaning: `Ambient temperature of raceways ${where}`,
  source:
    'the ambient temperature of the site where it is not given; a raceway may have one of its own, and one in the sun closer to a roof than 7/8 in is taken 33 °C (60 °F) warmer: NEC 310.15(B)(2) (from memory). Cooler ground is for the engineer to show',
  basis: 'NEC 310.15(B)(1), (2)',
  confirm: 'design temperature of the site',
});

/** Rules of branches, conduits and the takeoff. */
export const CIRCUIT_NOTES = {
  code: {
    name: 'code edition',
    unit: '',
    meaning: 'Edition of the code that checks cite',
    source: `${OWN}; the edition adopted at the site, with its amendments, rules`,
    basis: CRITERION,
    confirm: 'edition adopted at the site, with its amendments',
  },
  branchLimit: {
    name: 'longest branch',
    unit: 'ft',
    meaning: 'Longest conductor length of a branch',
    source: PRACTICE,
    basis: CRITERION,
    confirm: 'limit in the instructions of the equipment',
  },
  'allowance.equipment': {
    name: 'make-up at the equipment',
    unit: 'ft',
    meaning: 'Conductor added to a run at the equipment',
    source: `${PRACTICE}: 4 to 8 ft of make-up in a panel`,
    basis: TRADE,
  },
  'allowance.box': {
    name: 'make-up at the box',
    unit: 'ft',
    meaning: 'Conductor added to a run at the box',
    source: `${PRACTICE}: 1 to 2 ft a side; free length of 6 in is NEC 300.14 (from memory)`,
    basis: 'common practice; NEC 300.14',
  },
  ambientC: {
    name: 'ambient temperature',
    unit: '°C',
    meaning: 'Ambient temperature of branch conductors',
    source: `${PRACTICE}: a hot day outdoors in shade; the design temperature of the site belongs here`,
    basis: TRADE,
    confirm: 'design temperature of the site',
  },
  'placeAmbientC.overhead': byPlace('overhead, as under a canopy'),
  'placeAmbientC.surface': byPlace('on a surface'),
  'placeAmbientC.underground': byPlace('in the ground'),
  temperatureRangeC: {
    name: 'temperature range of raceways',
    unit: '°C',
    meaning: 'From the coldest to the hottest that exposed raceways get, for expansion fittings',
    source: `${PRACTICE}: about 100 °F between a winter night and summer sun; the range of the site belongs here`,
    basis: TRADE,
    confirm: 'temperature range of the site',
  },
  terminalC: {
    name: 'temperature rating of terminals',
    unit: '°C',
    meaning: 'Temperature rating of the terminals that branch conductors land on',
    source:
      'NEC 110.14(C) (from memory): 75 °C where the equipment is marked for it; 60 °C where it is not and the circuit is 100 A or less',
    basis: 'NEC 110.14(C)',
    confirm: 'markings of the equipment and its terminals',
  },
  'dropLimit.branch': {
    name: 'voltage drop of a branch',
    unit: '%',
    meaning: 'Largest voltage drop in the branch',
    source: 'NEC 210.19 informational note (from memory): a recommendation, not a requirement',
    basis: 'NEC 210.19 informational note',
  },
  'dropLimit.total': {
    name: 'voltage drop of feeders and branch',
    unit: '%',
    meaning: 'Largest voltage drop in feeders and branch together',
    source: 'NEC 210.19 and 215.2 informational notes (from memory): a recommendation, not a requirement',
    basis: 'NEC 210.19 and 215.2 informational notes',
  },
  powerFactor: {
    name: 'power factor of a charger',
    unit: '',
    meaning: 'Power factor of a charger, lagging',
    source: PRACTICE,
    basis: TRADE,
    confirm: 'data of the equipment',
  },
  bendLimit: {
    name: 'bends between pull points',
    unit: 'degrees',
    meaning: 'Most bend between pull points',
    source: 'NEC 358.26 EMT, 344.26 RMC, 352.26 PVC (from memory)',
    basis: 'NEC 358.26, 344.26, 352.26',
  },
  pullLimit: {
    name: 'longest pull',
    unit: 'ft',
    meaning: 'Longest pull between pull points',
    source: `${PRACTICE}: 100 to 200 ft, shorter with bends`,
    basis: TRADE,
  },
  'waste.conductor': {
    name: 'conductor waste',
    unit: 'share',
    meaning: 'Added to conductor lengths in the takeoff',
    source: `${PRACTICE}: 3 to 5% for long measured feeders; a trade training page uses 10`,
    basis: TRADE,
  },
  'waste.raceway': {
    name: 'raceway waste',
    unit: 'share',
    meaning: 'Added to raceway lengths in the takeoff',
    source: `${PRACTICE}: 5 to 10%`,
    basis: TRADE,
  },
  circuitsPerConduit: {
    name: 'circuits in one conduit',
    unit: '',
    meaning: 'Most charger circuits in one conduit',
    source:
      'three two-wire circuits are 6 current-carrying conductors at 80%, four would be 8 at 70%: NEC Table 310.15(C)(1); the choice is common practice',
    basis: 'NEC Table 310.15(C)(1)',
  },
  undergroundTradeSize: {
    name: 'smallest conduit in the ground',
    unit: 'in',
    meaning: 'Smallest trade size of a branch conduit in the ground',
    source: `${PRACTICE}: 3/4 to 1 in, so that it is not crushed in the trench and can be pulled again`,
    basis: TRADE,
  },
  'pilot.sourcePicofarads': {
    name: 'pilot capacitance of the source',
    unit: 'pF',
    meaning: 'Capacitance of the source side of a pilot circuit',
    source: `recommended source side; ${PILOT}`,
    basis: 'IEC 61851-1 Annex A',
    confirm: 'pilot data of the equipment',
  },
  'pilot.cordPicofaradsPerFoot': {
    name: 'pilot capacitance of the cord',
    unit: 'pF/ft',
    meaning: 'Capacitance of the pilot conductor in the cord',
    source: WIRE_CAPACITANCE,
    basis: CRITERION,
    confirm: 'data of the cord, or a measured value',
  },
  'pilot.branchPicofaradsPerFoot': {
    name: 'pilot capacitance of the branch',
    unit: 'pF/ft',
    meaning: 'Capacitance of the pilot pair in the branch',
    source: WIRE_CAPACITANCE,
    basis: CRITERION,
    confirm: 'a measured value, or the longest pilot that the equipment is listed for',
  },
  'pilot.budgetPicofarads': {
    name: 'pilot capacitance in all',
    unit: 'pF',
    meaning: 'Most capacitance of source and cable together',
    source: PILOT,
    basis: 'IEC 61851-1 Annex A',
    confirm: 'pilot data of the equipment',
  },
  metal: {
    name: 'conductor metal',
    unit: '',
    meaning: 'Metal of new branch conductors',
    source: PRACTICE,
    basis: CRITERION,
  },
  insulation: {
    name: 'conductor insulation',
    unit: '',
    meaning: 'Insulation of new branch conductors',
    source: `${PRACTICE}: rated for wet places, as raceways outdoors are`,
    basis: CRITERION,
  },
} as const satisfies Readonly<Record<string, RuleTold>>;
