import * as v from 'valibot';
import {
  fraction,
  nonNegative,
  nonNegativeLength,
  number,
  positive,
  positiveLength,
  text,
  told,
  wholePositive,
} from './schema-parts.ts';
import {
  ACCESSIBLE_BY,
  BENT_TRADE_SIZES,
  INSULATIONS,
  LEAST_TRADE_SIZES,
  LOCATIONS,
  METAL_SPELLINGS,
} from './vocabulary.ts';

const maybe = v.exactOptional;

/** The rules a file may set; each has a default and a source in `rules.ts`. */
export const rulesSchema = v.strictObject({
  code: maybe(told(text, 'Edition of the code that checks cite.')),
  branchLimit: maybe(told(positiveLength, 'Longest conductor length of a branch.')),
  cordLimit: maybe(told(positiveLength, 'Longest usable cord.')),
  cordSlack: maybe(told(nonNegativeLength, 'Cord kept back for handling, out of the usable length.')),
  tapLimit: maybe(told(nonNegativeLength, 'Longest tap from a raceway to a box or an entry.')),
  hangReach: maybe(told(nonNegativeLength, 'What hangs overhead is held by a member no farther than this in plan.')),
  joinTolerance: maybe(told(nonNegativeLength, 'Raceways closer than this touch.')),
  builtTolerance: maybe(told(nonNegativeLength, 'Farther from the drawing than this, what was built is told.')),
  headClearance: maybe(told(nonNegativeLength, 'Gap between the leading bumper and the head of the stall.')),
  coverage: maybe(told(fraction, 'Share of the cases of a served stall that its cord must reach.')),
  allowance: maybe(
    told(
      v.strictObject({
        equipment: maybe(told(nonNegativeLength, 'Conductor added at the equipment.')),
        box: maybe(told(nonNegativeLength, 'Conductor added at the box.')),
        electrode: maybe(told(nonNegativeLength, 'Length of a conductor from equipment to its grounding electrode.')),
      }),
      'Conductor added to a run at its ends.',
    ),
  ),
  ambientC: maybe(told(number, 'Ambient temperature of branch conductors, degrees C.')),
  placeAmbientC: maybe(
    told(
      v.strictObject({ overhead: maybe(number), surface: maybe(number), underground: maybe(number) }),
      'Ambient temperature of raceways by their place, degrees C; ambientC where it is not given.',
    ),
  ),
  temperatureRangeC: maybe(told(nonNegative, 'From the coldest to the hottest that raceways get, degrees C.')),
  terminalC: maybe(told(v.picklist([60, 75, 90]), 'Temperature rating of terminals, degrees C.')),
  dropLimit: maybe(
    told(
      v.strictObject({
        branch: maybe(told(positive, 'In the branch, percent.')),
        total: maybe(told(positive, 'In feeders and branch, percent.')),
      }),
      'Largest voltage drop.',
    ),
  ),
  powerFactor: maybe(told(v.pipe(positive, v.maxValue(1)), 'Power factor of a charger, lagging.')),
  thirdHarmonic: maybe(
    told(
      fraction,
      'Share of third harmonic in the current of loads from a line to neutral, which adds up in the neutral.',
    ),
  ),
  chargingHours: maybe(
    told(v.pipe(nonNegative, v.maxValue(8760)), 'Hours a year that the chargers come to at full rate, for losses.'),
  ),
  fault: maybe(
    told(
      v.strictObject({
        coldC: maybe(told(number, 'Temperature of conductors at the highest fault current, degrees C.')),
        impedanceTolerance: maybe(
          told(
            v.pipe(nonNegative, v.ltValue(1)),
            'Share by which a transformer may have less, or more, than its nameplate impedance.',
          ),
        ),
        motorTimes: maybe(told(nonNegative, 'Times its full-load current that a motor feeds into a fault.')),
        tripTimes: maybe(told(positive, 'Times its rating at which a breaker trips at once.')),
      }),
      'Cases in which fault current is worked.',
    ),
  ),
  bendLimit: maybe(told(positive, 'Most bend between pull points, degrees.')),
  pullLimit: maybe(told(positiveLength, 'Longest pull between pull points.')),
  waste: maybe(
    told(
      v.strictObject({
        conductor: maybe(told(nonNegative, 'Share added to conductor lengths.')),
        raceway: maybe(told(nonNegative, 'Share added to raceway lengths.')),
      }),
      'Waste in the takeoff, as a share of the length.',
    ),
  ),
  restHeight: maybe(
    told(
      v.strictObject({ low: maybe(nonNegativeLength), high: maybe(nonNegativeLength) }),
      'Least and greatest height of a stowed connector.',
    ),
  ),
  pedestalHeight: maybe(told(positiveLength, 'Highest box of a pedestal or on a wall.')),
  accessibleBy: maybe(
    told(
      v.picklist(ACCESSIBLE_BY),
      'Counts and sizes by which accessible charging stalls are checked: those of the US Access Board (recommended and proposed), of California, or none.',
    ),
  ),
  clearHeight: maybe(
    told(
      v.strictObject({
        aisle: maybe(told(nonNegativeLength, 'Over drive aisles.')),
        stall: maybe(told(nonNegativeLength, 'Over stalls.')),
        van: maybe(told(nonNegativeLength, 'Over van-accessible stalls and their way.')),
        walk: maybe(told(nonNegativeLength, 'Over walks.')),
      }),
      'Least clear height.',
    ),
  ),
  circuitsPerConduit: maybe(told(wholePositive, 'Most charger circuits in one conduit.')),
  undergroundTradeSize: maybe(
    told(v.picklist(LEAST_TRADE_SIZES), 'Smallest trade size of a branch conduit in the ground.'),
  ),
  bentTradeSize: maybe(
    told(
      v.picklist(BENT_TRADE_SIZES),
      'Largest trade size of EMT, IMC and RMC that is bent on the job at corners; elbows are bought for larger ones.',
    ),
  ),
  workHeight: maybe(
    told(
      v.strictObject({
        ladder: maybe(told(nonNegativeLength, 'Higher than this, work is done from a ladder.')),
        lift: maybe(told(nonNegativeLength, 'Higher than this, work is done from a lift.')),
      }),
      'Heights above which work takes longer.',
    ),
  ),
  boxLocation: maybe(
    told(
      v.picklist(LOCATIONS),
      'What boxes and conduit bodies above grade stand in: `wet` open to the weather, `damp` under a roof, `dry` indoors.',
    ),
  ),
  pilot: maybe(
    told(
      v.strictObject({
        sourcePicofarads: maybe(told(nonNegative, 'Capacitance of the source side, pF.')),
        cordPicofaradsPerFoot: maybe(told(nonNegative, 'Of the cord, pF per foot whatever the units of the file.')),
        branchPicofaradsPerFoot: maybe(told(positive, 'Of the pilot pair in the branch, pF per foot likewise.')),
        budgetPicofarads: maybe(told(positive, 'Most of source and cable together, pF.')),
      }),
      'Capacitance budget of a pilot circuit carried in the branch.',
    ),
  ),
  metal: maybe(told(v.picklist(METAL_SPELLINGS), 'Metal of new branch conductors.')),
  insulation: maybe(told(v.picklist(INSULATIONS), 'Insulation of new branch conductors.')),
  vehicle: maybe(told(text, 'Class of the vehicle in a stall that names none.')),
});
