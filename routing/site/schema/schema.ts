import * as v from 'valibot';
import { ELEMENT_LISTS, type ElementList, KINDS } from '../kinds/kinds.ts';
import { daySchema, MAX_DAYS } from './day-schema.ts';
import { MAX_MARKS, markSchema } from './mark-schema.ts';
import { rulesSchema } from './rules-schema.ts';
import {
  filledText,
  fraction,
  gridCoordinate,
  id,
  length,
  MAX_ID_LENGTH,
  maybe,
  nonNegative,
  nonNegativeLength,
  number,
  point2,
  point3,
  positiveLength,
  ref,
  text,
  told,
  wholePositive,
} from './schema-parts.ts';
import { INLET_SIDES, LINES, SET_PURPOSES, SHEET_PARTS, UNDERLAY_KINDS, UNITS } from './vocabulary.ts';

/**
 * The site file, version 1: the one source of its types, its reading and its published JSON Schema.
 * Lengths are in the file's `units`; angles in degrees counter-clockwise from +x.
 */

export const gridlineSchema = v.strictObject({ label: filledText, at: length });

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
      v.strictTuple([gridCoordinate, gridCoordinate]),
      'Point of the file that lies at `at`, in its own units: pixels or points from the lower left corner, drawing units, degrees. [0, 0] where absent.',
    ),
  ),
  scale: told(positiveLength, 'Length on the site of one unit of the file: a pixel, a point, a drawing unit, a foot.'),
  rotation: maybe(told(number, 'Degrees, about `at`.')),
  dim: maybe(told(fraction, 'How far it is faded: 0 not at all, 1 out of sight; 0.5 where absent.')),
  locked: maybe(told(v.boolean(), 'Placed for good: the hand does not move it.')),
  hidden: maybe(v.boolean()),
  unprinted: maybe(told(v.boolean(), 'On the board alone: left out of the drawing set.')),
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

type OptionalList<S extends v.GenericSchema> = v.ExactOptionalSchema<v.ArraySchema<S, undefined>, undefined>;
const { stalls, columns, members, keepouts, aisles, ...installed } = Object.fromEntries(
  ELEMENT_LISTS.map((name) => [name, list(KINDS[name].schema as v.GenericSchema)]),
) as unknown as { readonly [L in ElementList]: OptionalList<(typeof KINDS)[L]['schema']> };

const line = v.pipe(filledText, v.maxLength(200));

export const projectSchema = v.strictObject({
  number: maybe(line),
  client: maybe(line),
  address: maybe(line),
  jurisdiction: maybe(told(line, 'The authority having jurisdiction.')),
  phase: maybe(told(line, 'Of the work, such as "for permit".')),
  drawn: maybe(told(line, 'By whom.')),
  checked: maybe(told(line, 'By whom.')),
  issues: maybe(
    told(
      v.pipe(
        v.array(v.strictObject({ mark: v.pipe(filledText, v.maxLength(12)), date: line, text: line })),
        v.maxLength(40),
      ),
      'When the drawings went out, and as what, the first first.',
    ),
  ),
});

export const drawingsSchema = v.strictObject({
  purpose: maybe(
    told(v.picklist(SET_PURPOSES), 'Which sheets there are, and in what words; all of them where absent.'),
  ),
  sheets: maybe(
    told(
      v.pipe(v.array(v.picklist(SHEET_PARTS)), v.minLength(1), v.maxLength(SHEET_PARTS.length)),
      'What is in the set, in place of what its purpose has.',
    ),
  ),
  scale: maybe(
    told(
      v.pipe(number, v.minValue(1), v.maxValue(10000)),
      'How many times larger the site is than the plans from which drops are set out: 96 is 1/8" = 1\'-0"; the next standard scale.',
    ),
  ),
  areas: maybe(
    told(
      v.pipe(
        v.array(v.strictObject({ name: v.pipe(filledText, v.maxLength(80)), from: point2, to: point2 })),
        v.maxLength(40),
      ),
      'What the enlarged plans show, a sheet each, between two opposite corners.',
    ),
  ),
  scope: maybe(told(v.pipe(v.array(line), v.maxLength(40)), 'What else belongs to the work.')),
  notes: maybe(told(v.pipe(v.array(line), v.maxLength(40)), 'General notes of one’s own, after the others.')),
});

export const siteFileSchema = v.strictObject({
  format: v.literal('overrow/site'),
  version: v.literal(1),
  units: told(v.picklist(UNITS), 'Units of every length and coordinate in the file.'),
  name: text,
  note: maybe(text),
  project: maybe(told(projectSchema, 'For the title block: what is not given is left empty there.')),
  drawings: maybe(told(drawingsSchema, 'What the drawing set is for, and what is in it.')),
  stalls,
  columns,
  members,
  keepouts,
  aisles,
  gridlines: maybe(gridlinesSchema),
  ...installed,
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
  records: maybe(
    told(
      v.pipe(v.array(markSchema), v.maxLength(MAX_MARKS)),
      'What was written down in the field, by whom, the first first.',
    ),
  ),
  days: maybe(told(v.pipe(v.array(daySchema), v.maxLength(MAX_DAYS)), 'Days of charging to look at.')),
  issued: maybe(
    v.strictObject({
      circuits: maybe(
        told(v.record(id, issuedCircuitSchema), 'By the id of a charger, a load or an outgoing feeder: what stays.'),
      ),
      conduits: maybe(
        told(
          v.record(
            told(
              v.pipe(v.string(), v.maxLength(MAX_ID_LENGTH + 6), v.regex(/^.+\/[1-9][0-9]{0,3}$/)),
              'A charger and the place of the conduit on its way from the equipment, from 1: "EV05/2".',
            ),
            id,
          ),
          'Names of conduits that stay, by a charger whose circuit lies in it.',
        ),
      ),
      boxes: maybe(
        told(
          v.record(
            told(
              v.pipe(v.string(), v.maxLength(MAX_ID_LENGTH + 6), v.regex(/^.+\/[1-9][0-9]{0,3}$/)),
              'A charger and the place of the box on its way from the equipment, from 1: "EV05/1".',
            ),
            id,
          ),
          'Names of junction boxes that stay, by a charger whose circuit goes through it.',
        ),
      ),
    }),
  ),
  underlay: maybe(told(underlaySchema, 'A drawing or picture that lies under the plan.')),
  underlays: maybe(
    told(v.array(underlaySchema), 'What else lies under the plan, over `underlay`, from the lowest up.'),
  ),
});
