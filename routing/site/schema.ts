import * as v from 'valibot';
import {
  EQUIPMENT_KINDS,
  INLET_SIDES,
  INSULATIONS,
  KEEPOUT_BLOCKS,
  METAL_SPELLINGS,
  METHODS,
  MOUNTS,
  PARKING_WAYS,
  PLACES,
  STALL_USES,
  UNITS,
} from './vocabulary.ts';

/**
 * The site file, version 1: the one source of its types, its reading and its published JSON Schema.
 * Lengths are in the file's `units`; angles in degrees counter-clockwise from +x.
 */

// JSON.parse turns 1e999 into Infinity, and valibot's number() lets that through.
const finite = v.pipe(v.number(), v.finite());
const positive = v.pipe(finite, v.gtValue(0));
const nonNegative = v.pipe(finite, v.minValue(0));
const wholePositive = v.pipe(finite, v.integer(), v.minValue(1));
const fraction = v.pipe(finite, v.minValue(0), v.maxValue(1));

export const MAX_ID_LENGTH = 64;
const text = v.pipe(v.string(), v.maxLength(1000));
const id = v.pipe(
  v.string(),
  v.nonEmpty(),
  v.maxLength(MAX_ID_LENGTH),
  v.regex(/^[^\p{Cc}]+$/u, 'no control characters'),
);
const ref = id;

const point2 = v.strictTuple([finite, finite]);
const point3 = v.strictTuple([finite, finite, finite]);
const outline = v.pipe(v.array(point2), v.minLength(3));
const phases = v.picklist([1, 3]);

export const stallSchema = v.strictObject({
  id,
  at: point2,
  width: positive,
  depth: positive,
  heading: finite,
  use: v.exactOptional(v.picklist(STALL_USES)),
  parking: v.exactOptional(v.picklist(PARKING_WAYS)),
  vehicle: v.exactOptional(text),
  label: v.exactOptional(text),
});

export const columnSchema = v.strictObject({
  id,
  at: point2,
  size: v.strictTuple([positive, positive]),
  rotation: v.exactOptional(finite),
  height: v.exactOptional(positive),
});

export const memberSchema = v.strictObject({ id, from: point3, to: point3 });

export const keepoutSchema = v.strictObject({
  id,
  outline,
  from: v.exactOptional(finite),
  to: v.exactOptional(finite),
  blocks: v.array(v.picklist(KEEPOUT_BLOCKS)),
});

export const aisleSchema = v.strictObject({ id, outline });

const gridlineSchema = v.strictObject({ label: v.pipe(text, v.nonEmpty()), at: finite });

export const equipmentSchema = v.strictObject({
  id,
  kind: v.picklist(EQUIPMENT_KINDS),
  at: point2,
  size: v.strictTuple([positive, positive, positive]),
  rotation: v.exactOptional(finite),
  entry: point3,
  volts: v.exactOptional(positive),
  phases: v.exactOptional(phases),
  busAmps: v.exactOptional(positive),
  mainAmps: v.exactOptional(positive),
  spaces: v.exactOptional(wholePositive),
  workingSpace: v.exactOptional(positive),
  managedAmps: v.exactOptional(positive),
  kva: v.exactOptional(positive),
  primaryVolts: v.exactOptional(positive),
  secondaryVolts: v.exactOptional(positive),
  impedancePercent: v.exactOptional(positive),
  xr: v.exactOptional(nonNegative),
});

export const feederSchema = v.strictObject({
  id,
  from: ref,
  to: ref,
  conductor: v.strictObject({
    size: v.pipe(text, v.nonEmpty()),
    metal: v.picklist(METAL_SPELLINGS),
    sets: wholePositive,
    insulation: v.picklist(INSULATIONS),
  }),
  raceway: v.exactOptional(v.picklist(METHODS)),
  length: v.exactOptional(nonNegative),
  breakerAmps: positive,
  existing: v.exactOptional(v.boolean()),
});

export const loadSchema = v.strictObject({
  id,
  from: ref,
  name: text,
  volts: positive,
  phases,
  va: nonNegative,
  continuous: v.boolean(),
  generation: v.exactOptional(v.boolean()),
});

export const racewaySchema = v.strictObject({
  id,
  path: v.pipe(v.array(point3), v.minLength(2)),
  method: v.picklist(METHODS),
  place: v.picklist(PLACES),
});

export const pullpointSchema = v.strictObject({ id, at: point3 });

export const dropSchema = v.strictObject({
  id,
  box: point3,
  retractor: v.exactOptional(point3),
  cord: positive,
  mount: v.exactOptional(v.picklist(MOUNTS)),
  restHeight: v.exactOptional(nonNegative),
  holds: v.exactOptional(wholePositive),
});

export const chargerSchema = v.strictObject({
  id,
  drop: ref,
  stalls: v.array(ref),
  from: ref,
  amps: positive,
  volts: positive,
  phases,
  pilot: v.exactOptional(v.boolean()),
  branchLimit: v.exactOptional(positive),
});

export const inletSchema = v.strictObject({
  name: v.pipe(text, v.nonEmpty()),
  along: fraction,
  side: v.picklist(INLET_SIDES),
  height: nonNegative,
  share: nonNegative,
});

export const vehicleSchema = v.strictObject({
  length: positive,
  width: positive,
  height: positive,
  inlets: v.pipe(v.array(inletSchema), v.minLength(1)),
});

export const rulesSchema = v.strictObject({
  code: v.exactOptional(text),
  branchLimit: v.exactOptional(positive),
  cordLimit: v.exactOptional(positive),
  cordSlack: v.exactOptional(nonNegative),
  tapLimit: v.exactOptional(nonNegative),
  joinTolerance: v.exactOptional(nonNegative),
  headClearance: v.exactOptional(nonNegative),
  coverage: v.exactOptional(fraction),
  allowance: v.exactOptional(
    v.strictObject({ equipment: v.exactOptional(nonNegative), box: v.exactOptional(nonNegative) }),
  ),
  ambientC: v.exactOptional(finite),
  terminalC: v.exactOptional(v.picklist([60, 75, 90])),
  dropLimit: v.exactOptional(v.strictObject({ branch: v.exactOptional(positive), total: v.exactOptional(positive) })),
  powerFactor: v.exactOptional(v.pipe(finite, v.gtValue(0), v.maxValue(1))),
  bendLimit: v.exactOptional(positive),
  pullLimit: v.exactOptional(positive),
  waste: v.exactOptional(
    v.strictObject({ conductor: v.exactOptional(nonNegative), raceway: v.exactOptional(nonNegative) }),
  ),
  restHeight: v.exactOptional(
    v.strictObject({ low: v.exactOptional(nonNegative), high: v.exactOptional(nonNegative) }),
  ),
  clearHeight: v.exactOptional(
    v.strictObject({
      aisle: v.exactOptional(nonNegative),
      stall: v.exactOptional(nonNegative),
      van: v.exactOptional(nonNegative),
      walk: v.exactOptional(nonNegative),
    }),
  ),
  circuitsPerConduit: v.exactOptional(wholePositive),
  pilot: v.exactOptional(
    v.strictObject({
      sourcePicofarads: v.exactOptional(nonNegative),
      cordPicofaradsPerFoot: v.exactOptional(nonNegative),
      branchPicofaradsPerFoot: v.exactOptional(positive),
      budgetPicofarads: v.exactOptional(positive),
    }),
  ),
  metal: v.exactOptional(v.picklist(METAL_SPELLINGS)),
  insulation: v.exactOptional(v.picklist(INSULATIONS)),
  vehicle: v.exactOptional(text),
});

const list = <const T extends v.GenericSchema>(item: T) => v.exactOptional(v.array(item));

export const siteFileSchema = v.strictObject({
  format: v.literal('overrow/site'),
  version: v.literal(1),
  units: v.picklist(UNITS),
  name: text,
  note: v.exactOptional(text),
  stalls: list(stallSchema),
  columns: list(columnSchema),
  members: list(memberSchema),
  keepouts: list(keepoutSchema),
  aisles: list(aisleSchema),
  gridlines: v.exactOptional(v.strictObject({ x: list(gridlineSchema), y: list(gridlineSchema) })),
  equipment: list(equipmentSchema),
  feeders: list(feederSchema),
  loads: list(loadSchema),
  raceways: list(racewaySchema),
  pullpoints: list(pullpointSchema),
  drops: list(dropSchema),
  chargers: list(chargerSchema),
  vehicles: v.exactOptional(v.record(v.pipe(v.string(), v.nonEmpty(), v.maxLength(MAX_ID_LENGTH)), vehicleSchema)),
  rules: v.exactOptional(rulesSchema),
  georef: v.exactOptional(
    v.strictObject({
      lon: v.pipe(finite, v.minValue(-180), v.maxValue(180)),
      lat: v.pipe(finite, v.minValue(-90), v.maxValue(90)),
      bearing: finite,
    }),
  ),
  asBuilt: v.exactOptional(
    v.record(
      id,
      v.strictObject({
        box: v.exactOptional(point3),
        retractor: v.exactOptional(point3),
        checkedOn: v.exactOptional(text),
        note: v.exactOptional(text),
      }),
    ),
  ),
});
