import type { Rules } from '../../routing/site/site.ts';
import type { CodeTables } from './code-tables.ts';
import { AMPACITY } from './nec-2023/ampacity.ts';
import { BOX_ALLOWANCES, METAL_BOXES, PULL_BOXES } from './nec-2023/boxes.ts';
import { CONDUCTORS } from './nec-2023/conductors.ts';
import { AMBIENT, BUNDLING, ROOFTOP } from './nec-2023/correction.ts';
import { BEND_LIMIT, BENDS, FILL, JAM } from './nec-2023/fill.ts';
import { GROUNDING } from './nec-2023/grounding.ts';
import { IMPEDANCES } from './nec-2023/impedances.ts';
import { INSULATED, INSULATIONS } from './nec-2023/insulated.ts';
import { CONTINUOUS, NEXT_RATING, SMALL_CONDUCTORS, STANDARD_RATINGS, TERMINALS } from './nec-2023/overcurrent.ts';
import { COVER, DROP_ADVICE, VEHICLE_SUPPLY, WORKING_SPACE } from './nec-2023/places.ts';
import { RACEWAYS } from './nec-2023/raceways.ts';
import { EXPANSION, SUPPORTS, VERTICAL_SUPPORTS } from './nec-2023/supports.ts';
import {
  SINGLE_PHASE_IMPEDANCES,
  SINGLE_PHASE_TRANSFORMERS,
  THREE_PHASE_IMPEDANCES,
  THREE_PHASE_TRANSFORMERS,
  TRANSFORMER_PROTECTION,
} from './nec-2023/transformers.ts';

/** NFPA 70, 2023 edition: figures only, each table with how far it was checked. */
export const NEC_2023: CodeTables = {
  edition: 'NEC 2023',
  ampacity: AMPACITY,
  insulations: INSULATIONS,
  ambient: AMBIENT,
  bundling: BUNDLING,
  rooftop: ROOFTOP,
  smallConductors: SMALL_CONDUCTORS,
  standardRatings: STANDARD_RATINGS,
  nextRating: NEXT_RATING,
  grounding: GROUNDING,
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
  threePhaseTransformers: THREE_PHASE_TRANSFORMERS,
  singlePhaseTransformers: SINGLE_PHASE_TRANSFORMERS,
  singlePhaseImpedances: SINGLE_PHASE_IMPEDANCES,
  threePhaseImpedances: THREE_PHASE_IMPEDANCES,
  workingSpace: WORKING_SPACE,
  dropAdvice: DROP_ADVICE,
  vehicleSupply: VEHICLE_SUPPLY,
};

const HELD: readonly CodeTables[] = [NEC_2023];

/** Names of the editions whose tables are held. */
export const EDITIONS: readonly string[] = HELD.map(({ edition }) => edition);

/**
 * Tables of the edition that `rules.code` names, such as `"NEC 2023"`; undefined where it is not held.
 * @example
 * // The edition is that of NFPA 70, 2023
 * tablesFor('NEC 2023')?.edition // 'NEC 2023'
 * tablesFor('NEC 1897') // undefined
 */
export const tablesFor = (code: string): CodeTables | undefined => HELD.find((tables) => tables.edition === code);

/** Tables that a site is planned by: those of its edition, or where they are not held the newest that are. */
export const tablesOf = ({ code }: Pick<Rules, 'code'>): CodeTables => tablesFor(code) ?? NEC_2023;

/** The edition that a site is planned by, in words; where it asks for one that is not held, that too. */
export function editionWords(rules: Pick<Rules, 'code'>): string {
  const { edition } = tablesOf(rules);
  return edition === rules.code
    ? edition
    : `the tables of ${edition}: those of ${JSON.stringify(rules.code)} are not held`;
}
