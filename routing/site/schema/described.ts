import type { JsonSchema } from '@valibot/to-json-schema';
import { KIND_DOCS } from '../kinds/kinds.ts';
import examples from './field-examples.json' with { type: 'json' };
import { FIELD_WORDS } from './field-words.ts';

type Json = Exclude<JsonSchema, boolean>;
type Example = NonNullable<Json['examples']>[number];

/**
 * A JSON Schema whose every field has a description and an example: its own description, or that of its kind of element or
 * of `FIELD_WORDS`, and the first value that the field has in a site of all fields (of a list its first item, of a record
 * its first entry).
 */
export const described = (schema: JsonSchema): JsonSchema => fieldsOf(schema as Json, [SITE], []);

const lists = Object.entries(KIND_DOCS);
/** A site of all fields. */
const SITE = { ...examples, ...Object.fromEntries(lists.map(([list, docs]) => [list, docs.examples])) };
const WORDS: Readonly<Record<string, string>> = {
  ...FIELD_WORDS,
  ...Object.fromEntries(
    lists.flatMap(([list, { says, fields = {} }]) => [
      [list, says],
      ...Object.entries(fields).map(([path, words]) => [`${list}.*.${path}`, words]),
    ]),
  ),
};

function fieldsOf(schema: Json, values: readonly unknown[], path: readonly string[]): Json {
  const items = values.flatMap((value) => (Array.isArray(value) ? value : []));
  const objects = values.filter(isRecord);
  const inner = (one: unknown): Json => fieldsOf(one as Json, values, path);
  return {
    ...schema,
    ...(schema.anyOf && { anyOf: schema.anyOf.map(inner) }),
    ...(schema.properties && {
      properties: Object.fromEntries(
        Object.entries(schema.properties).map(([name, field]) => {
          const own = objects.flatMap((value) => (Object.hasOwn(value, name) ? [value[name]] : []));
          return [name, told(fieldsOf(field as Json, own, [...path, name]), own, [...path, name])];
        }),
      ),
    }),
    ...(isRecord(schema.items) && { items: fieldsOf(schema.items as Json, items, [...path, '*']) }),
    ...(isRecord(schema.additionalProperties) && {
      additionalProperties: fieldsOf(
        schema.additionalProperties as Json,
        objects.flatMap((value) => Object.values(value)),
        [...path, '*'],
      ),
    }),
  };
}

/** A field with its description before all else, and its example after. */
function told(field: Json, values: readonly unknown[], path: readonly string[]): Json {
  const at = path.join('.');
  const description = field.description ?? WORDS[at] ?? WORDS[`*.${path.at(-1)}`];
  return {
    ...(description !== undefined && { description }),
    ...field,
    ...(values.length > 0 && { examples: [firstOf(values[0], field) as Example] }),
  };
}

function firstOf(value: unknown, { additionalProperties }: Json): unknown {
  if (Array.isArray(value) && value.some((one) => isRecord(one) || Array.isArray(one)) && !isPath(value))
    return value.slice(0, 1);
  if (isRecord(value) && isRecord(additionalProperties)) return Object.fromEntries(Object.entries(value).slice(0, 1));
  return value;
}

/** A list of points: one of them alone is no line. */
const isPath = (value: readonly unknown[]): boolean => value.every(Array.isArray);

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
