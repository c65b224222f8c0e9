import * as v from 'valibot';
import type { SchemaNode } from '../schema/schema-node.ts';
import { LEAST_POSITIVE } from '../schema/schema-parts.ts';

/** What was due and what came, in words. */

const MAX_SHOWN = 40;

/** A value as an error names it: short, and never the whole of a long one. */
export function shown(value: unknown): string {
  if (typeof value === 'string') {
    return value.length <= MAX_SHOWN ? JSON.stringify(value) : `${JSON.stringify(value.slice(0, MAX_SHOWN))}...`;
  }
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : `a list of ${value.length}`;
  if (value === undefined) return 'nothing';
  if (typeof value === 'object' && value !== null) return 'an object';
  return String(value);
}

const listed = (options: readonly unknown[]): string =>
  options.map((option) => (typeof option === 'string' ? JSON.stringify(option) : String(option))).join(', ');

/** What a value of this piece of the schema is, in words. */
export function expectation(node: SchemaNode): string {
  switch (node.kind) {
    case 'object':
    case 'record':
      return 'an object';
    case 'list':
      return node.least > 0 ? `a list of ${node.least} or more` : 'a list';
    case 'tuple':
      return `a list of ${node.items.length} numbers`;
    case 'leaf':
      return leafExpectation(node.schema);
  }
}

function leafExpectation(schema: v.GenericSchema): string {
  const inside = schema as { readonly type: string; readonly options?: readonly unknown[]; readonly literal?: unknown };
  switch (inside.type) {
    case 'number':
      return numberExpectation(schema);
    case 'string':
      return v.is(schema, '') ? 'a text' : 'a text that is not empty';
    case 'boolean':
      return 'true or false';
    case 'picklist':
      return `one of ${listed(inside.options ?? [])}`;
    default:
      return listed([inside.literal]);
  }
}

/** Told by trying, so that it cannot disagree with the schema. */
function numberExpectation(schema: v.GenericSchema): string {
  const whole = !v.is(schema, 1.5) && !v.is(schema, 0.5) ? 'a whole number' : 'a number';
  if (v.is(schema, -1)) return whole;
  const least = v.is(schema, 0) ? 'of 0 or more' : 'over 0';
  return v.is(schema, 1) && !v.is(schema, 1.5) && whole === 'a number'
    ? `${whole} ${least} and at most 1`
    : `${whole} ${least}`;
}

/** Why a scalar is refused: valibot's verdict in our words; null where it is right. */
export function leafError(node: SchemaNode & { kind: 'leaf' }, value: unknown): string | null {
  const result = v.safeParse(node.schema, value);
  if (result.success) return null;
  const issue = result.issues[0];
  const requirement = (issue as { readonly requirement?: unknown }).requirement;
  switch (issue.type) {
    case 'finite':
      return `expected a finite number, got ${shown(value)}`;
    case 'max_value':
      return `expected ${expectation(node)}, at most ${requirement}, got ${shown(value)}`;
    case 'min_value':
      if (requirement === LEAST_POSITIVE || requirement === 0 || requirement === 1) break;
      return `expected ${expectation(node)}, at least ${requirement}, got ${shown(value)}`;
    case 'max_length':
      return `expected a text of at most ${requirement} characters, got ${String(value).length}`;
    case 'regex':
      return `expected a text without line breaks, tabs and other control characters, got ${shown(value)}`;
  }
  return `expected ${expectation(node)}, got ${shown(value)}`;
}
