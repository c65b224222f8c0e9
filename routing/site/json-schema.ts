import { type JsonSchema, toJsonSchema } from '@valibot/to-json-schema';
import { siteFileSchema } from './schema.ts';

/**
 * The published JSON Schema (draft 2020-12) of the site file, made from the schema that reading uses. It says the shape:
 * that ids are unique and references stand, and the limit of lengths in a metric file, it cannot say.
 */
export function siteJsonSchema(): JsonSchema {
  return {
    ...toJsonSchema(siteFileSchema, {
      target: 'draft-2020-12',
      // The mark of a length is our own and no keyword of JSON Schema.
      overrideAction: ({ valibotAction, jsonSchema }) => (valibotAction.type === 'metadata' ? jsonSchema : undefined),
    }),
    title: 'Overrow site file, version 1',
    description:
      'Lengths and coordinates are in `units`; plane coordinates are [x, y], x to the right, y up; elevations are above finished grade; angles are degrees, counter-clockwise from +x. Beyond this schema, ids are unique in the file, references name elements that are there, and a metric file holds no length past 30,480 m.',
  };
}
