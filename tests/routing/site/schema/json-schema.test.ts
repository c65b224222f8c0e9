import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { siteJsonSchema } from '../../../../routing/site/schema/json-schema.ts';
import { siteFileSchema } from '../../../../routing/site/schema/schema.ts';
import { type SchemaNode, schemaNode } from '../../../../routing/site/schema/schema-node.ts';
import { everyField } from '../file/every-field.ts';

interface Json {
  readonly type?: string;
  readonly properties?: Readonly<Record<string, Json>>;
  readonly required?: readonly string[];
  readonly items?: Json | false;
  readonly prefixItems?: readonly Json[];
  readonly additionalProperties?: Json | false;
}

/** Every field of a schema by its path, list items and named entries as `*`. */
function fieldsOf(node: SchemaNode, at = ''): readonly string[] {
  switch (node.kind) {
    case 'object':
      return [...node.fields].flatMap(([name, field]) => [`${at}${name}`, ...fieldsOf(field.node, `${at}${name}.`)]);
    case 'list':
      return fieldsOf(node.item, `${at}*.`);
    case 'record':
      return fieldsOf(node.value, `${at}*.`);
    default:
      return [];
  }
}

/** The same of a JSON Schema; an object that lets other fields pass is a failure. */
function publishedFields(schema: Json, at = ''): readonly string[] {
  if (schema.properties !== undefined) {
    expect(schema.additionalProperties, at).toBe(false);
    return Object.entries(schema.properties).flatMap(([name, field]) => [
      `${at}${name}`,
      ...publishedFields(field, `${at}${name}.`),
    ]);
  }
  if (schema.prefixItems !== undefined) expect(schema.items, at).toBe(false);
  const inner = schema.type === 'array' ? schema.items : schema.additionalProperties;
  return inner ? publishedFields(inner, `${at}*.`) : [];
}

/** And of a value. */
function filledFields(value: unknown, node: SchemaNode, at = ''): readonly string[] {
  if (node.kind === 'list') return (value as unknown[]).flatMap((item) => filledFields(item, node.item, `${at}*.`));
  if (node.kind === 'record') {
    return Object.values(value as object).flatMap((item) => filledFields(item, node.value, `${at}*.`));
  }
  if (node.kind !== 'object') return [];
  return Object.entries(value as object).flatMap(([name, inner]) => {
    const field = node.fields.get(name);
    return field === undefined ? [] : [`${at}${name}`, ...filledFields(inner, field.node, `${at}${name}.`)];
  });
}

describe('the published JSON Schema', () => {
  const published = siteJsonSchema() as Json & { readonly $schema: string; readonly title: string };
  const node = schemaNode(siteFileSchema);

  it('is of draft 2020-12 and says what it is of', () => {
    expect(published.$schema).toBe('https://json-schema.org/draft/2020-12/schema');
    expect(published.title).toBe('Overrow site file, version 1');
    expect(published.required).toEqual(['format', 'version', 'units', 'name']);
  });

  it('has every field that is read, and lets no other pass', () => {
    expect([...publishedFields(published)].sort()).toEqual([...fieldsOf(node)].sort());
  });

  it('has every field that the site file is promised to have', () => {
    // Elements and their fields as the format describes them; a word list that another program may rely on.
    const promised: Readonly<Record<string, string>> = {
      stalls: 'id at width depth heading use parking vehicle label',
      columns: 'id at size rotation height',
      members: 'id from to',
      keepouts: 'id outline from to blocks',
      aisles: 'id outline kind',
      equipment:
        'id kind at size rotation entry volts phases busAmps mainAmps spaces workingSpace managedAmps kva primaryVolts secondaryVolts impedancePercent xr',
      feeders: 'id from to conductor raceway length breakerAmps existing device outdoors',
      loads: 'id from name volts phases va continuous generation',
      raceways: 'id path method place',
      pullpoints: 'id at',
      drops: 'id box retractor cord mount restHeight',
      chargers: 'id drop stalls from amps volts phases pilot branchLimit branchDrop',
    };
    for (const [list, fields] of Object.entries(promised)) {
      const items = published.properties?.[list]?.items;
      const names = items ? Object.keys(items.properties ?? {}) : [];
      expect(names, list).toEqual(expect.arrayContaining(fields.split(' ')));
    }
  });

  it('and the example of every field hold the same fields', () => {
    expect(new Set(filledFields(everyField(), node))).toEqual(new Set(fieldsOf(node)));
  });
});

/** Every field of a JSON Schema by its path, with itself. */
function published(schema: Published, at = ''): readonly (readonly [string, Published])[] {
  const inner = [schema.items, schema.additionalProperties, ...(schema.anyOf ?? [])].filter(
    (one): one is Published => typeof one === 'object',
  );
  return [
    ...Object.entries(schema.properties ?? {}).flatMap(([name, field]) => [
      [`${at}${name}`, field] as const,
      ...published(field, `${at}${name}.`),
    ]),
    ...inner.flatMap((one) => published(one, `${at}*.`)),
  ];
}

interface Published {
  readonly description?: string;
  readonly examples?: readonly unknown[];
  readonly items?: Published | false;
  readonly additionalProperties?: Published | false;
  readonly anyOf?: readonly Published[];
  readonly properties?: Readonly<Record<string, Published>>;
}

describe('every field of the published JSON Schema', () => {
  const fields = published(siteJsonSchema() as Published);
  it('is described and has an example', () => {
    expect(fields.length).toBeGreaterThan(300);
    expect(fields.filter(([, { description = '' }]) => description === '').map(([at]) => at)).toEqual([]);
    expect(fields.filter(([, { examples = [] }]) => examples.length === 0).map(([at]) => at)).toEqual([]);
  });
  it('has an example that a file takes, for those of a file itself', () => {
    const whole = Object.fromEntries(
      fields.filter(([at]) => !at.includes('.')).map(([at, { examples = [] }]) => [at, examples[0]]),
    );
    // Of lists the first item alone: what they refer to may be missing, but all have their shape.
    expect(v.safeParse(siteFileSchema, whole).issues?.map(({ message }) => message) ?? []).toEqual([]);
  });
});
