import type * as v from 'valibot';
import { isLength } from './schema-parts.ts';

/** A piece of the schema as the walks over a file need it: reading and the conversion to feet. */
export type SchemaNode =
  | { readonly kind: 'object'; readonly fields: ReadonlyMap<string, SchemaField> }
  | { readonly kind: 'list'; readonly item: SchemaNode; readonly least: number }
  | { readonly kind: 'tuple'; readonly items: readonly SchemaNode[] }
  | { readonly kind: 'record'; readonly key: v.GenericSchema; readonly value: SchemaNode }
  | { readonly kind: 'leaf'; readonly schema: v.GenericSchema; readonly length: boolean };

export interface SchemaField {
  readonly required: boolean;
  readonly node: SchemaNode;
}

/** The insides of a valibot schema that are read here, and nowhere else. */
interface Insides {
  readonly type: string;
  readonly entries: Readonly<Record<string, v.GenericSchema & Insides>>;
  readonly items: readonly v.GenericSchema[];
  readonly item: v.GenericSchema;
  readonly key: v.GenericSchema;
  readonly value: v.GenericSchema;
  readonly wrapped: v.GenericSchema;
  readonly pipe?: readonly { readonly type: string; readonly requirement?: unknown }[];
}

const known = new WeakMap<v.GenericSchema, SchemaNode>();

/** The schema as nodes; the same schema gives the same node. */
export function schemaNode(schema: v.GenericSchema): SchemaNode {
  const before = known.get(schema);
  if (before !== undefined) return before;
  const node = built(schema);
  known.set(schema, node);
  return node;
}

function built(schema: v.GenericSchema): SchemaNode {
  const inside = schema as v.GenericSchema & Insides;
  switch (inside.type) {
    case 'strict_object':
      return {
        kind: 'object',
        fields: new Map(
          Object.entries(inside.entries).map(([name, field]): [string, SchemaField] =>
            field.type === 'exact_optional'
              ? [name, { required: false, node: schemaNode(field.wrapped) }]
              : [name, { required: true, node: schemaNode(field) }],
          ),
        ),
      };
    case 'array':
      return { kind: 'list', item: schemaNode(inside.item), least: leastItems(schema) };
    case 'strict_tuple':
      return { kind: 'tuple', items: inside.items.map(schemaNode) };
    case 'record':
      return { kind: 'record', key: inside.key, value: schemaNode(inside.value) };
    case 'number':
    case 'string':
    case 'boolean':
    case 'picklist':
    case 'literal':
    case 'union':
      return { kind: 'leaf', schema, length: isLength(schema) };
    default:
      throw new RangeError(`the walk over the schema does not know ${inside.type}`);
  }
}

function leastItems(schema: v.GenericSchema): number {
  const pipe = (schema as v.GenericSchema & Insides).pipe ?? [];
  const least = pipe.map((step) =>
    step === schema ? 0 : 'pipe' in step ? leastItems(step as unknown as v.GenericSchema) : minLength(step),
  );
  return Math.max(0, ...least);
}

const minLength = (step: { readonly type: string; readonly requirement?: unknown }): number =>
  step.type === 'min_length' ? Number(step.requirement) : 0;
