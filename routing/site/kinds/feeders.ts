import * as v from 'valibot';
import {
  filledText,
  id,
  maybe,
  nonNegativeLength,
  positive,
  ref,
  told,
  wholePositive,
} from '../schema/schema-parts.ts';
import {
  ARC_REDUCTIONS,
  DEVICE_PLACES,
  INSULATIONS,
  METAL_SPELLINGS,
  METHODS,
  type Metal,
  metalOf,
  TAP_CONDITIONS,
} from '../schema/vocabulary.ts';
import type { Kind, KindDocs, Of } from './kind.ts';

export const feederSchema = v.strictObject({
  id,
  from: told(ref, 'Equipment that feeds.'),
  to: told(ref, 'Equipment that is fed.'),
  conductor: v.strictObject({
    size: filledText,
    metal: v.picklist(METAL_SPELLINGS),
    sets: told(wholePositive, 'Conductors in parallel a phase.'),
    insulation: v.picklist(INSULATIONS),
    currentCarrying: maybe(
      told(
        v.pipe(wholePositive, v.minValue(3), v.maxValue(500)),
        'Conductors with current in each raceway that it lies in, sets and other circuits that share it among them; 3 where absent: a raceway for each set and nothing else in it.',
      ),
    ),
  }),
  raceway: maybe(v.picklist(METHODS)),
  length: maybe(told(nonNegativeLength, 'Where it is known; otherwise it is routed along the raceways.')),
  breakerAmps: positive,
  existing: maybe(v.boolean()),
  device: maybe(
    told(
      v.picklist(DEVICE_PLACES),
      'Where the overcurrent device of `breakerAmps` stands: in the equipment that feeds (`from`), in the equipment that is fed (`to`), one in each (`both`), or none at either end (`none`: a tap that supplies a transformer; `breakerAmps` is then that of the device ahead). Where absent, `to` for a feeder out of a transformer or a source, `from` for any other.',
    ),
  ),
  outdoors: maybe(
    told(
      v.boolean(),
      'Whether it lies outdoors all the way but for where it ends; where absent, only one in the ground all the way is taken to.',
    ),
  ),
  groundFault: maybe(told(v.boolean(), 'Whether its device has ground-fault protection of equipment.')),
  arcEnergy: maybe(told(v.picklist(ARC_REDUCTIONS), 'The documented way to less arc energy that its device has.')),
  tapCondition: maybe(
    told(
      v.picklist(TAP_CONDITIONS),
      'Of a tap or a secondary, what no drawing shows: `high-bay` (manufacturing building over 35 ft high at its walls, served by qualified persons, tapped 30 ft above the floor or higher, no splice, through no wall, floor or ceiling) or `industrial` (served by qualified persons alone; it ends in a switchboard whose devices are grouped).',
    ),
  ),
});

type FeederRecord = Of<typeof feederSchema>;
/** A feeder as the engine reads it: its metal by one word. */
export interface Feeder extends Omit<FeederRecord, 'conductor'> {
  readonly conductor: Omit<FeederRecord['conductor'], 'metal'> & { readonly metal: Metal };
}

export const feeders: Kind<typeof feederSchema, Feeder> = {
  schema: feederSchema,
  one: 'feeder',
  many: 'feeders',
  anyOne: 'a feeder',
  refers: { from: 'equipment', to: 'equipment' },
  read: (feeder) => {
    const metal = metalOf(feeder.conductor.metal);
    if (metal === feeder.conductor.metal) return feeder as Feeder;
    return { ...feeder, conductor: { ...feeder.conductor, metal } };
  },
};

export const feederDocs: KindDocs<typeof feederSchema> = {
  says: 'What joins pieces of equipment.',
  fields: {
    conductor: 'Conductors of each set.',
    'conductor.size': 'AWG or kcmil, as a number in quotes.',
    'conductor.metal': 'What they are of.',
    'conductor.insulation': 'Type of the insulation.',
    raceway: 'What they lie in.',
    breakerAmps: 'Rating of its overcurrent device, amperes.',
    existing: 'Whether it stands already.',
  },
  examples: [
    {
      id: 'F1',
      from: 'U1',
      to: 'T1',
      conductor: { size: '1/0', metal: 'Al', sets: 1, insulation: 'XHHW-2' },
      raceway: 'PVC40',
      length: 140,
      breakerAmps: 125,
      existing: true,
    },
    {
      id: 'F2',
      from: 'T1',
      to: 'P1',
      conductor: { size: '4/0', metal: 'copper', sets: 2, currentCarrying: 6, insulation: 'THWN-2' },
      breakerAmps: 250,
      device: 'both',
      outdoors: true,
      groundFault: false,
      arcEnergy: 'differential',
      tapCondition: 'high-bay',
    },
  ],
};
