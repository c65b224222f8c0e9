import * as v from 'valibot';
import { rulesSchema } from './rules-schema.ts';
import {
  filledText,
  fraction,
  id,
  length,
  MAX_ID_LENGTH,
  nonNegative,
  nonNegativeLength,
  number,
  outline,
  phaseCount,
  point2,
  point3,
  positive,
  positiveLength,
  ref,
  text,
  told,
  wholePositive,
} from './schema-parts.ts';
import {
  AISLE_KINDS,
  DEVICE_PLACES,
  EQUIPMENT_KINDS,
  INLET_SIDES,
  INSULATIONS,
  KEEPOUT_BLOCKS,
  LINES,
  METAL_SPELLINGS,
  METHODS,
  MOUNTS,
  PARKING_WAYS,
  PLACES,
  STALL_USES,
  SURFACES,
  UNDERLAY_KINDS,
  UNITS,
} from './vocabulary.ts';

/**
 * The site file, version 1: the one source of its types, its reading and its published JSON Schema.
 * Lengths are in the file's `units`; angles in degrees counter-clockwise from +x.
 */

const maybe = v.exactOptional;

export const stallSchema = v.strictObject({
  id,
  at: told(point2, 'Middle of the entry edge, the edge a car crosses when it drives in.'),
  width: positiveLength,
  depth: told(positiveLength, 'From the entry edge to the head, along `heading`.'),
  heading: told(number, 'Direction from the entry edge to the head, degrees.'),
  use: maybe(v.picklist(STALL_USES)),
  parking: maybe(told(v.picklist(PARKING_WAYS), 'Ways a car may stand in it; `either` where absent.')),
  vehicle: maybe(told(text, 'Class of the vehicle in it: one of `vehicles`, or built in.')),
  label: maybe(text),
});

export const columnSchema = v.strictObject({
  id,
  at: told(point2, 'Centre.'),
  size: v.strictTuple([positiveLength, positiveLength]),
  rotation: maybe(told(number, 'Degrees.')),
  height: maybe(positiveLength),
});

export const memberSchema = v.strictObject({ id, from: point3, to: point3 });

export const keepoutSchema = v.strictObject({
  id,
  outline,
  from: maybe(told(length, 'Lowest elevation it blocks.')),
  to: maybe(told(length, 'Highest elevation it blocks.')),
  blocks: v.array(v.picklist(KEEPOUT_BLOCKS)),
});

export const aisleSchema = v.strictObject({
  id,
  outline,
  kind: maybe(told(v.picklist(AISLE_KINDS), 'What it is for, which decides its clear height; `drive` where absent.')),
});

export const gridlineSchema = v.strictObject({ label: filledText, at: length });

export const equipmentSchema = v.strictObject({
  id,
  kind: v.picklist(EQUIPMENT_KINDS),
  at: told(point2, 'Centre of its footprint.'),
  size: told(v.strictTuple([positiveLength, positiveLength, positiveLength]), 'Width, depth, height.'),
  rotation: maybe(told(number, 'Degrees.')),
  entry: told(point3, 'Where raceways enter it.'),
  volts: maybe(told(positive, 'Line to line.')),
  phases: maybe(phaseCount),
  busAmps: maybe(positive),
  mainAmps: maybe(positive),
  spaces: maybe(told(wholePositive, 'Pole spaces for breakers.')),
  workingSpace: maybe(told(positiveLength, 'Depth kept clear before it.')),
  condition: maybe(
    told(
      v.picklist([1, 2, 3]),
      'Condition before it by which the code asks for the depth of its working space (1 nothing grounded opposite, 2 grounded parts, 3 live parts), where it is not what the drawing shows.',
    ),
  ),
  managedAmps: maybe(told(positive, 'Line current that a load-management system holds its chargers to.')),
  kva: maybe(positive),
  primaryVolts: maybe(positive),
  secondaryVolts: maybe(positive),
  impedancePercent: maybe(positive),
  xr: maybe(told(nonNegative, 'Ratio of reactance to resistance.')),
  faultAmps: maybe(told(positive, 'Available symmetrical fault current at the terminals of a source, amperes.')),
  faultXr: maybe(told(nonNegative, 'Ratio of reactance to resistance of what is ahead of a source.')),
  existingAmps: maybe(
    told(positive, 'Greatest measured demand of what a source feeds already and the file does not draw, line amperes.'),
  ),
  interruptingAmps: maybe(told(positive, 'Interrupting rating of the assembly, or of its weakest device, amperes.')),
});

export const feederSchema = v.strictObject({
  id,
  from: told(ref, 'Equipment that feeds.'),
  to: told(ref, 'Equipment that is fed.'),
  conductor: v.strictObject({
    size: filledText,
    metal: v.picklist(METAL_SPELLINGS),
    sets: told(wholePositive, 'Conductors in parallel a phase.'),
    insulation: v.picklist(INSULATIONS),
  }),
  raceway: maybe(v.picklist(METHODS)),
  length: maybe(told(nonNegativeLength, 'Where it is known; otherwise it is routed along the raceways.')),
  breakerAmps: positive,
  existing: maybe(v.boolean()),
  device: maybe(
    told(
      v.picklist(DEVICE_PLACES),
      'Where the overcurrent device of `breakerAmps` stands: in the equipment that feeds (`from`), in the equipment that is fed (`to`), or one in each (`both`). Where absent, `to` for a feeder out of a transformer or a source, `from` for any other.',
    ),
  ),
  outdoors: maybe(
    told(
      v.boolean(),
      'Whether it lies outdoors all the way but for where it ends; where absent, only one in the ground all the way is taken to.',
    ),
  ),
});

export const loadSchema = v.strictObject({
  id,
  from: told(ref, 'Equipment that feeds it, or that it feeds where it generates.'),
  name: text,
  volts: positive,
  phases: phaseCount,
  va: nonNegative,
  continuous: v.boolean(),
  generation: maybe(v.boolean()),
});

export const racewaySchema = v.strictObject({
  id,
  path: v.pipe(v.array(point3), v.minLength(2)),
  method: v.picklist(METHODS),
  place: v.picklist(PLACES),
  /** Over an underground raceway; asphalt where absent. */
  surface: v.exactOptional(v.picklist(SURFACES)),
  ambientC: maybe(told(number, 'Ambient temperature in it, degrees C, in place of the rule for its place.')),
  aboveRoof: maybe(told(nonNegativeLength, 'Height above a roof that it lies over in the sun; absent elsewhere.')),
});

export const pullpointSchema = v.strictObject({ id, at: point3 });

export const dropSchema = v.strictObject({
  id,
  box: told(point3, 'Junction box, where the branch ends and the cord begins.'),
  retractor: maybe(told(point3, 'Point the cord hangs from.')),
  cord: told(positiveLength, 'Usable length of the cord.'),
  mount: maybe(told(v.picklist(MOUNTS), '`overhead` where absent.')),
  restHeight: maybe(told(nonNegativeLength, 'Height of the stowed connector.')),
  holds: maybe(told(wholePositive, 'Cords the drop is made for.')),
});

export const chargerSchema = v.strictObject({
  id,
  drop: told(ref, 'Drop its cord hangs at.'),
  stalls: told(v.array(ref), 'Stalls it is meant to serve.'),
  from: told(ref, 'Equipment that feeds it.'),
  amps: told(positive, 'Rated output current.'),
  volts: positive,
  phases: told(phaseCount, '1 (line to line) or 3.'),
  pilot: maybe(told(v.boolean(), 'A pilot pair is carried with the branch.')),
  branchLimit: maybe(told(positiveLength, 'Longest conductor length, in place of the rule.')),
});

export const inletSchema = v.strictObject({
  name: filledText,
  along: told(fraction, 'Share of the length from the front bumper.'),
  side: v.picklist(INLET_SIDES),
  height: nonNegativeLength,
  share: told(nonNegative, 'Weight among the inlets of the class.'),
});

export const vehicleSchema = v.strictObject({
  length: positiveLength,
  width: positiveLength,
  height: positiveLength,
  inlets: v.pipe(v.array(inletSchema), v.minLength(1)),
});

export const asBuiltSchema = v.strictObject({
  box: maybe(point3),
  retractor: maybe(point3),
  checkedOn: maybe(told(text, 'The day, as 2026-05-31.')),
  checkedBy: maybe(told(text, 'Initials of who measured.')),
  note: maybe(text),
});

export const underlaySchema = v.strictObject({
  file: told(filledText, 'Name of the file, which is kept apart from the site.'),
  kind: v.picklist(UNDERLAY_KINDS),
  page: maybe(told(wholePositive, 'Page of a PDF; 1 where absent.')),
  hash: told(v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/)), 'SHA-256 of the file, in hexadecimal digits.'),
  at: told(point2, 'Where `origin` lies on the site.'),
  origin: maybe(
    told(
      v.strictTuple([number, number]),
      'Point of the file that lies at `at`, in its own units: pixels or points from the lower left corner, drawing units, degrees. [0, 0] where absent.',
    ),
  ),
  scale: told(positiveLength, 'Length on the site of one unit of the file: a pixel, a point, a drawing unit, a foot.'),
  rotation: maybe(told(number, 'Degrees, about `at`.')),
  dim: maybe(told(fraction, 'How far it is faded: 0 not at all, 1 out of sight; 0.5 where absent.')),
  locked: maybe(told(v.boolean(), 'Placed for good: the hand does not move it.')),
  hidden: maybe(v.boolean()),
});

export const issuedCircuitSchema = v.strictObject({
  panel: told(ref, 'Equipment in whose schedule it was issued.'),
  spaces: maybe(
    told(
      v.pipe(v.array(wholePositive), v.minLength(1), v.maxLength(3)),
      'Spaces of its poles, from the top: one under another on one side.',
    ),
  ),
  phases: maybe(told(v.picklist(LINES), 'Lines that it lies on; those of its spaces where these are given.')),
});

const list = <const T extends v.GenericSchema>(item: T) => maybe(v.array(item));

export const gridlinesSchema = v.strictObject({
  x: list(gridlineSchema),
  y: list(gridlineSchema),
  rotation: maybe(told(number, 'Degrees, counter-clockwise, that they are turned about `origin`; 0 where absent.')),
  origin: maybe(told(point2, 'Place of the site that `at` is measured from; [0, 0] where absent.')),
});

export const siteFileSchema = v.strictObject({
  format: v.literal('overrow/site'),
  version: v.literal(1),
  units: told(v.picklist(UNITS), 'Units of every length and coordinate in the file.'),
  name: text,
  note: maybe(text),
  stalls: list(stallSchema),
  columns: list(columnSchema),
  members: list(memberSchema),
  keepouts: list(keepoutSchema),
  aisles: list(aisleSchema),
  gridlines: maybe(gridlinesSchema),
  equipment: list(equipmentSchema),
  feeders: list(feederSchema),
  loads: list(loadSchema),
  raceways: list(racewaySchema),
  pullpoints: list(pullpointSchema),
  drops: list(dropSchema),
  chargers: list(chargerSchema),
  vehicles: maybe(v.record(v.pipe(v.string(), v.nonEmpty(), v.maxLength(MAX_ID_LENGTH)), vehicleSchema)),
  rules: maybe(rulesSchema),
  georef: maybe(
    v.strictObject({
      lon: v.pipe(number, v.minValue(-180), v.maxValue(180)),
      lat: v.pipe(number, v.minValue(-90), v.maxValue(90)),
      bearing: told(number, 'Compass bearing of +y, degrees.'),
    }),
  ),
  asBuilt: maybe(v.record(id, asBuiltSchema)),
  issued: maybe(
    v.strictObject({
      circuits: maybe(
        told(v.record(id, issuedCircuitSchema), 'By the id of a charger, a load or an outgoing feeder: what stays.'),
      ),
    }),
  ),
  underlay: maybe(told(underlaySchema, 'A drawing or picture that lies under the plan.')),
  underlays: maybe(
    told(v.array(underlaySchema), 'What else lies under the plan, over `underlay`, from the lowest up.'),
  ),
});

/** The lists of elements with ids; every id is unique across all of them. */
export const ELEMENT_LISTS = [
  'stalls',
  'columns',
  'members',
  'keepouts',
  'aisles',
  'equipment',
  'feeders',
  'loads',
  'raceways',
  'pullpoints',
  'drops',
  'chargers',
] as const;
export type ElementList = (typeof ELEMENT_LISTS)[number];
