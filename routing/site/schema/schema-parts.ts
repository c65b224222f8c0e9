import * as v from 'valibot';

/** The measures and small shapes that the schema of the site file is put together from. */

/** No length or coordinate of a site file is larger, in feet. */
export const MAX_LENGTH_FT = 100_000;
/** No other number of a site file is larger: keeps products of a few of them finite. */
export const MAX_QUANTITY = 1e9;
/** What "over 0" means: a divisor below this is a slip of the pen, and would overflow. */
export const LEAST_POSITIVE = 1e-6;
export const MAX_ID_LENGTH = 64;
export const MAX_TEXT_LENGTH = 10_000;

/** Marks a number as a length in the file's units: reading limits it, and a metric file's is converted to feet. */
const LENGTH_MARK = { measure: 'length' } as const;
const markLength = v.metadata<number, typeof LENGTH_MARK>(LENGTH_MARK);

/** True for the schema of a number that is a length or a coordinate. */
export const isLength = (schema: v.GenericSchema): boolean =>
  (v.getMetadata(schema) as { measure?: unknown }).measure === LENGTH_MARK.measure;

/** The same schema with a sentence for the reader of the published JSON Schema. */
export const told = <const S extends v.GenericSchema>(schema: S, text: string) =>
  v.pipe(schema, v.description(text) as v.DescriptionAction<v.InferOutput<S>, string>);

/** A field that can be left out. */
export const maybe = v.exactOptional;

// JSON.parse turns 1e999 into Infinity, and valibot's number() lets that through.
const finite = v.pipe(v.number(), v.finite());

export const number = v.pipe(finite, v.minValue(-MAX_QUANTITY), v.maxValue(MAX_QUANTITY));
/** A coordinate of a national grid, which in millimetres passes any other number. */
export const gridCoordinate = v.pipe(finite, v.minValue(-1e12), v.maxValue(1e12));
export const positive = v.pipe(finite, v.minValue(LEAST_POSITIVE), v.maxValue(MAX_QUANTITY));
export const nonNegative = v.pipe(finite, v.minValue(0), v.maxValue(MAX_QUANTITY));
export const wholePositive = v.pipe(finite, v.integer(), v.minValue(1), v.maxValue(MAX_QUANTITY));
export const fraction = v.pipe(finite, v.minValue(0), v.maxValue(1));

/** A coordinate, elevation or signed length in the file's units. */
export const length = v.pipe(finite, v.minValue(-MAX_LENGTH_FT), v.maxValue(MAX_LENGTH_FT), markLength);
export const positiveLength = v.pipe(finite, v.minValue(LEAST_POSITIVE), v.maxValue(MAX_LENGTH_FT), markLength);
export const nonNegativeLength = v.pipe(finite, v.minValue(0), v.maxValue(MAX_LENGTH_FT), markLength);

export const text = v.pipe(v.string(), v.maxLength(MAX_TEXT_LENGTH));
export const filledText = v.pipe(text, v.nonEmpty());

// No `u` flag and no \p{...}: the pattern is published in the JSON Schema, whose readers differ in what they know.
// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what an id must not hold
const NO_CONTROLS = /^[^\u0000-\u001f\u007f-\u009f]+$/;

export const id = v.pipe(v.string(), v.nonEmpty(), v.maxLength(MAX_ID_LENGTH), v.regex(NO_CONTROLS));
/** The id of another element. */
export const ref = told(id, 'Id of another element.');

export const point2 = v.strictTuple([length, length]);
export const point3 = v.strictTuple([length, length, length]);
export const outline = v.pipe(v.array(point2), v.minLength(3));

export const phaseCount = v.picklist([1, 3]);
