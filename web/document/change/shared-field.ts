import * as v from 'valibot';
import { type SchemaNode, schemaNode } from '../../../routing/site/schema/schema-node.ts';
import type { Element, ListName } from './element-lists.ts';
import { elementSchema } from './file-lengths.ts';

/** Where a value stands in an element: names of fields, places in a tuple, or each item of a list. */
export type FieldPath = readonly (string | number)[];
export const EACH = '*';

export type SharedValue = string | number | boolean;

/** A field that several elements of one list may be given at once. What it holds is said by the schema. */
export interface SharedField {
  readonly label: string;
  /** All of them take the value: both ends of a level member. */
  readonly paths: readonly FieldPath[];
  /** The value is whether a list of words holds this one. */
  readonly member?: string;
  /** What the undo step says where the label alone would read badly. */
  readonly called?: string;
}

/** What the schema says of the value at a path. */
export interface Leaf {
  readonly kind: 'length' | 'number' | 'choice' | 'yes or no' | 'text';
  /** The words or numbers of a choice. */
  readonly options: readonly (string | number)[];
  /** It can be taken away. */
  readonly optional: boolean;
  /** Of a number: it is over this, or from `least` up. */
  readonly over?: number;
  readonly least?: number;
  /** Of a share: it is no more than this. */
  readonly most?: number;
  readonly whole: boolean;
}

/** Values past which some field takes nothing: a share, and the phases of a build-out. */
const MOSTS = [1, 9] as const;

/** What may stand at a path of a list's elements. RangeError where the schema has nothing there. */
export function leafAt(list: ListName, { paths, member }: SharedField): Leaf {
  let node: SchemaNode = schemaNode(elementSchema(list));
  let optional = false;
  for (const step of paths[0] ?? []) {
    const field: { required: boolean; node: SchemaNode } | undefined =
      node.kind === 'object'
        ? node.fields.get(String(step))
        : node.kind === 'tuple' && typeof step === 'number' && node.items[step]
          ? { required: true, node: node.items[step] }
          : node.kind === 'list' && step === EACH
            ? { required: true, node: node.item }
            : undefined;
    if (!field) throw new RangeError(`${list} have no ${paths[0]?.join('.')}`);
    optional = !field.required;
    node = field.node;
  }
  const bare = { options: [], optional, whole: false };
  if (member !== undefined && node.kind === 'list') return { ...bare, kind: 'yes or no' };
  if (node.kind !== 'leaf') throw new RangeError(`${paths[0]?.join('.')} of ${list} is no single value`);
  const { schema } = node;
  const takes = (value: unknown): boolean => v.is(schema, value);
  if ('options' in schema) return { ...bare, kind: 'choice', options: schema.options as (string | number)[] };
  if (takes(true)) return { ...bare, kind: 'yes or no' };
  if (takes('x')) return { ...bare, kind: 'text' };
  const bound = !takes(0) ? { over: 0 } : takes(-1) ? {} : { least: 0 };
  const most = MOSTS.find((value) => takes(value) && !takes(value + 1));
  return {
    ...bare,
    ...bound,
    ...(most !== undefined && { most }),
    kind: node.length ? 'length' : 'number',
    whole: !takes(1.5),
  };
}

/** The values of a field in an element: undefined where a field is not given, none where what would hold it is not. */
export function valuesAt(element: object, { paths, member }: SharedField): readonly (SharedValue | undefined)[] {
  return paths.flatMap((path) => {
    const found = reached(element, path);
    return member === undefined
      ? (found as (SharedValue | undefined)[])
      : found.map((held) => (held as readonly string[]).includes(member));
  });
}

function reached(value: unknown, [step, ...rest]: FieldPath): readonly unknown[] {
  if (step === undefined) return [value];
  if (value === undefined) return [];
  if (step === EACH) return (value as readonly unknown[]).flatMap((item) => reached(item, rest));
  return reached((value as Readonly<Record<string, unknown>>)[step], rest);
}

/** An element with a value in a field, undefined taking it away; as it was where it has nothing to hold the field. */
export function withValue(element: Element, { paths, member }: SharedField, value: SharedValue | undefined): Element {
  const put = (was: unknown): unknown => {
    if (member === undefined) return value;
    const others = (was as readonly string[]).filter((word) => word !== member);
    return value === true ? ((was as readonly string[]).includes(member) ? was : [...others, member]) : others;
  };
  return paths.reduce<unknown>((now, path) => changed(now, path, put), element) as Element;
}

function changed(value: unknown, [step, ...rest]: FieldPath, put: (was: unknown) => unknown): unknown {
  if (step === undefined) return put(value);
  if (value === undefined) return value;
  if (Array.isArray(value))
    return value.map((item, i) => (step === EACH || step === i ? changed(item, rest, put) : item));
  const record = value as Readonly<Record<string, unknown>>;
  const next = changed(record[step], rest, put);
  if (next !== undefined) return { ...record, [step]: next };
  return Object.fromEntries(Object.entries(record).filter(([name]) => name !== step));
}
