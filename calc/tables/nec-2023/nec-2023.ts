import type { CodeTables } from '../code-tables.ts';
import { AMPACITY } from './ampacity.ts';
import { BOX_ALLOWANCES, METAL_BOXES, PULL_BOXES } from './boxes.ts';
import { CONDUCTORS, LEAST } from './conductors.ts';
import { CORDS } from './cords.ts';
import { AMBIENT, BUNDLING, ROOFTOP } from './correction.ts';
import { BEND_LIMIT, BENDS, FILL, JAM } from './fill.ts';
import { BONDING_JUMPERS, ELECTRODE_CONDUCTORS, GROUNDING } from './grounding.ts';
import { IMPEDANCES } from './impedances.ts';
import { INSULATED, INSULATION_ROWS } from './insulated.ts';
import { CONTINUOUS, NEXT_RATING, SMALL_CONDUCTORS, STANDARD_RATINGS, TERMINALS } from './overcurrent.ts';
import { COVER, DROP_ADVICE, VEHICLE_SUPPLY, WORKING_SPACE } from './places.ts';
import { RACEWAYS } from './raceways.ts';
import { RULE_BASES } from './rule-bases.ts';
import { SECTIONS } from './sections.ts';
import {
  ARC_ENERGY,
  ARC_FLASH_LABEL,
  BUS_SOURCES,
  DAMAGE,
  EXISTING_DEMAND,
  GROUND_FAULT,
  MOTORS,
  SERIES_MOTORS,
} from './service.ts';
import { EXPANSION, SUPPORTS, VERTICAL_SUPPORTS } from './supports.ts';
import {
  SINGLE_PHASE_IMPEDANCES,
  SINGLE_PHASE_TRANSFORMERS,
  THREE_PHASE_IMPEDANCES,
  THREE_PHASE_TRANSFORMERS,
  TRANSFORMER_PROTECTION,
} from './transformers.ts';
import { UNPROTECTED } from './unprotected.ts';
import { LOW_VOLTAGE, NOMINAL_VOLTS } from './volts.ts';

/** NFPA 70, 2023 edition: figures only, each table with how far it was checked. */
export const NEC_2023: CodeTables = {
  edition: 'NEC 2023',
  code: 'NEC',
  sections: SECTIONS,
  ruleBases: RULE_BASES,
  least: LEAST,
  ampacity: AMPACITY,
  insulations: INSULATION_ROWS,
  ambient: AMBIENT,
  bundling: BUNDLING,
  rooftop: ROOFTOP,
  smallConductors: SMALL_CONDUCTORS,
  standardRatings: STANDARD_RATINGS,
  nextRating: NEXT_RATING,
  grounding: GROUNDING,
  electrodeConductors: ELECTRODE_CONDUCTORS,
  bondingJumpers: BONDING_JUMPERS,
  terminals: TERMINALS,
  continuous: CONTINUOUS,
  fill: FILL,
  jam: JAM,
  bends: BENDS,
  bendLimit: BEND_LIMIT,
  raceways: RACEWAYS,
  insulated: INSULATED,
  conductors: CONDUCTORS,
  impedances: IMPEDANCES,
  supports: SUPPORTS,
  expansion: EXPANSION,
  cover: COVER,
  verticalSupports: VERTICAL_SUPPORTS,
  boxAllowances: BOX_ALLOWANCES,
  metalBoxes: METAL_BOXES,
  pullBoxes: PULL_BOXES,
  transformerProtection: TRANSFORMER_PROTECTION,
  unprotected: UNPROTECTED,
  lowVoltage: LOW_VOLTAGE,
  threePhaseTransformers: THREE_PHASE_TRANSFORMERS,
  singlePhaseTransformers: SINGLE_PHASE_TRANSFORMERS,
  singlePhaseImpedances: SINGLE_PHASE_IMPEDANCES,
  threePhaseImpedances: THREE_PHASE_IMPEDANCES,
  workingSpace: WORKING_SPACE,
  dropAdvice: DROP_ADVICE,
  nominalVolts: NOMINAL_VOLTS,
  existingDemand: EXISTING_DEMAND,
  groundFault: GROUND_FAULT,
  arcEnergy: ARC_ENERGY,
  motors: MOTORS,
  arcFlashLabel: ARC_FLASH_LABEL,
  seriesMotors: SERIES_MOTORS,
  busSources: BUS_SOURCES,
  damage: DAMAGE,
  cords: CORDS,
  vehicleSupply: VEHICLE_SUPPLY,
};
