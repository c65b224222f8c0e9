import type * as v from 'valibot';
import { type SchemaNode, schemaNode } from '../schema/schema-node.ts';

type Rewrite = (value: unknown) => unknown;

/**
 * A function that rewrites every length and coordinate in a value of this schema and leaves the rest as it is. The
 * value itself comes back where the schema holds no length. Which numbers are lengths is said in the schema alone.
 */
export function lengthRewriter<S extends v.GenericSchema>(
  schema: S,
  change: (length: number) => number,
): <T>(value: T) => T {
  const rewrite = rewriteOf(schemaNode(schema), change);
  return <T>(value: T) => (rewrite === null ? value : (rewrite(value) as T));
}

function rewriteOf(node: SchemaNode, change: (length: number) => number): Rewrite | null {
  switch (node.kind) {
    case 'leaf':
      return node.length ? (value) => change(value as number) : null;
    case 'list': {
      const item = rewriteOf(node.item, change);
      return item && ((value) => (value as unknown[]).map(item));
    }
    case 'tuple': {
      const items = node.items.map((item) => rewriteOf(item, change));
      if (items.every((item) => item === null)) return null;
      return (value) => (value as unknown[]).map((item, i) => items[i]?.(item) ?? item);
    }
    case 'record': {
      const inner = rewriteOf(node.value, change);
      return inner && ((value) => mapped(value as object, () => inner));
    }
    case 'object': {
      const fields = new Map([...node.fields].map(([name, field]) => [name, rewriteOf(field.node, change)]));
      if ([...fields.values()].every((field) => field === null)) return null;
      return (value) => mapped(value as object, (name) => fields.get(name) ?? null);
    }
  }
}

function mapped(value: object, rewriteFor: (name: string) => Rewrite | null): object {
  const out: Record<string, unknown> = {};
  for (const [name, inner] of Object.entries(value)) {
    const rewrite = rewriteFor(name);
    out[name] = rewrite === null ? inner : rewrite(inner);
  }
  return out;
}
