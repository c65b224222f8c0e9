import { fromFeet } from '../numbers/units.ts';
import { siteFileSchema } from '../schema/schema.ts';
import { type SchemaNode, schemaNode } from '../schema/schema-node.ts';
import { MAX_LENGTH_FT } from '../schema/schema-parts.ts';
import type { Units } from '../schema/vocabulary.ts';
import { expectation, leafError, shown } from './expectation.ts';
import { didYouMean } from './nearest-word.ts';
import type { TellFault } from './place.ts';

/**
 * Everything in which a value differs from the shape of a site file, in the order of the file: unknown and missing
 * fields, wrong types, lengths out of range. Valibot judges the scalars; the walk over objects and lists is ours,
 * because valibot stops at the first unknown field, takes a list for an object, and passes over a `__proto__`.
 */
export function tellShapeErrors(value: unknown, units: Units, tell: TellFault): void {
  const path: (string | number)[] = [];
  const maxLength = fromFeet(MAX_LENGTH_FT, units);
  const say = (text: () => string): void => tell(path, text);
  const wrong = (node: SchemaNode, got: unknown): void => say(() => `expected ${expectation(node)}, got ${shown(got)}`);

  const within = (step: string | number, node: SchemaNode, inner: unknown): void => {
    path.push(step);
    walk(node, inner);
    path.pop();
  };
  const at = (step: string | number, text: () => string): void => {
    path.push(step);
    say(text);
    path.pop();
  };

  const walk = (node: SchemaNode, got: unknown): void => {
    switch (node.kind) {
      case 'leaf': {
        if (node.length && typeof got === 'number' && Number.isFinite(got) && Math.abs(got) > maxLength) {
          say(() => `expected a length of at most ${tooFar(units)}, got ${got}`);
          return;
        }
        const error = leafError(node, got);
        if (error !== null) say(() => error);
        return;
      }
      case 'list':
        if (!Array.isArray(got) || got.length < node.least) wrong(node, got);
        if (Array.isArray(got)) for (const [i, item] of got.entries()) within(i, node.item, item);
        return;
      case 'tuple':
        if (!Array.isArray(got) || got.length !== node.items.length) wrong(node, got);
        if (!Array.isArray(got)) return;
        for (const [i, item] of node.items.slice(0, got.length).entries()) within(i, item, got[i]);
        return;
      case 'record':
        if (!isObject(got)) {
          wrong(node, got);
          return;
        }
        for (const name of Object.keys(got)) {
          const error =
            name === '__proto__'
              ? 'cannot be a name'
              : leafError({ kind: 'leaf', schema: node.key, length: false }, name);
          if (error !== null) at(name, () => `the name: ${error}`);
          within(name, node.value, (got as Record<string, unknown>)[name]);
        }
        return;
      case 'object':
        if (!isObject(got)) {
          wrong(node, got);
          return;
        }
        for (const name of Object.keys(got)) {
          const field = node.fields.get(name);
          if (field === undefined) at(name, () => `unknown field${didYouMean(name, node.fields.keys())}`);
          else within(name, field.node, (got as Record<string, unknown>)[name]);
        }
        for (const [name, field] of node.fields) {
          if (field.required && !Object.hasOwn(got, name))
            at(name, () => `missing: expected ${expectation(field.node)}`);
        }
    }
  };
  walk(schemaNode(siteFileSchema), value);
}

const tooFar = (units: Units): string =>
  units === 'm' ? '30,480 m (100,000 ft), either way of 0' : '100,000 ft, either way of 0';

const isObject = (value: unknown): value is object =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
