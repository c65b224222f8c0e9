import { type JsonSchema, toJsonSchema } from '@valibot/to-json-schema';
import { described } from './described.ts';
import { siteFileSchema } from './schema.ts';

/**
 * The published JSON Schema (draft 2020-12) of the site file, made from the schema that reading uses. It says the shape;
 * that no field stands twice, that ids are unique and references stand, and the limit of lengths in a metric file, it
 * cannot say.
 */
export function siteJsonSchema(): JsonSchema {
  const { $schema, ...shape } = toJsonSchema(siteFileSchema, {
    target: 'draft-2020-12',
    // JSON has no number that is not finite, and the mark of a length is no keyword of JSON Schema.
    ignoreActions: ['finite', 'metadata'],
  });
  return described({
    ...($schema === undefined ? {} : { $schema }),
    title: 'Overrow site file, version 1',
    description:
      'Lengths and coordinates are in `units`; plane coordinates are [x, y], x to the right, y up; elevations are above finished grade; angles are degrees, counter-clockwise from +x. Beyond this schema, no field stands twice in an object, ids are unique in the file, references name elements that are there, and a metric file holds no length past 30,480 m.',
    ...shape,
  });
}
